package due

import (
	"cmp"
	"slices"

	"rimside/calc/check"
	"rimside/calc/unit"
)

// Event is something noted about a bike.
type Event struct {
	check.Event
	Side  string  // front, rear; "" is both
	Hours float64 // of a ride
	KM    float64 // of a ride
	Sweat string  // of an indoor ride
	MM    float64 // measured at a rotor or pads; 0 is not measured
}

// past is a history up to today, in order of days.
type past []Event

func upTo(history []Event, today unit.Day) past {
	var out past
	for _, e := range history {
		if e.Day <= today {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b Event) int { return cmp.Compare(a.Day, b.Day) })
	return out
}

// last is the latest event of any of these kinds at a side.
func (p past) last(side string, kinds ...string) (Event, bool) {
	for i := len(p) - 1; i >= 0; i-- {
		if p[i].at(side) && slices.Contains(kinds, p[i].Kind) {
			return p[i], true
		}
	}
	return Event{}, false
}

// lastLook is the latest check at any of these moments.
func (p past) lastLook(moments ...string) (Event, bool) {
	for i := len(p) - 1; i >= 0; i-- {
		if p[i].Kind == "check" && slices.Contains(moments, p[i].Moment) {
			return p[i], true
		}
	}
	return Event{}, false
}

// measured is the latest that has a measured value.
func (p past) measured(side, kind string) (Event, bool) {
	for i := len(p) - 1; i >= 0; i-- {
		if p[i].at(side) && p[i].Kind == kind && (p[i].MM > 0 || p[i].New) {
			return p[i], true
		}
	}
	return Event{}, false
}

func (e Event) at(side string) bool { return side == "" || e.Side == "" || e.Side == side }

// reached is the day on which the rides from a day on had gone a distance.
func (p past) reached(from unit.Day, km float64) (unit.Day, bool) {
	gone := 0.0
	for _, e := range p {
		if e.Kind == "ride" && e.Day >= from {
			if gone += e.KM; gone >= km {
				return e.Day, true
			}
		}
	}
	return 0, false
}
