package registry

import (
	"rimside/calc/spares"
	"rimside/calc/unit"
)

// buildFields are how a whole bike is set up. Only what is known is given.
func buildFields() []*Field {
	return []*Field{
		num("saddle_mm", "mm", 1, 3000).optional(), num("reach_mm", "mm", 1, 3000).optional(),
		label("cleat", 40).optional(), oneOf("pedals", spares.Pedals()).optional(),
	}
}

func buildOf(v values) spares.Build {
	return spares.Build{
		Saddle: unit.FromMM(v.num("saddle_mm")), Reach: unit.FromMM(v.num("reach_mm")), Cleat: v.text("cleat"), Pedals: v.text("pedals"),
	}
}

var bikeMatchCalculation = calculation{
	name: "bike_match",
	table: []*Field{
		group("bike", buildFields()...),
		listOf("spares", 0, 100, append([]*Field{label("id", idLength)}, append(buildFields(), label("out_with", idLength).optional(), stateField())...)...),
	},
	example: `{"bike":{"saddle_mm":742,"reach_mm":520,"cleat":"three bolts","pedals":"hex"},"spares":[{"id":"roof 1","saddle_mm":760,"reach_mm":522,"cleat":"two bolts","pedals":"spanner"},` +
		`{"id":"roof 2","saddle_mm":742,"reach_mm":520,"cleat":"three bolts"},{"id":"roof 3","saddle_mm":735},{"id":"roof 4","saddle_mm":742,"reach_mm":520,"out_with":"87"}]}`,
	run: func(v values) (any, *Error) {
		items := v.items("spares")
		bikes := make([]spares.SpareBike, len(items))
		for i, b := range items {
			bikes[i] = spares.SpareBike{ID: b.text("id"), Build: buildOf(b), OutWith: b.text("out_with"), Stopped: b.text("state") == "stop"}
		}
		out := []any{}
		for _, verdict := range spares.MatchBikes(buildOf(v.in("bike")), bikes) {
			out = append(out, judgedJSON(verdict.Spare.ID, verdict.Fit, verdict.Minutes(), verdict.Reasons))
		}
		return out, nil
	},
}

func bikeMatchAnswer() *Field { return listing(judgedAnswer(spares.BikeCodes())...) }
