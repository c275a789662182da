package pressure

import (
	"math"

	"rimside/calc/ride"
	"rimside/calc/unit"
)

// Brief is what a rule of the number needs of one wheel.
type Brief struct{ Practice, Want, P0, Number, Floor, Top unit.Pascal }

// InBrief is the way to the number alone, without curve, ranges and notices: a tenth of the work of Decide. ok is false where
// either wheel may not be computed or its floor lies above its ceiling.
func InBrief(in Input) (briefs [2]Brief, ok bool) {
	d := &decision{in: in, course: ride.NewCourse(in.Ground)}
	if in.check() != nil || d.admitBoth() != nil || d.front == nil || d.rear == nil {
		return briefs, false
	}
	r := in.reckon(d.front, d.rear, d.course)
	for i, w := range []*reckoned{r.front, r.rear} {
		briefs[i] = Brief{w.practice(), w.want, w.p0, w.number, w.floor, w.top.at}
		if !w.possible() {
			return briefs, false
		}
	}
	return briefs, true
}

// Bare is what one wheel wants alone: before ratio, wet and limits.
func Bare(in Input, side Side) unit.Pascal {
	d := &decision{in: in, course: ride.NewCourse(in.Ground)}
	if err := d.admitBoth(); err != nil {
		panic(err)
	}
	c := d.front
	if side == Rear {
		c = d.rear
	}
	return wantOf(c.mounted, d.course)
}

// Weighed is what the want is the least of, by the formula as it is written, for the front wheel.
func Weighed(in Input, logP float64) float64 {
	d := &decision{in: in, course: ride.NewCourse(in.Ground)}
	if err := d.admitBoth(); err != nil {
		panic(err)
	}
	m := d.front.mounted
	q := d.course.Soft()
	from := func(p unit.Pascal) float64 { x := (logP - math.Log(float64(p))) / 0.08; return x * x / 2 }
	return (1-q)*(curveOf{m.Wheel, d.course}.watts(logP)+from(m.practice())) + q*from(m.squashFloor())
}
