package registry

import (
	"rimside/calc/spokes"
	"rimside/calc/unit"
)

// A recording is one pluck of at most two seconds; the list's bound is that at the usual rates, the rest is held together with the rate.
const (
	mostSamples    = 96000
	mostSecondsOf  = 2.0
	minHz, maxHz   = 20.0, 5000.0
	minRate        = 8000.0
	maxRate        = 192000.0
	leftSide       = "left"
	rightSide      = "right"
	mostOfOneWheel = 64
)

var wheelSides = []string{leftSide, rightSide}

// spokeFields are those of one round spoke.
func spokeFields() []*Field {
	return []*Field{
		num("length_mm", "mm", 50, 400), // free, to the crossing
		num("diameter_mm", "mm", 0.8, 5),
		num("density", "kg/m3", 1000, 9000).instead(spokes.SteelDensity),
	}
}

func spokeOf(v values) spokes.Spoke {
	return spokes.Spoke{Free: unit.FromMM(v.num("length_mm")), Diameter: unit.FromMM(v.num("diameter_mm")), Density: v.num("density")}
}

var spokesCalculation = calculation{
	name: "spokes",
	table: append([]*Field{
		num("hz", "Hz", minHz, maxHz).optional(),
		plainList("samples", 1, mostSamples, num("", "", -1, 1)).optional(), // one pluck, mono
		num("rate", "Hz", minRate, maxRate).optional(),
	}, spokeFields()...),
	example:  `{"hz":352.7,"length_mm":280,"diameter_mm":2,"density":8000}`,
	together: pitchOrRecording,
	run: func(v values) (any, *Error) {
		hz, confidence := v.num("hz"), 1.0
		if v.has("samples") {
			note, heard := spokes.Pitch(v.numbers("samples"), v.num("rate"))
			if !heard {
				return fields{{"hz", nil}, {"confidence", 0.0}, {"tension_n", nil}}, nil
			}
			hz, confidence = note.Hz, note.Confidence
		}
		return fields{{"hz", hz}, {"confidence", confidence}, {"tension_n", float64(spokeOf(v).Tension(hz))}}, nil
	},
}

// spokesAnswer: no hertz and no tension where no note was heard.
func spokesAnswer() *Field {
	return result(figure("hz", "Hz").nullable(), figure("confidence", ""), figure("tension_n", "N").nullable())
}

// pitchOrRecording: a pitch, or a recording with its rate, and not both.
func pitchOrRecording(v values) *Error {
	switch {
	case v.has("samples") && v.has("hz"):
		return wrong(CodeConflict, "samples", "with", "hz")
	case v.has("samples") && !v.has("rate"):
		return wrong(CodeMissing, "rate", "with", "samples")
	case v.has("rate") && !v.has("samples"):
		return wrong(CodeMissing, "samples", "with", "rate")
	case !v.has("samples") && !v.has("hz"):
		return wrong(CodeMissing, "hz", "with", "")
	}
	if samples, rate := len(v.numbers("samples")), v.num("rate"); rate > 0 && float64(samples) > mostSecondsOf*rate {
		return wrong(CodeBounds, "samples", "min", 1.0, "max", float64(int(mostSecondsOf*rate)), "unit", "", "items", true)
	}
	return nil
}

var lacingCalculation = calculation{
	name: "lacing",
	table: []*Field{
		listOf("spokes", 1, mostOfOneWheel,
			oneOf("side", wheelSides),
			num("hz", "Hz", minHz, maxHz).optional().nullable(), // none: it is slack and gives no note
		),
		group(leftSide, spokeFields()...),
		group(rightSide, spokeFields()...),
		num("most_n", "N", 200, 3000).instead(spokes.UsualMost), // the rim's own maximum
	},
	example: `{"spokes":[{"side":"left","hz":352.7},{"side":"right","hz":300},{"side":"left","hz":340},{"side":"right","hz":310},{"side":"left","hz":290},{"side":"right","hz":305}],` +
		`"left":{"length_mm":280,"diameter_mm":2},"right":{"length_mm":282,"diameter_mm":2,"density":8000},"most_n":1200}`,
	run: runLacing,
}

// lacingAnswer tells of each spoke, in the order given, its tension and how far it stands from its side's mean; of each side the mean, how
// many sounded and how evenly. A spoke without a note has neither and is an outlier.
func lacingAnswer() *Field {
	side := func(name string) *Field {
		return part(name, figure("mean_n", "N").nullable(), tally("spokes", ""), tally("outliers", ""), figure("spread", "").nullable(), key("level", spokes.Levels()...).nullable())
	}
	return result(side(leftSide), side(rightSide), parts("spokes", figure("tension_n", "N").nullable(), figure("deviation", "").nullable(), flag("outlier")))
}

func runLacing(v values) (any, *Error) {
	list := v.items("spokes")
	told := make([]any, len(list))
	out := fields{}
	for _, side := range wheelSides {
		var tensions []unit.Newton
		var at []int
		slack := 0
		for i, each := range list {
			switch {
			case each.text("side") != side:
			case each.has("hz"):
				tensions, at = append(tensions, spokeOf(v.in(side)).Tension(each.num("hz"))), append(at, i)
			default:
				slack++
				told[i] = fields{{"tension_n", nil}, {"deviation", nil}, {"outlier", true}}
			}
		}
		even := spokes.Evenness(tensions)
		for n, i := range at {
			told[i] = fields{{"tension_n", float64(tensions[n])}, {"deviation", even.Deviations[n]}, {"outlier", spokes.Outlying(even.Deviations[n])}}
		}
		if len(at) == 0 {
			out = append(out, field{side, fields{{"mean_n", nil}, {"spokes", 0}, {"outliers", slack}, {"spread", nil}, {"level", nil}}})
			continue
		}
		level := string(spokes.LevelOf(even.Mean, unit.Newton(v.num("most_n"))))
		out = append(out, field{side, fields{{"mean_n", float64(even.Mean)}, {"spokes", len(at)}, {"outliers", even.Outliers + slack}, {"spread", even.Spread}, {"level", level}}})
	}
	return append(out, field{"spokes", told}), nil
}
