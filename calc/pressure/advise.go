package pressure

import (
	"rimside/calc/air"
	"rimside/calc/ride"
	"rimside/calc/unit"
)

// advise clamps a wheel's want between floor and ceiling and says what to do.
func (d *decision) advise(side Side) error {
	m, a, out := d.wheels[side], d.asked[side], d.answer.Wheel(side)
	top, known, err := d.top(m)
	if err != nil {
		return err
	}
	floor := m.floor(d.in.allMass())
	out.Figures = d.figures(m, a, floor)
	if known {
		out.Figures.Ceiling = &top.at
	}
	if known && floor > top.at {
		d.tellBigger(side)
		out.Figures.Limited = top.limit
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

// top is the ceiling of a wheel; known is false when no maximum is.
func (d *decision) top(m *mounted) (top ceiling, known bool, err error) {
	binding, known := lowest(m.setup.marks())
	if known {
		top, err = ceilingUnder(binding, d.in)
	}
	return top, known, err
}

// figures are what the answer rests on, the ceiling not yet among them.
func (d *decision) figures(m *mounted, a *asked, floor unit.Pascal) *Figures {
	f := &Figures{Custom: a.custom, Floor: floor, Limited: LimitNone, Curve: curve(curveOf{m.Wheel, d.course}, a, floor)}
	if a.best != nil {
		f.Optimum, f.Good = a.best.optimum, &a.best.good
	}
	return f
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
	if set < MinLeft {
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
