package registry

import (
	"rimside/calc/air"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// starts are how full the tyre is before: empty, or standing full of air at the pressure around it.
var starts = []string{"flat", "standing"}

var co2Calculation = calculation{
	name: "co2",
	table: []*Field{
		num("cartridge_g", "g", 4, 100),
		beadSeatField, widthField,
		oneOf("start", starts),
		celsius("c").instead(20), altitude("m").instead(0),
		num("limit_kpa", "kPa", 50, 1500),
		yesNo("insert").instead(false),
	},
	example: `{"cartridge_g":16,"bead_seat_mm":622,"width_mm":40,"start":"standing","c":12,"m":900,"limit_kpa":300}`,
	run:     runCO2,
}

func runCO2(v values) (any, *Error) {
	if v.yes("insert") {
		return nil, wrong(CodeCannot, "insert", "why", "insert")
	}
	f := air.Filling{
		Gas: unit.Kilogram(v.num("cartridge_g") / 1e3), Volume: volumeOf(v), Standing: v.text("start") == "standing",
		State: air.State{Temperature: unit.FromCelsius(v.num("c")), Altitude: unit.Metre(v.num("m"))},
	}
	now, err := f.Gauge()
	if err != nil {
		return nil, cannot("cartridge_g", err)
	}
	warmed, err := f.Warmed().Gauge()
	if err != nil {
		return nil, cannot("c", err)
	}
	limit := unit.FromKPa(v.num("limit_kpa"))
	gas, err := f.GasFor(limit)
	if err != nil {
		return nil, cannot("limit_kpa", err)
	}
	return fields{
		{"kpa", now.KPa()}, {"warmed_kpa", warmed.KPa()}, {"over_limit", warmed > limit},
		{"grams_for_kpa", fields{{"kpa", limit.KPa()}, {"g", float64(gas) * 1e3}}}, {"tomorrow_kpa", air.CO2After(max(0, now), 1).KPa()},
	}, nil
}

var pumpCalculation = calculation{
	name: "pump",
	table: []*Field{
		num("stroke_ml", "ml", 5, 2000), beadSeatField, widthField,
		num("from_kpa", "kPa", 0, 1500), num("to_kpa", "kPa", 0, 1500), altitude("m").instead(0),
	},
	example: `{"stroke_ml":60,"bead_seat_mm":622,"width_mm":40,"from_kpa":0,"to_kpa":250,"m":900}`,
	run: func(v values) (any, *Error) {
		from, to := unit.FromKPa(v.num("from_kpa")), unit.FromKPa(v.num("to_kpa"))
		if to < from {
			return nil, wrong(CodeConflict, "to_kpa", "with", "from_kpa")
		}
		ideal, err := air.Strokes(volumeOf(v), unit.FromML(v.num("stroke_ml")), to-from, unit.Metre(v.num("m")))
		if err != nil {
			return nil, cannot("m", err)
		}
		least, most := air.LikelyStrokes(ideal)
		return fields{{"strokes_ideal", ideal}, {"strokes_likely", &pair{least, most}}}, nil
	},
}

var (
	beadSeatField = num("bead_seat_mm", "mm", 200, 700)
	widthField    = num("width_mm", "mm", 15, 150)
)

// volumeOf is the air space of the tyre that a request tells of.
func volumeOf(v values) unit.CubicMetre {
	return tyre.Volume(unit.FromMM(v.num("bead_seat_mm")), unit.FromMM(v.num("width_mm")))
}

func co2Answer() *Field {
	return result(figure("kpa", "kPa"), figure("warmed_kpa", "kPa"), flag("over_limit"),
		part("grams_for_kpa", figure("kpa", "kPa"), figure("g", "g")), figure("tomorrow_kpa", "kPa"))
}

func pumpAnswer() *Field {
	return result(figure("strokes_ideal", ""), rangeOf("strokes_likely", ""))
}
