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
	wheels map[Side]*mounted // only the wheels that may be computed
	asked  map[Side]*asked
	// changed holds the wants of both wheels under each change of the likely band, once worked out.
	changed []map[Side]unit.Pascal
}

// Decide answers for both wheels. A pair that must not be used, or whose limits are not known, gets a Stop notice and no
// figures; a wheel whose floor lies above its ceiling gets figures but no advice. Errors: ErrInput, and those of package air
// for states that cannot exist.
func Decide(in Input) (Answer, error) {
	if err := in.check(); err != nil {
		return Answer{}, err
	}
	d := &decision{in: in, course: ride.NewCourse(in.Ground), wheels: map[Side]*mounted{}, asked: map[Side]*asked{}}
	if in.Weighed() && in.FrontShare > 0 {
		d.answer.tell(ScalesWin, Info, Both)
	}
	d.tellGround()
	for _, side := range Sides {
		if err := d.admit(side); err != nil {
			return Answer{}, err
		}
	}
	d.askBoth()
	for _, side := range Sides {
		if d.wheels[side] == nil {
			continue
		}
		if err := d.advise(side); err != nil {
			return Answer{}, err
		}
	}
	if err := d.answer.finite(); err != nil {
		return Answer{}, err
	}
	return d.answer, nil
}

func (d *decision) tellGround() {
	switch {
	case mostlySoft(d.course):
		d.answer.tell(SoftMost, Care, Both)
	case d.course.Soft() > 0:
		d.answer.tell(SoftPart, Info, Both)
	}
}

// admit decides whether a wheel may be computed at all, and mounts it.
func (d *decision) admit(side Side) error {
	setup, out := d.in.wheel(side), d.answer.Wheel(side)
	out.Load = d.in.carried(side).Weight()
	width, err := setup.width()
	out.Width, out.Measured = width, setup.Tyre.Measured > 0
	if predicted, fault := tyre.PredictedWidth(setup.Tyre.Label, setup.Rim.Inner); fault == nil {
		out.Predicted = predicted
	}
	pair := setup.pair()
	switch verdict := pair.Refusal(); {
	case verdict != "":
		d.answer.tell(Code(verdict), Stop, side)
		return nil
	case err != nil:
		d.answer.tell(ImpossibleWidth, Stop, side)
		return nil
	case setup.Rim.Profile.TreatedHookless() && setup.maxUnknown() != "":
		d.answer.tell(askCodes[setup.maxUnknown()], Stop, side)
		return nil
	}
	m, err := mount(d.in, side, width)
	if err != nil {
		return err
	}
	d.wheels[side] = &m
	d.warn(side, pair)
	return nil
}

// width is the measured width, or the predicted one. Error: tyre.ErrImpossible.
func (w WheelSetup) width() (unit.Metre, error) {
	if w.Tyre.Measured > 0 {
		return w.Tyre.Measured, nil
	}
	return tyre.PredictedWidth(w.Tyre.Label, w.Rim.Inner)
}

func (d *decision) warn(side Side, pair tyre.Pair) {
	if warning := pair.Warning(); warning != "" {
		d.answer.tell(Code(warning), Care, side)
	}
	if pair.Profile == tyre.Unknown {
		d.answer.tell(EdgeUnknown, Care, side)
	}
	if pair.Profile.TreatedHookless() && d.in.wheel(side).Tyre.Setup == Tube {
		d.answer.tell(TubeHookless, Info, side)
	}
}

// askBoth works out what both wheels want, and balances them.
func (d *decision) askBoth() {
	d.asked = d.askEach(d.course, func(m mounted) mounted { return m })
	front, rear := d.asked[Front], d.asked[Rear]
	if front != nil && rear != nil && balance(d.in, front, rear) {
		d.answer.tell(Balanced, Info, Front)
	}
}

// askEach asks every computable wheel, changed in some way.
func (d *decision) askEach(course ride.Course, change func(mounted) mounted) map[Side]*asked {
	out := map[Side]*asked{}
	for side, m := range d.wheels {
		a := ask(change(*m), course, d.in)
		out[side] = &a
	}
	return out
}
