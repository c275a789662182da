package check

import (
	"cmp"
	"slices"

	"rimside/calc/unit"
)

// Event is something that happened to a bike, as far as checks care.
type Event struct {
	Day        unit.Day
	Kind       string // one of Events
	Conditions string // of a ride: indoor, wet, salted, dry; "" is not known
	Moment     string // of a check
	New        bool   // of pads and rotor: fitted new
}

// Events lists what may happen, as keys.
func Events() []string {
	return []string{
		"ride", "wash", "wipe", "crash", "transport", "check", "sealant", "rotor", "pads", "spokes", "bolts", "built", "fitted", "width",
	}
}

// AnsweredBy are the moments whose check answers a crash or a journey (transport); none for other events.
func AnsweredBy(event string) []string {
	switch event {
	case "crash":
		return []string{"crash"}
	case "transport":
		return []string{"arrival", "evening"}
	}
	return nil
}

// state is what a history leaves standing.
type state struct{ crashed, carried, sweaty, fresh bool }

// read goes through a history in order of days; on one day a ride stands before what was done to the bike after it.
func read(history []Event) state {
	events := slices.Clone(history)
	slices.SortStableFunc(events, func(a, b Event) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(turn(a.Kind), turn(b.Kind)))
	})
	now := state{sweaty: true} // until a wash is known
	for _, e := range events {
		now = now.after(e)
	}
	return now
}

// withoutIndoor leaves out the rides on a trainer.
func withoutIndoor(history []Event) []Event {
	return slices.DeleteFunc(slices.Clone(history), func(e Event) bool { return e.Kind == "ride" && e.Conditions == "indoor" })
}

// turn orders a day: what happens to a bike, then what is done to it.
func turn(kind string) int {
	if kind == "ride" || kind == "crash" || kind == "transport" {
		return 0
	}
	return 1
}

func (s state) after(e Event) state {
	switch e.Kind {
	case "ride":
		s.sweaty = s.sweaty || e.Conditions != "dry"
		s.fresh = false
	case "wash":
		s.sweaty = false
	case "crash":
		s.crashed = true
	case "transport":
		s.carried = true
	case "pads", "rotor":
		s.fresh = s.fresh || e.New
	case "check":
		s.crashed = s.crashed && !slices.Contains(AnsweredBy("crash"), e.Moment)
		s.carried = s.carried && !slices.Contains(AnsweredBy("transport"), e.Moment)
	}
	return s
}
