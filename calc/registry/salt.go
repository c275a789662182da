package registry

import (
	"rimside/calc/salt"
	"rimside/calc/unit"
)

// maxEvents is how many lines of a bike's past are read: some years of riding on most days.
const maxEvents = 2000

const maxHours = 100 // of one ride

func materialOf(name string) *Field { return oneOf(name, salt.Materials()).optional() }

var saltCalculation = calculation{
	name: "salt",
	table: []*Field{
		group("materials",
			materialOf("rim"), materialOf("nipple"), materialOf("spoke"), materialOf("hub"), materialOf("bearing"),
		).optional(),
		listOf("log", 0, maxEvents,
			date("day"), oneOf("kind", salt.Kinds()), num("hours", "h", 0, maxHours).instead(salt.UnknownHours),
			oneOf("sweat", salt.Sweats()).optional(),
		),
		date("today"),
		yesNo("spared_indoors").instead(false),
	},
	example: `{"materials":{"rim":"carbon","nipple":"aluminium","spoke":"stainless","hub":"aluminium","bearing":"steel"},` +
		`"log":[{"day":"2026-07-01","kind":"wash"},{"day":"2026-07-03","kind":"indoor","hours":1.5,"sweat":"mean"},` +
		`{"day":"2026-07-05","kind":"wet","hours":3},{"day":"2026-07-06","kind":"wipe"},{"day":"2026-07-08","kind":"indoor","hours":4,"sweat":"high"}],"today":"2026-07-14","spared_indoors":false}`,
	run: func(v values) (any, *Error) {
		m := v.in("materials")
		wheel := salt.Wheel{
			Rim: material(m, "rim"), Nipple: material(m, "nipple"), Spoke: material(m, "spoke"), Hub: material(m, "hub"), Bearing: material(m, "bearing"),
		}
		log := make([]salt.Entry, 0, len(v.items("log")))
		for _, e := range v.items("log") {
			log = append(log, salt.Entry{Day: e.day("day"), Kind: salt.Kind(e.text("kind")), Hours: hoursOf(e), Sweat: e.text("sweat")})
		}
		if v.yes("spared_indoors") {
			log = salt.Spared(log)
		}
		return saltJSON(salt.Decide(wheel, log, v.day("today"))), nil
	},
}

func material(v values, name string) salt.Material { return salt.Material(v.text(name)) }

// hoursOf is the length of a ride; one whose hours nobody noted is no ride of none.
func hoursOf(v values) float64 {
	if !v.has("hours") {
		return salt.UnknownHours
	}
	return v.num("hours")
}

func saltJSON(a salt.Answer) fields {
	couples := make([]any, len(a.Couples))
	for i, c := range a.Couples {
		couples[i] = fields{
			{"where", c.Where}, {"anode", string(c.Anode)}, {"cathode", string(c.Cathode)}, {"gap_v", c.GapV}, {"over_v", c.OverV}, {"rank", c.Rank().String()},
		}
	}
	return fields{{"couples", couples}, {"since_wash_g", a.Grams}, {"wash_due", dayText(a.Due)}, {"why", fields{{"code", string(a.Why.Code)}, {"values", saltValues(a.Why)}}}}
}

func saltValues(r salt.Reason) fields {
	out := fields{{"g", r.Grams}, {"wash_at_g", r.WashAt}, {"rank", r.Rank.String()}}
	if r.Code == salt.KnownPair {
		out = append(out, fields{{"anode", string(r.Anode)}, {"cathode", string(r.Cathode)}}...)
	}
	return out
}

// dayText writes a day, "" for none.
func dayText(d *unit.Day) string {
	if d == nil {
		return ""
	}
	return d.String()
}
