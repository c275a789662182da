package registry

import "rimside/calc/check"

const exampleBike = `{"front":{"setup":"tubeless","profile":"hooked","rim_material":"carbon","nipple_material":"aluminium","spoke_material":"stainless",` +
	`"hub_material":"aluminium","bearing_material":"steel","axle":"through_axle","rotor_mount":"lockring"},` +
	`"rear":{"setup":"tube","rim_material":"aluminium","nipple_material":"brass","spoke_material":"stainless","hub_material":"aluminium",` +
	`"axle":"through_axle","rotor_mount":"six_bolt","rotor_min_mm":1.5},"brake":"disc","frame_material":"carbon","use":"other"}`

const exampleHistory = `[{"kind":"built","day":"2026-05-02","side":"rear"},{"kind":"sealant","day":"2026-05-02","side":"front"},` +
	`{"kind":"rotor","day":"2026-05-02","side":"rear","mm":1.54},{"kind":"pads","day":"2026-07-10","side":"front","new":true},` +
	`{"kind":"ride","day":"2026-06-20","conditions":"wet","hours":4,"km":110},{"kind":"wash","day":"2026-06-21"},` +
	`{"kind":"ride","day":"2026-07-02","conditions":"indoor","hours":5,"sweat":"high"},{"kind":"check","day":"2026-06-01","moment":"evening"},` +
	`{"kind":"transport","day":"2026-07-12"}]`

var checksCalculation = calculation{
	name:    "checks",
	table:   []*Field{builtBike, oneOf("moment", check.Moments()), pastField},
	example: `{"bike":` + exampleBike + `,"moment":"evening","history":` + exampleHistory + `}`,
	run: func(v values) (any, *Error) {
		var history []check.Event
		for _, e := range pastOf(v) {
			history = append(history, e.Event)
		}
		asked := check.Ask(builtBikeOf(v.in("bike")).Bike, v.text("moment"), history)
		out := make([]any, len(asked))
		for i, c := range asked {
			out[i] = checkJSON(c)
		}
		return out, nil
	},
}

func checkJSON(c check.Check) fields {
	var limit, care, measure any
	if c.Limits != nil {
		limit, care, measure = limitsJSON(*c.Limits)
	}
	return fields{
		{"id", c.ID}, {"station", string(c.Station)}, {"group", string(c.Group)}, {"limit", limit}, {"care", care}, {"measure", measure},
		{"worst", string(c.Worst)}, {"source", string(c.Source)},
	}
}

// limitsJSON is the limit of a measured value, beyond which nobody rides where there is such a one, else only with care; and beside a
// limit to stop at the one to take care from.
func limitsJSON(l check.Limits) (limit, care, measure any) {
	limit = boundJSON(l.Stop)
	if l.Stop.Edge == "" {
		return boundJSON(l.Care), nil, string(l.What)
	}
	return limit, boundJSON(l.Care), string(l.What)
}

func boundJSON(b check.Bound) any {
	if b.Edge == "" {
		return nil
	}
	return fields{{"value", b.MM}, {"unit", "mm"}}
}
