package registry

import "rimside/calc/due"

func every(name string, usual float64) *Field {
	f := num(name, "days", 1, 3650).instead(usual)
	f.Kind = integer
	return f
}

var intervalsField = group("intervals",
	every("sealant_days", due.SealantDays),
	every("sealant_hot_days", due.SealantHotDays),
	every("rotor_days", due.RotorDays),
	every("pads_days", due.PadsDays),
	every("spokes_days", due.SpokesDays),
	every("bolts_days", due.BoltsDays),
	every("walk_around_days", due.LookDays),
	num("new_spokes_km", "km", 1, 10000).instead(due.NewSpokesKM),
).optional()

var dueCalculation = calculation{
	name:  "due",
	table: []*Field{builtBike, pastField, date("today"), intervalsField, yesNo("hot").optional()},
	example: `{"bike":` + exampleBike + `,"history":` + exampleHistory +
		`,"today":"2026-07-14","intervals":{"sealant_days":45,"walk_around_days":14},"hot":false}`,
	run: func(v values) (any, *Error) {
		items := due.List(builtBikeOf(v.in("bike")), pastOf(v), v.day("today"), intervalsOf(v.in("intervals")), v.yes("hot"))
		out := make([]any, len(items))
		for i, item := range items {
			out[i] = fields{
				{"id", item.ID}, {"due", item.Due.String()}, {"overdue_days", item.OverdueDays},
				{"why", fields{{"code", string(item.Why.Code)}, {"values", dueValues(item.Why)}}}, {"source", string(item.Source)},
			}
		}
		return out, nil
	},
}

func dueValues(w due.Why) fields {
	switch w.Code {
	case due.NeverNoted:
		return fields{}
	case due.EveryDays, due.Grows:
		return fields{{"day", w.Day.String()}, {"days", w.Days}}
	case due.PastLimit:
		return fields{{"day", w.Day.String()}, {"mm", w.MM}, {"limit_mm", w.Limit.MM}, {"when", string(w.Limit.Edge)}, {"severity", string(w.Severity)}}
	case due.NewSpokes:
		return fields{{"day", w.Day.String()}, {"km", w.KM}}
	case due.SaltyBike:
		return append(fields{{"day", w.Day.String()}, {"pair", string(w.Salt.Code)}}, saltValues(w.Salt)...)
	}
	return fields{{"day", w.Day.String()}}
}

// intervalsOf takes what is given and the usual for the rest.
func intervalsOf(v values) due.Intervals {
	out := due.Usual()
	for _, each := range []struct {
		name string
		into *int
	}{
		{"sealant_days", &out.Sealant}, {"sealant_hot_days", &out.SealantHot}, {"rotor_days", &out.Rotor}, {"pads_days", &out.Pads},
		{"spokes_days", &out.Spokes}, {"bolts_days", &out.Bolts}, {"walk_around_days", &out.Look},
	} {
		if v.has(each.name) {
			*each.into = int(v.num(each.name))
		}
	}
	if v.has("new_spokes_km") {
		out.NewSpokesKM = v.num("new_spokes_km")
	}
	return out
}
