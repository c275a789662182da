package pressure

import (
	"math"

	"rimside/calc/ride"
	"rimside/calc/unit"
)

// reckoned is one wheel on the way from what it wants to its number.
type reckoned struct {
	mounted
	top     ceiling
	floor   unit.Pascal
	floorBy Limit
	want    unit.Pascal // after ratio and wet
	p0      unit.Pascal // held inside the limits, before the personal shift and firmness
	number  unit.Pascal
	limited Limit
}

// possible says that the floor leaves room under the ceiling: else there is no number.
func (r *reckoned) possible() bool { return r.floor <= r.top.at }

func (r *reckoned) held(p unit.Pascal) unit.Pascal { return max(r.floor, min(r.top.at, p)) }

// reckoning is both wheels; nil for one that may not be computed.
type reckoning struct {
	front, rear *reckoned
	ratio       Code // what the ratio did, "" for nothing
}

func (r reckoning) of(side Side) *reckoned {
	if side == Front {
		return r.front
	}
	return r.rear
}

// reckon works out both numbers on a course: wants, their ratio, wet, limits, the ratio once more inside them, and last the
// rider's own shift and firmness.
func (in Input) reckon(front, rear *candidate, course ride.Course) reckoning {
	r := reckoning{front: wanting(front, course), rear: wanting(rear, course)}
	var both ratio
	same := false
	if r.front != nil && r.rear != nil {
		if both, same = ratioOf(r.front.mounted, r.rear.mounted); same {
			r.front.want, r.rear.want, r.ratio = both.wants(r.front.want, r.rear.want)
		}
	}
	for _, w := range []*reckoned{r.front, r.rear} {
		if w != nil {
			if in.Wet {
				w.want *= WetFactor
			}
			w.p0 = w.held(w.want)
		}
	}
	if same && r.front.possible() && r.rear.possible() {
		p0, did := both.within(r.front.p0, r.rear.p0, r.front.floor, r.front.top.at)
		r.front.p0 = p0
		if did != "" {
			r.ratio = did
		}
	}
	for _, w := range []*reckoned{r.front, r.rear} {
		if w != nil {
			w.settle(in.Shift.of(w.side), in.Firmness)
		}
	}
	return r
}

// candidate is a wheel that may be computed, with its ceiling.
type candidate struct {
	mounted
	top ceiling
}

func wanting(c *candidate, course ride.Course) *reckoned {
	if c == nil {
		return nil
	}
	r := &reckoned{mounted: c.mounted, top: c.top, want: wantOf(c.mounted, course), limited: LimitNone}
	r.floor, r.floorBy = r.mounted.floor()
	return r
}

// settle gives the number, p_0 e^shift 1.05^firmness inside the limits, and says which limit holds it.
func (r *reckoned) settle(shift float64, firmness int) {
	asked := r.p0 * unit.Pascal(math.Exp(shift)*math.Pow(1+FirmStep, float64(firmness)))
	r.number = r.held(asked)
	switch {
	case asked >= r.top.at:
		r.limited = r.top.limit
	case asked <= r.floor:
		r.limited = r.floorBy
	}
}
