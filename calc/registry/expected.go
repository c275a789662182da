package registry

import (
	"math"

	"rimside/calc/air"
	"rimside/calc/unit"
)

const msPerDay = 86_400_000

func at() *Field { return num("at", "ms", 0, lastMoment) }

// datedReading is a true pressure with its place and time.
func datedReading(name string, more ...*Field) *Field {
	f := reading(name)
	f.Fields = append(append(f.Fields, at()), more...)
	return f
}

func expectedWheel(name string) *Field {
	return datedReading(name,
		num("loss_per_day", "", 0, 1).optional().nullable(),
		listOf("history", 0, 100, datedReading("set"), datedReading("found")).optional(),
	).optional()
}

var expectedCalculation = calculation{
	name: "expected",
	table: []*Field{
		expectedWheel("front"),
		expectedWheel("rear"),
		at(),
		place("here"),
		gaugeErrorField,
	},
	// Two days later and colder. The rear's loss comes from how it was found; pressures are true ones, history is newest first.
	example: `{"front":{"kpa":226,"c":20,"m":0,"at":1784012400000,"loss_per_day":0.01},` +
		`"rear":{"kpa":247,"c":20,"m":0,"at":1784012400000,"loss_per_day":null,"history":[` +
		`{"set":{"kpa":250,"c":18,"m":0,"at":1783580400000},"found":{"kpa":238,"c":20,"m":0,"at":1784012400000}}]},` +
		`"at":1784185200000,"here":{"c":2,"m":600},"gauge_error_kpa":7}`,
	run: runExpected,
}

func expectedAnswer() *Field { return result(expectedOfWheel("front"), expectedOfWheel("rear")) }

func expectedOfWheel(name string) *Field {
	return part(name, figure("kpa", "kPa"), figure("gauge_kpa", "kPa"), figure("days", "days"), figure("loss_per_day", "").nullable()).nullable()
}

func runExpected(v values) (any, *Error) {
	out := fields{}
	for _, side := range sides {
		if !v.has(side) {
			out = append(out, field{side, nil})
			continue
		}
		wheel, fault := expectedOf(side, v)
		if fault != nil {
			return nil, fault
		}
		out = append(out, field{side, wheel})
	}
	return out, nil
}

func expectedOf(side string, v values) (fields, *Error) {
	wheel := v.in(side)
	var known *float64
	loss := wheel.num("loss_per_day")
	if wheel.has("loss_per_day") {
		known = &loss
	} else if typical, ok := air.TypicalLoss(foundOf(wheel.items("history"))); ok {
		loss, known = typical, &typical
	}
	days := math.Max(0, (v.num("at")-wheel.num("at"))/msPerDay)
	left, err := air.Expected(readingOf(wheel), loss, days, stateOf(v.in("here")))
	if err != nil {
		return nil, cannot(side+".kpa", err)
	}
	shown := max(0, left+unit.FromKPa(v.num("gauge_error_kpa")))
	return fields{{"kpa", left.KPa()}, {"gauge_kpa", shown.KPa()}, {"days", days}, {"loss_per_day", known}}, nil
}

func foundOf(items []values) []air.Found {
	out := make([]air.Found, len(items))
	for i, each := range items {
		set, found := each.in("set"), each.in("found")
		out[i] = air.Found{Set: readingOf(set), Later: readingOf(found), Days: (found.num("at") - set.num("at")) / msPerDay}
	}
	return out
}
