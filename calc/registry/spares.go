package registry

import (
	"math"

	"rimside/calc/spares"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

const idLength = 64

// hubFields are what an end of a bike and a wheel have alike. Only what is known is given.
func hubFields() []*Field {
	return []*Field{
		oneOf("side", spares.Sides()), oneOf("brake", spares.Brakes()),
		num("hub_width_mm", "mm", 70, 220).optional(), num("axle_mm", "mm", 4, 25).optional(),
		num("bead_seat_mm", "mm", 200, 700).optional(), num("rotor_mm", "mm", 100, 260).optional(),
		{Name: "speeds", Kind: integer, Min: 1, Max: 14, Optional: true},
		label("spacing", 40).optional(),
		{Name: "max_cog", Kind: integer, Unit: "teeth", Min: 9, Max: 60, Optional: true},
		label("mount", 40).optional(), label("body", 40).optional(),
	}
}

func endFields() []*Field {
	return append(hubFields(), num("room_mm", "mm", 15, 150).optional(),
		num("min_label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional())
}

func spareList(name string, most float64) *Field {
	table := append([]*Field{label("id", idLength)}, hubFields()...)
	table = append(table, yesNo("bare").instead(false), num("tyre_mm", "mm", 15, 150).optional(),
		label("out_with", idLength).optional(), stateField())
	return listOf(name, 0, most, table...)
}

// stateField is what ready said of a spare.
func stateField() *Field {
	return oneOf("state", []string{"stop", "care", "no_fault_found", "not_looked_at"}).optional()
}

func hubOf(v values) spares.Hub {
	mm := func(name string) unit.Metre { return unit.FromMM(v.num(name)) }
	return spares.Hub{
		Side: spares.Side(v.text("side")), Brake: spares.Brake(v.text("brake")), Width: mm("hub_width_mm"), Axle: mm("axle_mm"), BeadSeat: mm("bead_seat_mm"),
		Rotor: mm("rotor_mm"), Speeds: int(v.num("speeds")), Spacing: v.text("spacing"), MaxCog: int(v.num("max_cog")), Mount: v.text("mount"), Body: v.text("body"),
	}
}

func endOf(v values) spares.End {
	return spares.End{Hub: hubOf(v), Room: unit.FromMM(v.num("room_mm")), MinLabel: unit.FromMM(v.num("min_label_mm"))}
}

func sparesOf(items []values) []spares.Spare {
	out := make([]spares.Spare, len(items))
	for i, v := range items {
		out[i] = spares.Spare{
			ID: v.text("id"), Hub: hubOf(v), Tyre: unit.FromMM(v.num("tyre_mm")), Bare: v.yes("bare"), OutWith: v.text("out_with"), Stopped: v.text("state") == "stop",
		}
	}
	return out
}

func verdictAnswer() []*Field { return judgedAnswer(spares.Codes()) }

func judgedAnswer(codes []string) []*Field {
	return []*Field{
		wording("id"), key("fits", spares.Fits()...), figure("minutes", "min"), parts("reasons", key("code", codes...), valuesOf("values")),
	}
}

func verdictJSON(v spares.Verdict) fields {
	return judgedJSON(v.Spare.ID, v.Fit, v.Minutes(), v.Reasons)
}

func judgedJSON(id string, fit spares.Fit, minutes float64, why []spares.Reason) fields {
	reasons := make([]any, len(why))
	for i, r := range why {
		reasons[i] = fields{{"code", string(r.Code)}, {"values", reasonValues(r)}}
	}
	return fields{{"id", id}, {"fits", string(fit)}, {"minutes", minutes}, {"reasons", reasons}}
}

// reasonValues are the figures on both sides, lengths in mm as everywhere here, and how long a change takes.
func reasonValues(r spares.Reason) fields {
	var out fields
	if r.What != "" {
		out = append(out, field{"what", r.What})
	}
	if r.Bike != 0 || r.Have != 0 {
		scale := 1e3
		if r.Code == spares.OtherSpeeds || r.Code == spares.CogTooBig {
			scale = 1 // counts, not lengths
		}
		out = append(out, fields{{"bike", math.Round(r.Bike*scale*1e6) / 1e6}, {"spare", math.Round(r.Have*scale*1e6) / 1e6}}...)
	}
	if r.Minutes > 0 {
		out = append(out, field{"minutes", r.Minutes})
	}
	return out
}

var matchCalculation = calculation{
	name:  "match",
	table: []*Field{group("bike", endFields()...), spareList("spares", 400)},
	example: `{"bike":{"side":"rear","hub_width_mm":142,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":160,"speeds":12,"spacing":"12","max_cog":34,"room_mm":42,"min_label_mm":28},` +
		`"spares":[{"id":"rear 3","side":"rear","hub_width_mm":142,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":160,"speeds":12,"spacing":"12","max_cog":30,"tyre_mm":40},` +
		`{"id":"rear 5","side":"rear","hub_width_mm":142,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":160,"speeds":11,"spacing":"11","max_cog":32,"tyre_mm":32},` +
		`{"id":"rear 1","side":"rear","hub_width_mm":142,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":140,"speeds":12,"spacing":"12","max_cog":30,"tyre_mm":40},` +
		`{"id":"rear 2","side":"rear","brake":"disc","out_with":"87"}]}`,
	run: func(v values) (any, *Error) {
		ranked := spares.Match(endOf(v.in("bike")), sparesOf(v.items("spares")))
		out := make([]any, len(ranked))
		for i, verdict := range ranked {
			out[i] = verdictJSON(verdict)
		}
		return out, nil
	},
}

// usualSteps is how long the search for the best load goes on where nobody says; some tenths of a second.
const usualSteps = 20000

var coverCalculation = calculation{
	name: "cover",
	table: []*Field{
		listOf("bikes", 0, 400, label("id", idLength), num("weight", "", 0, 1000).instead(1),
			group("front", endFields()...).optional(), group("rear", endFields()...).optional()),
		spareList("wheels", 400),
		{Name: "places", Kind: integer, Min: 0, Max: 400},
		(&Field{Name: "steps", Kind: integer, Min: 0, Max: 20e6}).instead(usualSteps),
	},
	example: `{"bikes":[{"id":"41","weight":3,"rear":{"side":"rear","hub_width_mm":142,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":160,"speeds":12,"max_cog":34,"room_mm":42}},` +
		`{"id":"87","weight":1,"rear":{"side":"rear","hub_width_mm":148,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":180,"speeds":12,"max_cog":52,"room_mm":58}}],` +
		`"wheels":[{"id":"rear 3","side":"rear","hub_width_mm":142,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":160,"speeds":12,"max_cog":30,"tyre_mm":40},` +
		`{"id":"rear 4","side":"rear","hub_width_mm":148,"axle_mm":12,"bead_seat_mm":622,"brake":"disc","rotor_mm":180,"speeds":11,"max_cog":46,"tyre_mm":55}],"places":2}`,
	run: runCover,
}

func runCover(v values) (any, *Error) {
	items := v.items("bikes")
	bikes := make([]spares.Bike, len(items))
	for i, b := range items {
		bikes[i] = spares.Bike{ID: b.text("id"), Weight: b.num("weight")}
		if b.has("front") {
			bikes[i].Front = endOf(b.in("front"))
			bikes[i].Front.Side = spares.Front
		}
		if b.has("rear") {
			bikes[i].Rear = endOf(b.in("rear"))
			bikes[i].Rear.Side = spares.Rear
		}
	}
	return loadJSON(spares.Cover(bikes, sparesOf(v.items("wheels")), int(v.num("places")), int(v.num("steps")))), nil
}

func loadJSON(load spares.Load) fields {
	pick, covered, left := []any{}, []any{}, []any{}
	for _, id := range load.Pick {
		pick = append(pick, id)
	}
	for _, at := range load.Covered {
		covered = append(covered, fields{{"bike", at.Bike}, {"side", string(at.Side)}})
	}
	for _, l := range load.Left {
		var change any
		if l.Change != nil {
			change = verdictJSON(*l.Change)
		}
		left = append(left, fields{{"bike", l.Bike}, {"side", string(l.Side)}, {"why", string(l.Why)}, {"change", change}})
	}
	return fields{{"pick", pick}, {"covered", covered}, {"uncovered", left}, {"weight", load.Weight}, {"exact", load.Exact}}
}

var shareCalculation = calculation{
	name: "share",
	table: []*Field{listOf("riders", 1, 400, label("id", idLength), num("recommended_kpa", "kPa", 20, 1600),
		num("floor_kpa", "kPa", 0, 1600), num("ceiling_kpa", "kPa", 20, 1600).optional())},
	example: `{"riders":[{"id":"41","recommended_kpa":226,"floor_kpa":195,"ceiling_kpa":420},{"id":"87","recommended_kpa":262,"floor_kpa":211,"ceiling_kpa":420}]}`,
	run: func(v values) (any, *Error) {
		var riders []spares.Rider
		for _, r := range v.items("riders") {
			ceiling := unit.Pascal(math.Inf(1))
			if r.has("ceiling_kpa") {
				ceiling = unit.FromKPa(r.num("ceiling_kpa"))
			}
			riders = append(riders, spares.Rider{
				ID: r.text("id"), Recommended: unit.FromKPa(r.num("recommended_kpa")), Floor: unit.FromKPa(r.num("floor_kpa")), Ceiling: ceiling,
			})
		}
		shared, err := spares.Share(riders)
		if err != nil { // no pressure would do: nobody is told one
			return fields{{"kpa", nil}, {"spread", nil}, {"compromise_for", []any{}}}, nil
		}
		worst := []any{}
		for _, id := range shared.Worst {
			worst = append(worst, id)
		}
		return fields{{"kpa", shared.Pressure.KPa()}, {"spread", shared.Spread}, {"compromise_for", worst}}, nil
	},
}

func matchAnswer() *Field {
	return listing(verdictAnswer()...)
}

func coverAnswer() *Field {
	return result(wordings("pick"), parts("covered", wording("bike"), key("side", spares.Sides()...)),
		parts("uncovered", wording("bike"), key("side", spares.Sides()...), key("why", string(spares.NoWheel), string(spares.NoPlace)), part("change", verdictAnswer()...).nullable()),
		figure("weight", ""), flag("exact"))
}

func shareAnswer() *Field {
	return result(figure("kpa", "kPa").nullable(), figure("spread", "").nullable(), wordings("compromise_for"))
}
