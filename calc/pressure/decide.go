package pressure

import (
	"rimside/calc/ride"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// decision carries one question through the steps from geometry to advice.
type decision struct {
	in     Input
	course ride.Course
	answer Answer
	// The wheels that may be computed.
	front, rear *candidate
	reckoning   reckoning
	firm        reckoning // on the firm part of the course alone, where there is a soft one too
	// changed holds the numbers of both wheels under each change of the likely band, once worked out.
	changed []reckoning
}

// Decide answers for both wheels. A pair that must not be used, or whose limits are not known, gets a Stop notice and no
// figures; a wheel whose floor lies above its ceiling gets figures but no advice. Errors: ErrInput, and those of package air
// for states that cannot exist.
func Decide(in Input) (Answer, error) {
	if err := in.check(); err != nil {
		return Answer{}, err
	}
	d := &decision{in: in, course: ride.NewCourse(in.Ground)}
	if err := d.admitBoth(); err != nil {
		return Answer{}, err
	}
	d.reckonBoth()
	for _, side := range Sides {
		if r := d.reckoning.of(side); r != nil {
			if err := d.advise(r); err != nil {
				return Answer{}, err
			}
		}
	}
	if err := d.answer.finite(); err != nil {
		return Answer{}, err
	}
	return d.answer, nil
}

func (d *decision) admitBoth() (err error) {
	if d.front, err = d.admit(Front); err != nil {
		return err
	}
	d.rear, err = d.admit(Rear)
	return err
}

func (d *decision) reckonBoth() {
	d.reckoning = d.in.reckon(d.front, d.rear, d.course)
	if d.course.Firm() && d.course.Soft() > 0 {
		d.firm = d.in.reckon(d.front, d.rear, d.course.FirmOnly())
	}
	front, rear := d.reckoning.front, d.reckoning.rear
	if d.reckoning.ratio != "" && front.possible() && rear.possible() {
		both, _ := ratioOf(front.mounted, rear.mounted)
		kept := both.least
		if d.reckoning.ratio == Evened {
			kept = both.most
		}
		d.answer.tell(d.reckoning.ratio, Info, Front, plain("ratio", kept))
	}
}

// admit decides whether a wheel may be computed at all, and mounts it.
func (d *decision) admit(side Side) (*candidate, error) {
	setup, out := d.in.wheel(side), d.answer.Wheel(side)
	out.Load = d.in.carried(side).Weight()
	width, _ := setup.width() // one that is impossible is refused below
	out.Width, out.Measured = width, setup.Tyre.Measured > 0
	if predicted, fault := tyre.PredictedWidth(setup.Tyre.Label, setup.Rim.Inner); fault == nil {
		out.Predicted = predicted
	}
	if code, values := setup.refusal(); code != "" {
		d.answer.tell(code, Stop, side, values...)
		return nil, nil
	}
	m, err := mount(d.in, side, width)
	if err != nil {
		return nil, err
	}
	top, err := d.in.ceilingUnder(lowest(setup.marks()))
	if err != nil {
		return nil, err
	}
	d.warn(side, setup)
	return &candidate{mounted: m, top: top}, nil
}

// width is the measured width, or the predicted one. Error: tyre.ErrImpossible.
func (w WheelSetup) width() (unit.Metre, error) {
	if w.Tyre.Measured > 0 {
		return w.Tyre.Measured, nil
	}
	return tyre.PredictedWidth(w.Tyre.Label, w.Rim.Inner)
}

func (d *decision) warn(side Side, setup WheelSetup) {
	pair := setup.pair()
	for _, care := range setup.cares() {
		if care == EdgeUnknown {
			d.answer.tell(care, Care, side)
			continue
		}
		d.answer.tell(care, Care, side, length("label", pair.Label), length("inner", pair.Inner))
	}
	if pair.Profile.TreatedHookless() && setup.Tyre.Setup == Tube {
		d.answer.tell(TubeHookless, Info, side)
	}
}
