package registry

import (
	"rimside/calc/fit"
	"rimside/calc/pressure"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// seatCalculation is the gate before a tyre is fitted, and the pressure that seating its bead never passes: the rules and marks of
// every pressure, for one wheel that needs no rider.
var seatCalculation = calculation{
	name: "seat",
	table: []*Field{
		group("tyre",
			num("label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM),
			oneOf("setup", pressure.Setups()),
			num("max_kpa", "kPa", 50, 1500).optional(),
			yesNo("hookless_ok").instead(false),
			yesNo("tubeless_ok").instead(false),
			num("bead_seat_mm", "mm", 200, 700).optional(),
		),
		rimField(),
		gaugeErrorField,
	},
	example: `{"tyre":{"label_mm":40,"setup":"tubeless","max_kpa":500,"hookless_ok":true,"tubeless_ok":true},` +
		`"rim":{"bead_seat_mm":622,"inner_mm":25,"profile":"hookless","max_kpa":450,"table_min_label_mm":29},"gauge_error_kpa":-7}`,
	together: func(v values) *Error { return checkTable(v.in("rim"), "rim") },
	run:      runSeat,
}

func runSeat(v values) (any, *Error) {
	seat, err := pressure.SeatOf(wheelOf(v), v.in("tyre").yes("tubeless_ok"), unit.FromKPa(v.num("gauge_error_kpa")))
	if err != nil {
		return nil, wrong(CodeCannot, "", "why", "values_together")
	}
	var refused, missing any // null where there is none
	var ceiling, gauge *float64
	var sealant *pair
	if seat.Refused != "" {
		refused = string(seat.Refused)
	} else {
		ceiling, gauge = kpa(seat.Ceiling), kpa(seat.Gauge)
	}
	if seat.Missing != "" {
		missing = string(seat.Missing)
	}
	if t := v.in("tyre"); t.text("setup") != string(pressure.Tube) {
		least, most := fit.Sealant(unit.FromMM(t.num("label_mm")))
		sealant = &pair{tidy(least.ML()), tidy(most.ML())}
	}
	cares := make([]any, len(seat.Cares))
	for i, c := range seat.Cares {
		cares[i] = string(c)
	}
	return fields{
		{"refused", refused}, {"values", toldValues(seat.Values)}, {"cares", cares}, {"ceiling_kpa", ceiling},
		{"gauge_kpa", gauge}, {"limited_by", string(seat.Limited)}, {"missing", missing}, {"sealant_ml", sealant},
	}, nil
}

func seatAnswer() *Field {
	return result(
		key("refused", pressure.Refusals()...).nullable(),
		part("values", figure("label_mm", "mm").optional(), figure("inner_mm", "mm").optional(), figure("least_label_mm", "mm").optional()), wordings("cares"), figure("ceiling_kpa", "kPa").nullable(), figure("gauge_kpa", "kPa").nullable(),
		key("limited_by", pressure.SeatLimits()...), key("missing", missingMarks...).nullable(), rangeOf("sealant_ml", "mL").nullable(),
	)
}
