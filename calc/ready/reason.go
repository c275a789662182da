package ready

import (
	"cmp"
	"slices"

	"rimside/calc/check"
	"rimside/calc/tyre"
)

// Code names a reason.
type Code string

// The reasons that are not named as their event.
const (
	OutOfLimits Code = "measured"
	Skipped     Code = "skipped"
	PairRefused Code = "pair"
	Unfinished  Code = "arrival"
)

// Codes lists all reasons.
func Codes() []string {
	return []string{
		string(Finding), string(OutOfLimits), string(PairRefused), string(Unfinished), string(Crash), string(Journey), string(Skipped),
	}
}

// Reason is why a bike may not be ridden, or only with care: the thing, and the event that told it (of a refused pair only the day).
type Reason struct {
	Code     Code
	Severity check.Severity // stop or care
	Thing    string
	Event    Event
	Side     string       // of what was measured, and of a pair
	Limit    check.Bound  // that a measured value has passed
	Refusal  tyre.Verdict // of a pair
	Pair     tyre.Pair
}

func (n noted) reasons() []Reason {
	all := slices.Concat(
		n.findings(), n.measured(), n.pairs(), n.unfinished(), n.unanswered(Crash, check.Stop), n.unanswered(Journey, check.Care), n.skipped(),
	)
	slices.SortStableFunc(all, Reason.compare)
	return all
}

// compare puts the worst first, then the newest; the rest only makes the order one.
func (r Reason) compare(other Reason) int {
	rank := func(r Reason) int { return slices.Index([]check.Severity{check.Stop, check.Care}, r.Severity) }
	a, b := r.Event, other.Event
	return cmp.Or(
		cmp.Compare(rank(r), rank(other)), cmp.Compare(b.Day, a.Day), cmp.Compare(b.At, a.At),
		cmp.Compare(slices.Index(Codes(), string(r.Code)), slices.Index(Codes(), string(other.Code))), cmp.Compare(r.Thing, other.Thing),
		cmp.Compare(r.Side, other.Side), cmp.Compare(a.ID, b.ID), cmp.Compare(a.What, b.What), cmp.Compare(a.MM, b.MM), cmp.Compare(a.Item, b.Item),
		cmp.Compare(a.Trip, b.Trip), cmp.Compare(a.MustLeft, b.MustLeft), a.last(b),
	)
}

// findings are those that nobody has closed. One to note is to be watched, and no reason; a severity of a newer book counts as care.
func (n noted) findings() []Reason {
	closed := n.of(Closed)
	var out []Reason
	for _, f := range n.of(Finding) {
		if f.Severity == check.Note || slices.ContainsFunc(closed, func(c Event) bool { return c.ID == f.ID }) {
			continue
		}
		severity := check.Care
		if f.Severity == check.Stop {
			severity = check.Stop
		}
		out = append(out, Reason{Code: Code(Finding), Severity: severity, Thing: n.bike.thingOf(f), Event: f})
	}
	return out
}

// unfinished are the arrivals where the last that was noted leaves steps without which nobody rides.
func (n noted) unfinished() []Reason {
	all := n.of(Arrival)
	var out []Reason
	for _, a := range all {
		overtaken := slices.ContainsFunc(all, func(later Event) bool { return later.Trip == a.Trip && later.after(a) })
		if a.MustLeft > 0 && !overtaken {
			out = append(out, Reason{Code: Unfinished, Severity: check.Stop, Thing: n.bike.ID, Event: a})
		}
	}
	return out
}

// pairs are the tyres that may not go on their rims.
func (n noted) pairs() []Reason {
	var out []Reason
	for _, end := range n.bike.Ends {
		if end.Pair.Label == 0 || end.Pair.Inner == 0 {
			continue
		}
		if why := end.Pair.Refusal(); why != "" {
			out = append(out, Reason{
				Code: PairRefused, Severity: check.Stop, Thing: end.Wheel, Event: Event{Day: n.today}, Side: end.Side, Refusal: why, Pair: end.Pair,
			})
		}
	}
	return out
}
