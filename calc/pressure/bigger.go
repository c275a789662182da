package pressure

import (
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// bigger names the first wider printed width that would hold this load on this rim: allowed as a pair, with both what it
// wants and its floor under the limits of the rim (its own mark must still be read), and the least mark it must then show.
// Nil when there is none. Errors: those of air.Carry.
func (d *decision) bigger(r *reckoned) (*Bigger, error) {
	for _, mm := range biggerLabels {
		label := unit.FromMM(mm)
		width, impossible := tyre.PredictedWidth(label, r.setup.Rim.Inner)
		if impossible != nil || width <= r.Section.Width {
			continue
		}
		if b, err := d.fitting(r.side, label, width); b != nil || err != nil {
			return b, err
		}
	}
	return nil, nil
}

// fitting tries one printed width. What was marked on or measured of the present tyre does not count for another.
func (d *decision) fitting(side Side, label, width unit.Metre) (*Bigger, error) {
	setup := d.in.wheel(side)
	setup.Tyre = Tyre{Label: label, Sidewall: setup.Tyre.Sidewall, Setup: setup.Tyre.Setup, ForHookless: true}
	if setup.pair().Refusal() != "" {
		return nil, nil
	}
	trial := d.in.with(side, setup)
	m, err := mount(trial, side, width)
	if err != nil {
		return nil, err
	}
	top, err := d.in.ceilingUnder(lowest(append(setup.rimMarks(), noMark)))
	if err != nil {
		return nil, err
	}
	front, rear := d.front, d.rear
	if side == Front {
		front = &candidate{m, top}
	} else {
		rear = &candidate{m, top}
	}
	r := trial.reckon(front, rear, d.course).of(side)
	if !r.possible() || r.want > top.at {
		return nil, nil
	}
	mark, err := d.in.markFor(max(r.want, r.p0, r.number))
	return &Bigger{Side: side, Label: label, Recommended: r.number, NeedsMark: mark}, err
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
