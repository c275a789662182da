package ready

import (
	"rimside/calc/check"
	"rimside/calc/unit"
)

// State is whether a bike may be ridden.
type State string

// The states, best first. Not looked at stands after a fault that is known only because it says nothing of the bike.
const (
	NoFaultFound State = "no_fault_found"
	NotLookedAt  State = "not_looked_at"
	Care         State = "care"
	Stop         State = "stop"
)

// States lists them as keys, the worst first.
func States() []string {
	return []string{string(Stop), string(Care), string(NoFaultFound), string(NotLookedAt)}
}

// LookDays is how long a walk-around counts, in days (our choice).
const LookDays = 7

// Answer is the state with its reasons, the worst first, and the last walk-around that was ended, nil where there is none.
type Answer struct {
	State    State
	Reasons  []Reason
	LastLook *Event
}

// Decide says whether a bike may be ridden on a day. Events of other bikes and things are passed over. What is dated after today
// counts only where it makes things worse: a clock that is ahead hides nothing and promises nothing.
func Decide(bike Bike, events []Event, today unit.Day) Answer {
	n := noted{bike: bike, today: today}
	for _, e := range events {
		if bike.concerns(e) && !(e.Day > today && reassures(e.Kind)) {
			n.events = append(n.events, e)
		}
	}
	a := Answer{Reasons: n.reasons(), LastLook: n.lastLook()}
	a.State = n.state(a.Reasons)
	return a
}

// reassures says that an event can make a state better, or is a plan while it lies ahead. (A closed finding is closed.)
func reassures(kind Kind) bool { return kind == Walk || kind == Service || kind == Journey }

// noted is what concerns one bike.
type noted struct {
	bike   Bike
	today  unit.Day
	events []Event
}

func (n noted) state(reasons []Reason) State {
	state := NotLookedAt
	if n.lookedAt() {
		state = NoFaultFound
	}
	for _, r := range reasons {
		if r.Severity == check.Stop {
			return Stop
		}
		state = Care
	}
	return state
}

// of are the events of a kind.
func (n noted) of(kind Kind) []Event {
	var out []Event
	for _, e := range n.events {
		if e.Kind == kind {
			out = append(out, e)
		}
	}
	return out
}
