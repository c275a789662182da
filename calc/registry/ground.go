package registry

import (
	"math"
	"strconv"

	"rimside/calc/ground"
	"rimside/calc/ride"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// A record is a minute at a hundred samples a second, at most. Its times may be those of a clock, in ms.
const (
	mostFelt      = 6000
	mostSpeeds    = 600
	latestMoment  = 1e13
	mostFeltOnAny = 1000.0 // m/s2 on one axis: far past any phone
	mostKMH       = 120.0
)

// row is one line of a record: a moment in ms and what was read then. What is read is held to its own bounds by checkRecord.
func row(values float64) *Field {
	return plainList("", 1+values, 1+values, num("", "", -latestMoment, latestMoment))
}

func rolledEnd(name string) *Field {
	return group(name,
		num("width_mm", "mm", 15, 150),
		num("kpa", "kPa", 20, 1500),
		oneOf("sidewall", tyre.Sidewalls()),
		num("bead_seat_mm", "mm", 200, 700),
	)
}

var groundCalculation = calculation{
	name: "ground",
	table: []*Field{
		plainList("samples", 1, mostFelt, row(3)),
		num("kmh", "km/h", 2, mostKMH).optional(),
		plainList("speeds", 0, mostSpeeds, row(1)).optional(),
		oneOf("mount", ground.Mounts()).instead(string(ground.OnBar)),
		num("rider_kg", "kg", 15, 250),
		num("bike_kg", "kg", 3, 150),
		num("front_share", "", 0.2, 0.8).instead(ride.FrontShare),
		rolledEnd("front"), rolledEnd("rear"),
	},
	example: `{"samples":[[0,0.1,9.8,0.2],[16.7,0.3,11.2,0.1],[33.3,-0.2,8.1,0.3]],"kmh":24,"mount":"bar","rider_kg":72,"bike_kg":11,"front_share":0.42,` +
		`"front":{"width_mm":41.5,"kpa":220,"sidewall":"glove","bead_seat_mm":622},"rear":{"width_mm":41.5,"kpa":240,"sidewall":"glove","bead_seat_mm":622}}`,
	together: checkRecord,
	run:      runGround,
}

// groundAnswer: a refused record has no roughness and no shape.
func groundAnswer() *Field {
	return result(figure("gd0", "m3").nullable(), figure("low", "m3").nullable(), figure("high", "m3").nullable(), key("class", ground.Classes()...).nullable(),
		key("kind", ground.Surfaces()...).nullable(), figure("misfit", "").nullable(), figure("seconds", "s"), key("refused", ground.Refusals()...).nullable())
}

// checkRecord holds what was read to its bounds, and the speed to one way of telling it.
func checkRecord(v values) *Error {
	var faults *Error
	if v.has("kmh") && v.has("speeds") {
		faults = wrong(CodeConflict, "speeds", "with", "kmh")
	}
	return together(faults, together(checkRows(v, "samples", -mostFeltOnAny, mostFeltOnAny, "m/s2"), checkRows(v, "speeds", 0, mostKMH, "km/h")))
}

// checkRows finds the first value that is out of bounds; the rest would tell no more.
func checkRows(v values, name string, lo, hi float64, of string) *Error {
	for i, line := range v.rows(name) {
		for k := 1; k < len(line); k++ {
			if !(line[k] >= lo && line[k] <= hi) {
				return wrong(CodeBounds, name+"."+strconv.Itoa(i)+"."+strconv.Itoa(k), "min", lo, "max", hi, "unit", of)
			}
		}
	}
	return nil
}

// rows is a list of lists of numbers, without those that were refused.
func (v values) rows(name string) [][]float64 {
	list, _ := v[name].([]any)
	out := make([][]float64, 0, len(list))
	for _, item := range list {
		if line, isList := item.([]any); isList {
			out = append(out, values{name: line}.numbers(name))
		}
	}
	return out
}

func runGround(v values) (any, *Error) {
	var record ground.Record
	second := func(ms float64) unit.Second { return unit.Second(ms / 1e3) }
	samples := v.rows("samples")
	for _, line := range samples {
		at := second(line[0] - samples[0][0]) // a clock's milliseconds have few digits left
		record.Samples = append(record.Samples, ground.Sample{At: at, Felt: [3]float64{line[1], line[2], line[3]}})
	}
	for _, line := range v.rows("speeds") {
		record.Speeds = append(record.Speeds, ground.Speed{At: second(line[0] - samples[0][0]), V: unit.FromKMH(line[1])})
	}
	if v.has("kmh") {
		record.Speeds = []ground.Speed{{V: unit.FromKMH(v.num("kmh"))}}
	}
	share := v.num("front_share")
	machine := ground.Machine{Front: rolledOf(v, "front", share), Rear: rolledOf(v, "rear", 1-share), Mount: ground.Mount(v.text("mount"))}
	a := ground.Measure(record, machine)
	if a.Refused != "" {
		return fields{{"gd0", nil}, {"low", nil}, {"high", nil}, {"class", nil}, {"kind", nil}, {"misfit", misfitOf(a)}, {"seconds", a.Seconds}, {"refused", string(a.Refused)}}, nil
	}
	return fields{{"gd0", float64(a.Rough)}, {"low", float64(a.Low)}, {"high", float64(a.High)}, {"class", a.Class}, {"kind", a.Kind}, {"misfit", a.Misfit},
		{"seconds", a.Seconds}, {"refused", nil}}, nil
}

// misfitOf is the shape's misfit where one was found: a phone that was loose may be told how loose.
func misfitOf(a ground.Answer) any {
	if a.Misfit > 0 && !math.IsInf(a.Misfit, 0) {
		return a.Misfit
	}
	return nil
}

func rolledOf(v values, side string, share float64) ground.Wheel {
	end, rider, bike := v.in(side), unit.Kilogram(v.num("rider_kg")), unit.Kilogram(v.num("bike_kg"))
	casing, _ := tyre.CasingOf(tyre.Sidewall(end.text("sidewall")))
	return ground.Wheel{
		Wheel: ride.Wheel{
			Section: tyre.Mounted(unit.FromMM(end.num("bead_seat_mm")), unit.FromMM(end.num("width_mm"))),
			Casing:  casing,
			Load:    ride.LoadOf((rider+bike)*unit.Kilogram(share), rider, bike),
		},
		Pressure: unit.FromKPa(end.num("kpa")),
	}
}
