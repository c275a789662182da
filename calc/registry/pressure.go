package registry

import (
	"rimside/calc/pressure"
	"rimside/calc/ride"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

var pressureCalculation = calculation{
	name:     "pressure",
	sentence: "What each tyre should hold today, and what to do to it now.",
	table: []Field{
		num("rider_kg", "Rider's weight, dressed to ride", "kg", 15, 250),
		num("bike_kg", "Bike's weight with bottles and bags", "kg", 3, 150),
		num("front_share", "Front wheel's share of the weight", "", 0.2, 0.8).instead(ride.FrontShare),
		num("front_load_kg", "Scale under the front wheel", "kg", 5, 250).optional(),
		num("rear_load_kg", "Scale under the rear wheel", "kg", 5, 250).optional(),
		wheelField("front", "Front"),
		wheelField("rear", "Rear"),
		groundField,
		place("set", "Where you set it:"),
		place("ride", "Where you ride:"),
		oneOf("here", "Where you stand", pressure.Heres()).instead(string(pressure.HereSet)),
		celsius("warmest_c", "Warmest hour").optional(),
		gaugeErrorField,
		yesNo("wet", "Wet ground").instead(false),
		Field{Name: "firmness", Kind: integer, Words: "Firmness", Unit: "steps", Min: -pressure.MaxFirmness, Max: pressure.MaxFirmness}.instead(0),
		group("shift", "Personal shift", shiftField("front", "Front"), shiftField("rear", "Rear")).optional(),
		group("now", "Readings now",
			num("front_gauge_kpa", "Front reading", "kPa", 0, 2000).optional(),
			num("rear_gauge_kpa", "Rear reading", "kPa", 0, 2000).optional(),
			num("pump_stroke_ml", "Pump stroke", "ml", 5, 2000).optional(),
		).optional(),
	},
	example: `{"rider_kg":72,"bike_kg":11,"front_share":0.42,` +
		`"front":{"tyre":{"label_mm":40,"measured_mm":41.5,"sidewall":"glove","setup":"tubeless","max_kpa":500,"min_kpa":150,"hookless_ok":true},` +
		`"rim":{"bead_seat_mm":622,"inner_mm":25,"profile":"hooked","max_kpa":500}},` +
		`"rear":{"tyre":{"label_mm":40,"sidewall":"glove","setup":"tubeless","max_kpa":500,"hookless_ok":true},` +
		`"rim":{"bead_seat_mm":622,"inner_mm":25,"profile":"hooked","max_kpa":500}},` +
		`"ground":[{"kind":"pea","share":0.7,"kmh":24,"washboard":false},{"gd0":0.0004,"share":0.3,"kmh":20}],` +
		`"set":{"c":20,"m":0},"ride":{"c":5,"m":1100},"here":"set","warmest_c":24,"gauge_error_kpa":7,"wet":false,"firmness":0,"shift":{"front":0.02,"rear":0},` +
		`"now":{"front_gauge_kpa":230,"rear_gauge_kpa":250,"pump_stroke_ml":60}}`,
	sources: pressureSources,
	answer:  pressureAnswer,
	run:     runPressure,
}

var gaugeErrorField = num("gauge_error_kpa", "Gauge error", "kPa", -100, 100).instead(0)

func shiftField(name, words string) Field {
	return num(name, words+" wheel's personal shift", "", -pressure.ShiftMost, pressure.ShiftMost).instead(0)
}

func wheelField(name, words string) Field {
	return group(name, words+" wheel",
		group("tyre", words+" tyre",
			num("label_mm", words+" width printed on the tyre", "mm", tyre.MinLabelMM, tyre.MaxLabelMM),
			num("measured_mm", words+" width measured", "mm", 15, 150).optional(),
			oneOf("sidewall", words+" sidewall", tyre.Sidewalls()),
			oneOf("setup", words+" set-up", pressure.Setups()),
			num("max_kpa", words+" maximum printed on the tyre", "kPa", 50, 1500).optional(),
			num("min_kpa", words+" minimum printed on the tyre", "kPa", 20, 1200).optional(),
			yesNo("hookless_ok", words+" tyre named for hookless rims").instead(false),
			num("bead_seat_mm", words+" tyre's bead seat diameter", "mm", 200, 700).optional(),
			group("crr", words+" measured rolling coefficient",
				num("value", words+" rolling coefficient", "", 0.001, 0.05),
				num("kpa", words+" test pressure", "kPa", 50, 1500),
				num("load_kg", words+" test load", "kg", 5, 200),
			).optional(),
		),
		group("rim", words+" rim",
			num("bead_seat_mm", words+" rim's bead seat diameter", "mm", 200, 700),
			innerField(words),
			oneOf("profile", words+" rim's edge", tyre.Profiles()),
			num("max_kpa", words+" maximum printed on the rim", "kPa", 50, 1500).optional(),
			num("table_min_label_mm", words+" narrowest width in the rim's table", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
			num("table_max_label_mm", words+" widest width in the rim's table", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
			num("table_max_kpa", words+" maximum in the rim's table", "kPa", 50, 1500).optional(),
		),
	)
}

// innerField carries the measuring rims: what to assume, and say so, for a hooked rim that nobody has measured.
func innerField(words string) Field {
	f := num("inner_mm", words+" rim's inner width", "mm", 10, 110)
	for _, row := range tyre.MeasuringRims() {
		f.Usual = append(f.Usual, Usual{UpTo: row.UpTo.MM(), Value: row.Inner.MM()})
	}
	return f
}

var groundField = Field{Name: "ground", Kind: list, Words: "Today's ground", Min: 1, Max: 50, Fields: []Field{
	oneOf("kind", "Ground", road.Kinds()).optional(),
	num("gd0", "Roughness", "m3", 1e-6, 0.1).optional(),
	num("share", "Stretch's share", "", 0, 1e6),
	num("kmh", "Stretch's speed", "km/h", 2, 80).optional(),
	yesNo("washboard", "Washboard").instead(false),
}}

func runPressure(v values) (any, *Error) {
	if fault := checkTogether(v); fault != nil {
		return nil, fault
	}
	ground, fault := groundOf(v.items("ground"))
	if fault != nil {
		return nil, fault
	}
	in := pressure.Input{
		Rider: unit.Kilogram(v.num("rider_kg")), Bike: unit.Kilogram(v.num("bike_kg")),
		FrontShare: v.num("front_share"),
		FrontLoad:  unit.Kilogram(v.num("front_load_kg")), RearLoad: unit.Kilogram(v.num("rear_load_kg")),
		Front: wheelOf(v.in("front")), Rear: wheelOf(v.in("rear")), Ground: ground,
		Set: stateOf(v.in("set")), Ride: stateOf(v.in("ride")), Here: pressure.Here(v.text("here")),
		GaugeError: unit.FromKPa(v.num("gauge_error_kpa")), Wet: v.yes("wet"),
		Firmness: int(v.num("firmness")), Now: readingsOf(v.in("now")),
		Shift: pressure.PerWheel{Front: v.in("shift").num("front"), Rear: v.in("shift").num("rear")},
	}
	if v.has("warmest_c") {
		warmest := unit.FromCelsius(v.num("warmest_c"))
		in.Warmest = &warmest
	}
	answer, err := pressure.Decide(in)
	if err != nil {
		return nil, cannot("", err)
	}
	return answerJSON(answer), nil
}

// scalesMost is how much more than rider and bike two scales may show, as scales differ (our choice).
const scalesMost = 1.05

// checkTogether holds what no single field can: the load is given in one way, and wholly.
func checkTogether(v values) *Error {
	front, rear := v.has("front_load_kg"), v.has("rear_load_kg")
	switch {
	case front && !rear:
		return &Error{CodeMissing, "rear_load_kg", "Weigh the rear wheel too, or give the front wheel's share instead."}
	case rear && !front:
		return &Error{CodeMissing, "front_load_kg", "Weigh the front wheel too, or give the front wheel's share instead."}
	case front && v.num("front_load_kg")+v.num("rear_load_kg") < v.num("rider_kg"):
		return &Error{CodeConflict, "rear_load_kg", "Both scales together show less than the rider weighs: weigh again, rider on the bike."}
	case front && v.num("front_load_kg")+v.num("rear_load_kg") > scalesMost*(v.num("rider_kg")+v.num("bike_kg")):
		return &Error{CodeConflict, "rear_load_kg", "Both scales together show more than rider and bike weigh: weigh again, or correct the weights."}
	}
	for _, side := range []string{"front", "rear"} {
		rim := v.in(side).in("rim")
		if rim.has("table_min_label_mm") && rim.has("table_max_label_mm") && rim.num("table_min_label_mm") > rim.num("table_max_label_mm") {
			return &Error{CodeConflict, side + ".rim.table_min_label_mm", "The table's narrowest width is above its widest."}
		}
	}
	return nil
}

func wheelOf(v values) pressure.WheelSetup {
	t, r := v.in("tyre"), v.in("rim")
	setup := pressure.WheelSetup{
		Tyre: pressure.Tyre{
			BeadSeat: unit.FromMM(t.num("bead_seat_mm")),
			Label:    unit.FromMM(t.num("label_mm")), Measured: unit.FromMM(t.num("measured_mm")),
			Sidewall: tyre.Sidewall(t.text("sidewall")), Setup: pressure.Setup(t.text("setup")),
			Max: unit.FromKPa(t.num("max_kpa")), Min: unit.FromKPa(t.num("min_kpa")), ForHookless: t.yes("hookless_ok"),
		},
		Rim: pressure.Rim{
			BeadSeat: unit.FromMM(r.num("bead_seat_mm")), Inner: unit.FromMM(r.num("inner_mm")),
			Profile: tyre.Profile(r.text("profile")), Max: unit.FromKPa(r.num("max_kpa")),
			Table: tyre.Table{
				MinLabel: unit.FromMM(r.num("table_min_label_mm")), MaxLabel: unit.FromMM(r.num("table_max_label_mm")),
				Max: unit.FromKPa(r.num("table_max_kpa")),
			},
		},
	}
	if crr := t.in("crr"); crr != nil {
		setup.Tyre.Test = &tyre.RollingTest{
			Coefficient: crr.num("value"), Pressure: unit.FromKPa(crr.num("kpa")),
			Load: unit.Kilogram(crr.num("load_kg")).Weight(),
		}
	}
	return setup
}

func readingsOf(v values) pressure.Readings {
	r := pressure.Readings{Stroke: unit.FromML(v.num("pump_stroke_ml"))}
	if v.has("front_gauge_kpa") {
		p := unit.FromKPa(v.num("front_gauge_kpa"))
		r.Front = &p
	}
	if v.has("rear_gauge_kpa") {
		p := unit.FromKPa(v.num("rear_gauge_kpa"))
		r.Rear = &p
	}
	return r
}
