package ready

import (
	"cmp"
	"slices"

	"rimside/calc/check"
)

// answeredBy are the moments whose walk-around, gone through to its end, answers an event.
var answeredBy = map[Kind][]string{Crash: check.AnsweredBy("crash"), Journey: check.AnsweredBy("transport")}

// thorough are the moments with time and tools.
var thorough = []string{"evening", "crash", "arrival"}

func (e Event) whole() bool { return e.Ended && e.Asked > 0 && e.Looked >= e.Asked }

// fresh are the ended walk-arounds that still count.
func (n noted) fresh() []Event {
	var out []Event
	for _, w := range n.of(Walk) {
		if w.Ended && int(n.today-w.Day) <= LookDays {
			out = append(out, w)
		}
	}
	return out
}

// lookedAt says that a whole walk-around counts which nothing has overtaken: no crash, no journey, no other wheel or tyre.
func (n noted) lookedAt() bool {
	return slices.ContainsFunc(n.fresh(), func(w Event) bool { return w.whole() && !n.overtaken(w) })
}

func (n noted) overtaken(walk Event) bool {
	return slices.ContainsFunc(n.events, func(e Event) bool {
		return (e.Kind == Crash || e.Kind == Journey || e.Kind == Mounted) && !walk.after(e)
	})
}

// unanswered are the crashes or journeys after which no walk-around of theirs was ended.
func (n noted) unanswered(kind Kind, severity check.Severity) []Reason {
	var out []Reason
	for _, e := range n.of(kind) {
		answered := slices.ContainsFunc(n.of(Walk), func(w Event) bool {
			return w.Ended && slices.Contains(answeredBy[kind], w.Moment) && w.after(e)
		})
		if !answered {
			out = append(out, Reason{Code: Code(kind), Severity: severity, Thing: n.bike.ID, Event: e})
		}
	}
	return out
}

// skipped are the walk-arounds with rows left out that nothing has made good: a later one of the same moment, or a whole thorough one.
func (n noted) skipped() []Reason {
	var out []Reason
	fresh := n.fresh()
	for _, w := range fresh {
		if w.Looked >= w.Asked {
			continue
		}
		madeGood := slices.ContainsFunc(fresh, func(later Event) bool {
			return later.after(w) && later.Asked > 0 && (later.Moment == w.Moment || later.whole() && slices.Contains(thorough, later.Moment))
		})
		if !madeGood {
			out = append(out, Reason{Code: Skipped, Severity: check.Care, Thing: n.bike.ID, Event: w})
		}
	}
	return out
}

// lastLook is the last walk-around that was ended, however old; of those that may be the last the one that saw least.
func (n noted) lastLook() *Event {
	var last *Event
	for _, w := range n.of(Walk) {
		if w.Ended && (last == nil || w.last(*last) > 0) {
			last = &w
		}
	}
	return last
}

func (e Event) last(other Event) int {
	return cmp.Or(cmp.Compare(e.Day, other.Day), cmp.Compare(e.At, other.At),
		cmp.Compare(e.Asked-e.Looked, other.Asked-other.Looked), cmp.Compare(other.Looked, e.Looked), cmp.Compare(e.Moment, other.Moment))
}
