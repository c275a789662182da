package registry

import (
	"rimside/calc/pressure"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// kindField is a tyre as far as notes ask: they count only for the tyre that they were made on.
func kindField(name string) *Field {
	return group(name,
		num("label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM),
		oneOf("sidewall", tyre.Sidewalls()),
		oneOf("setup", pressure.Setups()),
	)
}

var shiftCalculation = calculation{
	name: "shift",
	table: []*Field{
		// In the order they were made: of two notes with the same ride and wheel the later replaces the earlier.
		listOf("notes", 0, 2000,
			label("ride", 60).optional(),
			oneOf("wheel", sides),
			num("ridden_kpa", "kPa", 0, 2000).optional(), // true, at the ride
			num("p0_kpa", "kPa", 0, 2000).optional(),     // p0_kpa of that day's answer
			oneOf("felt", pressure.Felts()).optional(),
			yesNo("struck").instead(false),
			kindField("tyre").optional(),
			// A timed trial's difference between the pressure ridden, which came out best, and its nearest rival, with its interval: in place of felt.
			group("trial", num("difference", "", -1e6, 1e6), num("low", "", -1e6, 1e6), num("high", "", -1e6, 1e6)).optional(),
		),
		kindField("front"),
		kindField("rear"),
	},
	example: `{"notes":[` +
		`{"ride":"a","wheel":"front","ridden_kpa":226,"p0_kpa":226,"felt":"hard","tyre":{"label_mm":40,"sidewall":"glove","setup":"tubeless"}},` +
		`{"ride":"a","wheel":"rear","ridden_kpa":240,"p0_kpa":247,"felt":"right","struck":true,"tyre":{"label_mm":40,"sidewall":"glove","setup":"tubeless"}}],` +
		`"front":{"label_mm":40,"sidewall":"glove","setup":"tubeless"},"rear":{"label_mm":40,"sidewall":"glove","setup":"tubeless"}}`,
	run: runShift,
}

func shiftAnswer() *Field { return result(learntAnswer("front"), learntAnswer("rear")) }

// learntAnswer tells the shift, how many rides and trials it rests on, how many are of another tyre, and how many cannot count since
// their tyre, what was recommended or what was ridden is not known.
func learntAnswer(name string) *Field {
	return part(name, figure("shift", ""), tally("notes", ""), tally("trials", ""), tally("other_tyre", ""), tally("unknown", ""))
}

func runShift(v values) (any, *Error) {
	var notes []pressure.RideNote
	for _, n := range v.items("notes") {
		note := pressure.RideNote{
			Ride: n.text("ride"), Side: pressure.Side(n.text("wheel")), Ridden: unit.FromKPa(n.num("ridden_kpa")), P0: unit.FromKPa(n.num("p0_kpa")),
			Felt: pressure.Felt(n.text("felt")), Struck: n.yes("struck"),
		}
		if n.has("tyre") {
			kind := kindOf(n.in("tyre"))
			note.Tyre = &kind
		}
		if n.has("trial") {
			of := n.in("trial")
			note.Trial = &pressure.Settled{Difference: of.num("difference"), Low: of.num("low"), High: of.num("high")}
		}
		notes = append(notes, note)
	}
	out := fields{}
	for _, side := range sides {
		learnt := pressure.Learn(notes, pressure.Side(side), kindOf(v.in(side)))
		out = append(out, field{side, fields{
			{"shift", learnt.Shift}, {"notes", learnt.Notes}, {"trials", learnt.Trials}, {"other_tyre", learnt.OtherTyre}, {"unknown", learnt.Unknown},
		}})
	}
	return out, nil
}

func kindOf(v values) pressure.Kind {
	return pressure.Kind{
		Label: unit.FromMM(v.num("label_mm")), Sidewall: tyre.Sidewall(v.text("sidewall")), Setup: pressure.Setup(v.text("setup")),
	}
}
