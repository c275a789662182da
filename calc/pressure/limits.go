package pressure

import (
	"math"

	"rimside/calc/air"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// mark is a maximum and where it is written.
type mark struct {
	limit Limit
	max   unit.Pascal
}

// rimMarks are the maxima that the rim sets for a printed width: its own marking, the cap of every hookless rim, and its
// own table.
func (w WheelSetup) rimMarks(label unit.Metre) []mark {
	var marks []mark
	if w.Rim.Max > 0 {
		marks = append(marks, mark{LimitRim, w.Rim.Max})
	}
	if w.Rim.Profile.TreatedHookless() {
		marks = append(marks, mark{LimitHookless, tyre.HooklessCap})
	}
	if w.Rim.Table.Max > 0 {
		marks = append(marks, mark{LimitTable, w.Rim.Table.Max})
	}
	return marks
}

// marks are all maxima of a wheel.
func (w WheelSetup) marks() []mark {
	marks := w.rimMarks(w.Tyre.Label)
	if w.Tyre.Max > 0 {
		marks = append([]mark{{LimitTyre, w.Tyre.Max}}, marks...)
	}
	return marks
}

// lowest is the mark that binds; ok is false when nothing is known.
func lowest(marks []mark) (m mark, ok bool) {
	m.max = unit.Pascal(math.Inf(1))
	for _, candidate := range marks {
		if candidate.max < m.max {
			m, ok = candidate, true
		}
	}
	return m, ok
}

// maxUnknown says which of the two printed maxima is missing: "tyre", "rim", "both" or "". A rim's table counts as its
// marking.
func (w WheelSetup) maxUnknown() string {
	tyreMissing := w.Tyre.Max == 0
	rimMissing := w.Rim.Max == 0 && w.Rim.Table.Max == 0
	switch {
	case tyreMissing && rimMissing:
		return "both"
	case tyreMissing:
		return "tyre"
	case rimMissing:
		return "rim"
	}
	return ""
}

// moment is a point of the day at which a limit binds.
type moment string

const (
	atRide    moment = "ride"
	atSet     moment = "set"
	atWarmest moment = "warmest"
)

// ceiling is the highest pressure at the ride that a maximum allows there, where it is set, and at the warmest hour.
type ceiling struct {
	limit Limit
	mark  unit.Pascal // the maximum itself
	at    unit.Pascal // what it leaves at the ride
	binds moment
}

// ceilingUnder carries a maximum back to the ride from each moment at which it binds. Errors: those of air.Carry.
func ceilingUnder(m mark, in Input) (ceiling, error) {
	c := ceiling{limit: m.limit, mark: m.max, at: m.max, binds: atRide}
	moments := []struct {
		name  moment
		state air.State
	}{{atSet, in.Set}}
	if in.Warmest != nil {
		moments = append(moments, struct {
			name  moment
			state air.State
		}{atWarmest, air.State{Temperature: *in.Warmest, Altitude: in.Ride.Altitude}})
	}
	for _, mo := range moments {
		allowed, err := air.Carry(m.max, mo.state, in.Ride)
		if err != nil {
			return ceiling{}, err
		}
		if allowed < c.at {
			c.at, c.binds = allowed, mo.name
		}
	}
	return c, nil
}

// unread is the ceiling that stands in for a maximum that nobody has read on a hooked rim, and which one is missing ("" when
// none is; the ceiling is then out of reach). Errors: those of air.Carry.
func (w WheelSetup) unread(in Input) (c ceiling, missing string, err error) {
	missing = w.maxUnknown()
	if missing == "" {
		return ceiling{at: unit.Pascal(math.Inf(1))}, "", nil
	}
	c, err = ceilingUnder(mark{max: AskAbove}, in)
	return c, missing, err
}
