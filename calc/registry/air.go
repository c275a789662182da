package registry

import (
	"rimside/calc/air"
	"rimside/calc/unit"
)

// Bounds of a place and an hour: from a polar winter to a car in the sun, from below sea level to a cabin's worst altitude.
const (
	minCelsius, maxCelsius   = -60.0, 90.0
	minAltitude, maxAltitude = -500.0, 9000.0
)

func celsius(name string) *Field { return num(name, "C", minCelsius, maxCelsius) }

func altitude(name string) *Field { return num(name, "m", minAltitude, maxAltitude) }

// place is a temperature and an altitude.
func place(name string) *Field {
	return group(name, celsius("c"), altitude("m"))
}

func stateOf(v values) air.State {
	return air.State{Temperature: unit.FromCelsius(v.num("c")), Altitude: unit.Metre(v.num("m"))}
}

// cannot tells a calculation's own error, whose text is a key.
func cannot(field string, err error) *Error { return wrong(CodeCannot, field, "why", err.Error()) }

var airCalculation = calculation{
	name: "air",
	table: []*Field{
		num("kpa", "kPa", -101, 2000),
		place("from"),
		place("to"),
	},
	example: `{"kpa":200,"from":{"c":20,"m":0},"to":{"c":7,"m":2000}}`,
	run: func(v values) (any, *Error) {
		from, to := stateOf(v.in("from")), stateOf(v.in("to"))
		p, err := air.Carry(unit.FromKPa(v.num("kpa")), from, to)
		if err != nil {
			return nil, cannot("kpa", err)
		}
		ambientFrom, errFrom := air.Ambient(from.Altitude)
		ambientTo, errTo := air.Ambient(to.Altitude)
		if errFrom != nil || errTo != nil {
			return nil, cannot("from.m", air.ErrAltitude)
		}
		return fields{{"kpa", p.KPa()}, {"ambient_kpa", &pair{ambientFrom.KPa(), ambientTo.KPa()}}}, nil
	},
}

// reading is a pressure with its place.
func reading(name string) *Field {
	f := place(name)
	f.Fields = append([]*Field{num("kpa", "kPa", 1, 2000)}, f.Fields...)
	return f
}

func readingOf(v values) air.Reading {
	return air.Reading{Pressure: unit.FromKPa(v.num("kpa")), State: stateOf(v)}
}

var leakCalculation = calculation{
	name: "leak",
	table: []*Field{
		reading("first"),
		reading("second"),
		num("days", "days", 0.01, 1000),
		num("ahead_days", "days", 0, 1000),
		place("ahead"),
	},
	example: `{"first":{"kpa":250,"c":20,"m":200},"second":{"kpa":230,"c":15,"m":200},"days":5,"ahead_days":2,"ahead":{"c":8,"m":1100}}`,
	run: func(v values) (any, *Error) {
		second := readingOf(v.in("second"))
		loss, err := air.LeakPerDay(readingOf(v.in("first")), second, v.num("days"))
		if err != nil {
			return nil, cannot("second.kpa", err)
		}
		ahead, err := air.AfterLeak(second, loss, v.num("ahead_days"), stateOf(v.in("ahead")))
		if err != nil {
			return nil, cannot("ahead", err)
		}
		return fields{{"loss_per_day", loss}, {"ahead_kpa", ahead.KPa()}}, nil
	},
}
