package pressure

import (
	"rimside/calc/air"
	"rimside/calc/ride"
	"rimside/calc/unit"
)

// advise turns one wheel's number into what to do, or says why it has none.
func (d *decision) advise(r *reckoned) error {
	if !r.possible() {
		return d.refuse(r)
	}
	out := d.answer.Wheel(r.side)
	best := d.bestOf(r)
	out.Figures = d.figures(r, best)
	set, err := air.Carry(r.number, d.in.Ride, d.in.Set)
	if err != nil {
		return err
	}
	if set < MinLeft {
		d.answer.tell(FlatWhereSet, Stop, r.side)
		return nil
	}
	if r.want > r.top.at && r.top.limit != LimitUnread {
		if _, err := d.tellBigger(r); err != nil {
			return err
		}
	}
	if err := d.tellLimit(r); err != nil {
		return err
	}
	d.tellSoft(r)
	here, err := air.Carry(r.number, d.in.Ride, d.in.standing())
	if err != nil {
		return err
	}
	feel := d.course.Feel(r.Wheel, r.number)
	out.Advice = &Advice{
		P0: r.p0, Recommended: r.number, Set: set, Gauge: set + d.in.GaugeError, HereGauge: here + d.in.GaugeError, AtRide: r.number,
		Likely: d.likely(r), Squash: feel.Squash, Cost: d.cost(r, best, feel),
	}
	if best != nil {
		good := d.curveOf(r).fine(r.number, r.floor, r.top.at)
		out.Advice.Good = &good
		if best.optimum == nil {
			d.answer.tell(NoBest, Info, r.side)
		}
		if feel.UpperBound {
			d.answer.tell(LooseGround, Info, r.side)
		}
	}
	return d.act(r)
}

// refuse gives no number: the floor lies above the ceiling. Where the ceiling is a mark that nobody has read, reading it may
// mend that, so it is asked for, and a wheel that is asked about shows no other number.
func (d *decision) refuse(r *reckoned) error {
	if r.top.limit == LimitUnread {
		d.answer.tell(askCodes[r.setup.unread()], Stop, r.side)
		return nil
	}
	f := d.figures(r, d.bestOf(r))
	f.Limited = r.top.limit
	d.answer.Wheel(r.side).Figures = f
	needs, err := d.in.markFor(r.floor)
	if err != nil {
		return err
	}
	bigger, err := d.tellBigger(r)
	if err != nil {
		return err
	}
	values := []Value{
		key("limit", string(r.top.limit)), pressure("mark", r.top.max), key("floor_by", string(r.floorBy)), pressure("floor_needs", needs),
	}
	if bigger != nil {
		values = append(values, length("label", bigger.Label), pressure("needs_mark", bigger.NeedsMark))
	}
	d.answer.tell(FloorOverLimit, Stop, r.side, values...)
	return nil
}

func (d *decision) curveOf(r *reckoned) curveOf { return curveOf{wheel: r.Wheel, course: d.course} }

// bestOf is the bottom of a wheel's curve, nil where all ground is soft and no curve describes it.
func (d *decision) bestOf(r *reckoned) *best {
	if !d.course.Firm() {
		return nil
	}
	b := d.curveOf(r).best()
	return &b
}

// figures are what the answer rests on.
func (d *decision) figures(r *reckoned, b *best) *Figures {
	f := &Figures{Practice: r.practice(), Want: r.want, Floor: r.floor, Ceiling: r.top.at, Limited: r.limited}
	if b != nil {
		f.Optimum = b.optimum
		f.Curve = d.curveOf(r).points(r.want, b.optimum, r.floor)
	}
	return f
}

// tellBigger looks for a wider tyre that would do; nil when there is none. Errors: those of air.Carry.
func (d *decision) tellBigger(r *reckoned) (*Bigger, error) {
	b, err := d.bigger(r)
	if err != nil {
		return nil, err
	}
	if b == nil {
		d.answer.tell(NoneBigEnough, Care, r.side)
		return nil, nil
	}
	d.answer.Bigger = append(d.answer.Bigger, *b)
	return b, nil
}

// tellLimit says which limit holds the number, named as printed. Errors: those of air.Carry.
func (d *decision) tellLimit(r *reckoned) error {
	switch r.limited {
	case LimitNone:
	case LimitFloor:
		d.answer.tell(AtFloor, Info, r.side)
	case LimitPrintedMinimum:
		d.answer.tell(AtPrintedMinimum, Info, r.side, pressure("min", r.setup.Tyre.Min))
	case LimitUnread:
		here, err := air.Carry(r.want, d.in.Ride, d.in.standing())
		if err != nil {
			return err
		}
		d.answer.tell(HeldUnread, Care, r.side, key("missing", string(r.setup.unread())), pressure("mark", r.top.max),
			pressure("wants", r.want), pressure("wants_here", here+d.in.GaugeError))
	default:
		d.answer.tell(r.top.binds, Care, r.side, key("limit", string(r.top.limit)), pressure("mark", r.top.max))
	}
	return nil
}

// tellSoft says how much softer the soft ground made the number.
func (d *decision) tellSoft(r *reckoned) {
	switch {
	case !d.course.Firm():
		d.answer.tell(AllSoft, Info, r.side)
	case d.course.Soft() > 0:
		firm := d.firm.of(r.side)
		d.answer.tell(PartlySoft, Info, r.side, plain("share", d.course.Soft()), pressure("softer", max(0, firm.number-r.number)))
	}
}

// cost is what the number costs, nil where all ground is soft.
func (d *decision) cost(r *reckoned, b *best, feel ride.Feelings) *Cost {
	if b == nil {
		return nil
	}
	loss, speed := d.course.Loss(r.Wheel, r.number), d.course.Speed()
	c := &Cost{
		Casing: power(loss.Casing, speed), Roughness: power(loss.Roughness, speed),
		Light: feel.Light, Acceleration: feel.Acceleration,
	}
	c.AboveBest = max(0, c.Casing+c.Roughness-b.least)
	return c
}

func power(f unit.Newton, v unit.MetrePerSecond) unit.Watt { return unit.Watt(float64(f) * float64(v)) }
