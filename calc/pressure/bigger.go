package pressure

import (
	"rimside/calc/ride"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// bigger names the first wider printed width that would hold this load on this rim: allowed as a pair, with both what it
// asks for and its floor under the limits of the rim (the new tyre's own mark must still be read).
func bigger(in Input, m mounted, course ride.Course) (Bigger, bool) {
	for _, mm := range biggerLabels {
		label := unit.FromMM(mm)
		width, err := tyre.PredictedWidth(label, m.setup.Rim.Inner)
		if err != nil || width <= m.Section.Width {
			continue
		}
		if p, fits := fitting(in, m.side, label, width, course); fits {
			return Bigger{Side: m.side, Label: label, Recommended: p}, true
		}
	}
	return Bigger{}, false
}

// fitting tries one printed width. What was marked on or measured of the present tyre does not count for another.
func fitting(in Input, side Side, label, width unit.Metre, course ride.Course) (unit.Pascal, bool) {
	setup := in.wheel(side)
	setup.Tyre = Tyre{Label: label, Sidewall: setup.Tyre.Sidewall, Setup: setup.Tyre.Setup, ForHookless: true}
	if setup.pair().Refusal() != "" {
		return 0, false
	}
	trial := in.with(side, setup)
	m, err := mount(trial, side, width)
	if err != nil {
		return 0, false
	}
	binding, known := lowest(setup.rimMarks(label))
	if !known {
		binding.max = AskAbove
	}
	top, err := ceilingUnder(binding, in)
	if err != nil {
		return 0, false
	}
	floor := m.floor(in.allMass())
	if floor > top.at {
		return 0, false
	}
	want := ask(m, course, trial).want
	return max(want, floor), want <= top.at
}

// with is the same input with one end changed.
func (in Input) with(side Side, setup WheelSetup) Input {
	if side == Front {
		in.Front = setup
	} else {
		in.Rear = setup
	}
	return in
}
