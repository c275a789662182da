package ready

import (
	"rimside/calc/check"
	"rimside/calc/unit"
)

// Kind is what an event tells of.
type Kind string

// The kinds of events.
const (
	Finding  Kind = "finding"
	Closed   Kind = "closed" // a finding is
	Measured Kind = "measured"
	Walk     Kind = "walk"    // around the bike, ended or not
	Crash    Kind = "crash"   // or a fall
	Journey  Kind = "journey" // as luggage
	Mounted  Kind = "mounted" // a wheel or tyre has come onto the bike
	Arrival  Kind = "arrival" // how far putting together after a journey has come
	Service  Kind = "service" // work done, a part replaced
)

// Kinds lists them as keys.
func Kinds() []string {
	return []string{
		string(Finding), string(Closed), string(Measured), string(Walk), string(Crash), string(Journey), string(Mounted), string(Arrival), string(Service),
	}
}

// Event is something noted. Which members count depends on its kind; "" and 0 are not known.
type Event struct {
	Kind Kind
	Day  unit.Day
	At   float64 // of the day, ms since 1970
	Bike string  // "" is the bike asked about

	Thing    string         // what it belongs to: a wheel, a tyre, or the bike where it is ""
	ID       string         // of a finding, and of the finding that is closed
	Severity check.Severity // of a finding
	Item     string         // the row of a walk-around that a finding answers

	What string  // was measured, or was done
	MM   float64 // measured
	Side string  // of what belongs to the bike: front, rear

	Moment        string // of a walk-around
	Asked, Looked int    // rows of a walk-around
	Ended         bool   // it was gone through to its end

	Trip     string // of an arrival
	MustLeft int    // steps without which the bike is not whole
}

// after says that an event certainly came after another: on a later day, or later on the same day by the clock of both. Without both
// clocks the order within a day is not known.
func (e Event) after(other Event) bool {
	return e.Day > other.Day || e.Day == other.Day && e.At > other.At && other.At > 0
}
