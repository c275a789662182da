package pressure

import (
	"rimside/calc/air"
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

// advise clamps a wheel's want between floor and ceiling and says what to do.
func (d *decision) advise(side Side) error {
	m, a, out := d.wheels[side], d.asked[side], d.answer.Wheel(side)
	binding, known := lowest(m.setup.marks())
	var top ceiling
	if known {
		var err error
		if top, err = ceilingUnder(binding, d.in); err != nil {
			return err
		}
	}
	floor := m.floor(d.in.allMass())
	figures := &Figures{Custom: a.custom, Floor: floor, Limited: LimitNone, Curve: curve(curveOf{m.Wheel, d.course}, a, floor)}
	if a.best != nil {
		figures.Optimum, figures.Good = a.best.optimum, &a.best.good
	}
	if known {
		figures.Ceiling = &top.at
	}
	out.Figures = figures
	if known && floor > top.at {
		d.tellBigger(side)
		figures.Limited = top.limit
		d.answer.say(FloorOverLimit, Stop, side, floorText(floor, top, d.answer.Bigger, side))
		return nil
	}
	// A question comes before every other word: a wheel without a number shows none in its notices either.
	unread, missing, err := m.setup.unread(d.in)
	if err != nil {
		return err
	}
	if missing != "" && held(a.want, floor, top, known) > unread.at {
		out.Figures = nil
		d.answer.tell(askCodes[missing], Stop, side)
		return nil
	}
	if known && a.want > top.at {
		d.tellBigger(side)
	}
	bandTop := unread.at
	if known {
		bandTop = min(bandTop, top.at)
	}
	return d.settle(side, d.clamp(side, a.want, floor, top, known), bandTop, top)
}

// held is a want between floor and ceiling.
func held(want, floor unit.Pascal, top ceiling, known bool) unit.Pascal {
	if known {
		want = min(want, top.at)
	}
	return max(want, floor)
}

// tellBigger looks for a wider tyre that would do.
func (d *decision) tellBigger(side Side) {
	if b, found := bigger(d.in, *d.wheels[side], d.course); found {
		d.answer.Bigger = append(d.answer.Bigger, b)
	} else {
		d.answer.tell(NoneBigEnough, Care, side)
	}
}

// clamp holds a want between floor and ceiling and says which of them did.
func (d *decision) clamp(side Side, want, floor unit.Pascal, top ceiling, known bool) unit.Pascal {
	figures := d.answer.Wheel(side).Figures
	switch {
	case known && want > top.at:
		figures.Limited = top.limit
		d.answer.say(atLimitCodes[top.binds], Care, side, atLimitText(top))
		return top.at
	case want < floor:
		figures.Limited = LimitFloor
		d.answer.tell(AtFloor, Info, side)
		return floor
	}
	return want
}

// settle turns a recommendation into advice, unless it cannot be set in advance. The likely band ends at bandTop.
func (d *decision) settle(side Side, recommended, bandTop unit.Pascal, top ceiling) error {
	m, out := d.wheels[side], d.answer.Wheel(side)
	set, err := air.Carry(recommended, d.in.Ride, d.in.Set)
	if err != nil {
		return err
	}
	if set < minLeft {
		d.answer.tell(FlatWhereSet, Stop, side)
		return nil
	}
	feel := d.course.Feel(m.Wheel, recommended)
	out.Advice = &Advice{
		Recommended: recommended, Set: set, Gauge: set + d.in.GaugeError, AtRide: recommended,
		Likely: d.likely(side, recommended, bandTop), Squash: feel.Squash, Cost: d.cost(side, recommended, feel),
	}
	if feel.UpperBound && d.asked[side].best != nil {
		d.answer.tell(LooseGround, Info, side)
	}
	if best := d.asked[side].best; best != nil && best.optimum == nil {
		d.answer.tell(NoBest, Info, side)
	}
	return d.act(side, top)
}

// cost is what the recommendation costs, nil on mostly soft ground.
func (d *decision) cost(side Side, p unit.Pascal, feel ride.Feelings) *Cost {
	best := d.asked[side].best
	if best == nil {
		return nil
	}
	loss, speed := d.course.Loss(d.wheels[side].Wheel, p), d.course.Speed()
	c := &Cost{
		Casing: power(loss.Casing, speed), Roughness: power(loss.Roughness, speed),
		Light: feel.Light, Acceleration: feel.Acceleration,
	}
	c.AboveBest = max(0, c.Casing+c.Roughness-best.least)
	return c
}

func power(f unit.Newton, v unit.MetrePerSecond) unit.Watt { return unit.Watt(float64(f) * float64(v)) }

// act compares the gauge's reading, if there is one, with the aim.
func (d *decision) act(side Side, top ceiling) error {
	reading, out := d.in.Now.of(side), d.answer.Wheel(side)
	if reading == nil {
		return nil
	}
	over := false
	if top.limit != "" {
		limit, err := air.Carry(top.at, d.in.Ride, d.in.Set)
		if err != nil {
			return err
		}
		over = *reading-d.in.GaugeError > limit
	}
	if over {
		d.answer.tell(OverLimitNow, Care, side)
	}
	did, err := action(d.in, *d.wheels[side], *reading, out.Advice.Gauge, over)
	out.Advice.Action = did
	return err
}
