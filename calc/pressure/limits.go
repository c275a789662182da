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

// rimMarks are the maxima that the rim sets, whatever tyre is on it: its own marking, the cap of every hookless rim, its own
// table, and on a hooked rim that nobody has read what an unread mark counts as.
func (w WheelSetup) rimMarks() []mark {
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
	if w.rimUnread() {
		marks = append(marks, mark{LimitUnread, UnreadMax})
	}
	return marks
}

// marks are all maxima of a wheel.
func (w WheelSetup) marks() []mark {
	if w.Tyre.Max > 0 {
		return append([]mark{{LimitTyre, w.Tyre.Max}}, w.rimMarks()...)
	}
	return append(w.rimMarks(), mark{LimitUnread, UnreadMax})
}

// noMark is the mark of a tyre that is not there yet: what it must show comes from its number.
var noMark = mark{max: unit.Pascal(1e9)}

// lowest is the mark that binds.
func lowest(marks []mark) mark {
	least := mark{max: unit.Pascal(math.Inf(1))}
	for _, candidate := range marks {
		if candidate.max < least.max {
			least = candidate
		}
	}
	return least
}

// rimUnread says that nothing is known of what the rim allows; its own table counts as its marking.
func (w WheelSetup) rimUnread() bool { return w.Rim.Max == 0 && w.Rim.Table.Max == 0 }

// Missing names printed maxima that nobody has read.
type Missing string

// The maxima that may be missing.
const (
	MissingTyre Missing = "tyre"
	MissingRim  Missing = "rim"
	MissingBoth Missing = "both"
)

// unread says which of the two printed maxima is missing, "" when none is.
func (w WheelSetup) unread() Missing {
	switch tyreUnread := w.Tyre.Max == 0; {
	case tyreUnread && w.rimUnread():
		return MissingBoth
	case tyreUnread:
		return MissingTyre
	case w.rimUnread():
		return MissingRim
	}
	return ""
}

// moment is a point of the day at which a limit binds.
type moment struct {
	code  Code // of the notice that tells of it
	state air.State
}

// moments are those at which every limit binds, whatever the rider stands at: the ride, where it is set, the warmest hour at the ride's
// altitude, and the further places along the ride, each also at the warmest hour.
func (in Input) moments() []moment {
	out := []moment{{AtLimitRide, in.Ride}, {AtLimitSet, in.Set}}
	if in.Warmest != nil {
		out = append(out, moment{AtLimitWarmest, air.State{Temperature: *in.Warmest, Altitude: in.Ride.Altitude}})
	}
	for _, place := range in.Along {
		here := place
		if here.Temperature == 0 {
			here.Temperature = lapsed(in.Ride.Temperature, in.Ride.Altitude, place.Altitude)
		}
		out = append(out, moment{AtLimitRide, here})
		if in.Warmest != nil {
			warmest := lapsed(*in.Warmest, in.Ride.Altitude, place.Altitude)
			out = append(out, moment{AtLimitWarmest, air.State{Temperature: max(warmest, here.Temperature), Altitude: place.Altitude}})
		}
	}
	return out
}

// lapsed is a temperature carried to another altitude by the standard lapse (ISO 2533).
func lapsed(at unit.Kelvin, from, to unit.Metre) unit.Kelvin {
	return at - unit.Kelvin(air.LapseRate*float64(to-from))
}

// ceiling is the highest pressure at the ride that a mark allows at all three moments.
type ceiling struct {
	mark
	at    unit.Pascal // what the mark leaves at the ride
	binds Code        // of the moment that binds
}

// ceilingUnder carries a mark back to the ride from each moment. Errors: those of air.Carry.
func (in Input) ceilingUnder(m mark) (ceiling, error) {
	c := ceiling{mark: m, at: unit.Pascal(math.Inf(1))}
	for _, mo := range in.moments() {
		allowed, err := air.Carry(m.max, mo.state, in.Ride)
		if err != nil {
			return ceiling{}, err
		}
		if allowed < c.at {
			c.at, c.binds = allowed, mo.code
		}
	}
	return c, nil
}

// markSlack lifts a needed mark above the last bits that carrying there and back may cost.
const markSlack = 1e-9

// markFor is the least mark under which this pressure at the ride is allowed at all three moments. Errors: those of air.Carry.
func (in Input) markFor(p unit.Pascal) (unit.Pascal, error) {
	var least unit.Pascal
	for _, mo := range in.moments() {
		needed, err := air.Carry(p, in.Ride, mo.state)
		if err != nil {
			return 0, err
		}
		least = max(least, needed)
	}
	return least * (1 + markSlack), nil
}
