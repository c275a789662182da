package ready

import (
	"rimside/calc/check"
	"rimside/calc/tyre"
)

// End is one end of a bike, or a spare wheel on its own.
type End struct {
	Side        string // front, rear
	Wheel, Tyre string // their ids
	Built       check.Wheel
	Pair        tyre.Pair // the tyre on the rim as printed; a label or inner width of 0 is not known
}

// Bike is a bike with the ends that it has; its ID may be "" where only a wheel is asked about.
type Bike struct {
	check.Bike
	ID   string
	Ends []End
}

// concerns says whether an event is about this bike or about what is mounted on it now.
func (b Bike) concerns(e Event) bool {
	switch e.Kind {
	case Closed:
		return true // by the finding's id
	case Finding, Measured, Mounted, Service:
		if e.Thing != "" {
			return b.isOf(e.Thing)
		}
	}
	return e.Bike == "" || e.Bike == b.ID
}

func (b Bike) isOf(thing string) bool {
	if thing == b.ID {
		return true
	}
	for _, end := range b.Ends {
		if thing == end.Wheel || thing == end.Tyre {
			return true
		}
	}
	return false
}

// endsOf are the ends that an event may be about: that of its wheel or tyre, that of its side, or all.
func (b Bike) endsOf(e Event) []End {
	var out []End
	for _, end := range b.Ends {
		onWheel := e.Thing != "" && e.Thing != b.ID
		if onWheel && (e.Thing == end.Wheel || e.Thing == end.Tyre) || !onWheel && (e.Side == "" || e.Side == end.Side) {
			out = append(out, end)
		}
	}
	if len(out) == 0 { // an end of which nothing is known
		out = []End{{Side: e.Side}}
	}
	return out
}

// sameThing says that two events are about the same thing, at the same side as far as both say one.
func (b Bike) sameThing(x, y Event) bool {
	return b.thingOf(x) == b.thingOf(y) && (x.Side == y.Side || x.Side == "" || y.Side == "")
}

// thingOf is what an event belongs to.
func (b Bike) thingOf(e Event) string {
	if e.Thing == "" {
		return b.ID
	}
	return e.Thing
}
