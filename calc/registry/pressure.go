package registry

import (
	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/ride"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

var pressureCalculation = calculation{
	name: "pressure",
	table: []*Field{
		num("rider_kg", "kg", 15, 250),
		num("bike_kg", "kg", 3, 150),
		num("front_share", "", 0.2, 0.8).instead(ride.FrontShare),
		num("front_load_kg", "kg", 5, 250).optional(),
		num("rear_load_kg", "kg", 5, 250).optional(),
		wheelField("front"),
		wheelField("rear"),
		groundField,
		place("set"),
		place("ride"),
		oneOf("here", pressure.Heres()).instead(string(pressure.HereSet)),
		celsius("warmest_c").optional(),
		listOf("along", 0, 8, celsius("c").optional(), altitude("m")).optional(), // further places of the ride
		gaugeErrorField,
		yesNo("wet").instead(false),
		(&Field{Name: "firmness", Kind: integer, Unit: "steps", Min: -pressure.MaxFirmness, Max: pressure.MaxFirmness}).instead(0),
		group("shift", shiftField("front"), shiftField("rear")).optional(),
		group("now",
			num("front_gauge_kpa", "kPa", 0, 2000).optional(),
			num("rear_gauge_kpa", "kPa", 0, 2000).optional(),
			num("pump_stroke_ml", "ml", 5, 2000).optional(),
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
	together: checkTogether,
	run:      runPressure,
}

var gaugeErrorField = num("gauge_error_kpa", "kPa", -100, 100).instead(0)

func shiftField(name string) *Field {
	return num(name, "", -pressure.ShiftMost, pressure.ShiftMost).instead(0)
}

func wheelField(name string) *Field {
	return group(name,
		group("tyre",
			num("label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM),
			num("measured_mm", "mm", 15, 150).optional(),
			oneOf("sidewall", tyre.Sidewalls()),
			oneOf("setup", pressure.Setups()),
			num("max_kpa", "kPa", 50, 1500).optional(),
			num("min_kpa", "kPa", 20, 1200).optional(),
			yesNo("hookless_ok").instead(false),
			num("bead_seat_mm", "mm", 200, 700).optional(),
			group("crr",
				num("value", "", 0.001, 0.05),
				num("kpa", "kPa", 50, 1500),
				num("load_kg", "kg", 5, 200),
			).optional(),
		),
		rimField(),
	)
}

func rimField() *Field {
	return group("rim",
		num("bead_seat_mm", "mm", 200, 700),
		innerField(),
		oneOf("profile", tyre.Profiles()),
		num("max_kpa", "kPa", 50, 1500).optional(),
		num("table_min_label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		num("table_max_label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		num("table_max_kpa", "kPa", 50, 1500).optional(),
	)
}

// checkTable holds a rim's own table to its order.
func checkTable(rim values, at string) *Error {
	if rim.has("table_min_label_mm") && rim.has("table_max_label_mm") && rim.num("table_min_label_mm") > rim.num("table_max_label_mm") {
		return wrong(CodeConflict, at+".table_min_label_mm", "with", at+".table_max_label_mm")
	}
	return nil
}

// innerField carries the measuring rims: what to assume, and say so, for a hooked rim that nobody has measured.
func innerField() *Field {
	f := num("inner_mm", "mm", 10, 110)
	for _, row := range tyre.MeasuringRims() {
		f.Usual = append(f.Usual, Usual{UpTo: row.UpTo.MM(), Value: row.Inner.MM()})
	}
	return f
}

var groundField = &Field{Name: "ground", Kind: list, Min: 1, Max: 50, Fields: []*Field{
	oneOf("kind", road.Kinds()).optional(),
	num("gd0", "m3", 1e-6, 0.1).optional(),
	num("gd0_low", "m3", 1e-7, 0.1).optional(), // the interval of a measured roughness
	num("gd0_high", "m3", 1e-6, 1).optional(),
	num("share", "", 0, 1e6),
	num("kmh", "km/h", 2, 80).optional(),
	yesNo("washboard").instead(false),
}}

func runPressure(v values) (any, *Error) {
	in := pressure.Input{
		Rider: unit.Kilogram(v.num("rider_kg")), Bike: unit.Kilogram(v.num("bike_kg")),
		FrontShare: v.num("front_share"),
		FrontLoad:  unit.Kilogram(v.num("front_load_kg")), RearLoad: unit.Kilogram(v.num("rear_load_kg")),
		Front: wheelOf(v.in("front")), Rear: wheelOf(v.in("rear")), Ground: groundOf(v.items("ground")),
		Set: stateOf(v.in("set")), Ride: stateOf(v.in("ride")), Here: pressure.Here(v.text("here")),
		GaugeError: unit.FromKPa(v.num("gauge_error_kpa")), Wet: v.yes("wet"),
		Firmness: int(v.num("firmness")), Now: readingsOf(v.in("now")),
		Shift: pressure.PerWheel{Front: v.in("shift").num("front"), Rear: v.in("shift").num("rear")},
	}
	if v.has("warmest_c") {
		warmest := unit.FromCelsius(v.num("warmest_c"))
		in.Warmest = &warmest
	}
	for _, p := range v.items("along") {
		place := air.State{Altitude: unit.Metre(p.num("m"))}
		if p.has("c") {
			place.Temperature = unit.FromCelsius(p.num("c"))
		}
		in.Along = append(in.Along, place)
	}
	answer, err := pressure.Decide(in)
	if err != nil {
		return nil, wrong(CodeCannot, "", "why", "values_together")
	}
	return answerJSON(answer), nil
}

// checkTogether holds what no single field can: the load is given in one way, and wholly; a rim's table is no wrong way round; each
// stretch of ground is named or typed.
func checkTogether(v values) *Error {
	var faults *Error
	front, rear := v.has("front_load_kg"), v.has("rear_load_kg")
	switch {
	case front && !rear:
		faults = wrong(CodeMissing, "rear_load_kg", "with", "front_load_kg")
	case rear && !front:
		faults = wrong(CodeMissing, "front_load_kg", "with", "rear_load_kg")
	case front:
		faults = checkScales(v)
	}
	for _, side := range sides {
		faults = together(faults, checkTable(v.in(side).in("rim"), side+".rim"))
	}
	return together(faults, checkGround(v.items("ground")))
}

// scalesMost is how much more than rider and bike two scales may show, as scales differ (our choice).
const scalesMost = 1.05

// checkScales holds two scale readings to the weights: the rider stands on them, and nobody else.
func checkScales(v values) *Error {
	rider, bike := v.num("rider_kg"), v.num("bike_kg")
	switch both := v.num("front_load_kg") + v.num("rear_load_kg"); {
	case rider == 0 || bike == 0: // refused themselves
		return nil
	case both < rider:
		return wrong(CodeConflict, "rear_load_kg", "with", "rider_kg", "least", rider)
	case both > scalesMost*(rider+bike):
		return wrong(CodeConflict, "rear_load_kg", "with", "bike_kg", "most", rider+bike)
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
