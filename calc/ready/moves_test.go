package ready_test

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/check"
	"rimside/calc/ready"
	"rimside/calc/unit"
)

// badness of a state, for comparing.
func badness(a ready.Answer) int {
	return slices.Index([]ready.State{ready.NoFaultFound, ready.NotLookedAt, ready.Care, ready.Stop}, a.State)
}

var things = []string{"", "b", "wf", "wr", "tf", "tr", "elsewhere"}

func drawEvent(t *rapid.T) ready.Event {
	e := ready.Event{
		Kind: ready.Kind(rapid.SampledFrom(ready.Kinds()).Draw(t, "kind")), Day: today - unit.Day(rapid.IntRange(-1, 9).Draw(t, "ago")),
		At: rapid.SampledFrom([]float64{0, 1, 2, 3}).Draw(t, "at"), Bike: rapid.SampledFrom([]string{"", "b", "other"}).Draw(t, "bike"),
		Thing: rapid.SampledFrom(things).Draw(t, "thing"), ID: rapid.SampledFrom([]string{"1", "2", "3"}).Draw(t, "id"),
		Severity: rapid.SampledFrom([]check.Severity{check.Note, check.Care, check.Stop}).Draw(t, "severity"),
		MM:       rapid.SampledFrom([]float64{0.4, 1.2, 1.45, 1.6, 3, 7}).Draw(t, "mm"), Side: rapid.SampledFrom([]string{"", "front", "rear"}).Draw(t, "side"),
		Moment: rapid.SampledFrom(check.Moments()).Draw(t, "moment"), Asked: 9, Looked: rapid.SampledFrom([]int{9, 9, 9, 8, 0}).Draw(t, "looked"),
		Ended: rapid.SampledFrom([]bool{true, true, false}).Draw(t, "ended"), Trip: "t", MustLeft: rapid.IntRange(0, 1).Draw(t, "left"),
	}
	e.What = rapid.SampledFrom(check.Measures()).Draw(t, "what")
	if e.Kind == ready.Service {
		e.What = rapid.SampledFrom([]string{"rotor", "pads_front", "built", "bolts"}).Draw(t, "service")
	}
	return e
}

func drawEvents(t *rapid.T) []ready.Event {
	return rapid.SliceOfN(rapid.Custom(drawEvent), 0, 12).Draw(t, "events")
}

func with(events []ready.Event, more ...ready.Event) []ready.Event {
	return append(slices.Clone(events), more...)
}

// Bad news never improves the state, good news never worsens it, and no fault is found only without a reason and with a whole walk.
func TestNothingHidesTheWorst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events := drawEvents(t)
		was := ready.Decide(sound(), events, today)
		extra := drawEvent(t)
		extra.ID = "new"
		for _, bad := range []ready.Kind{ready.Finding, ready.Crash, ready.Journey, ready.Mounted} {
			if is := ready.Decide(sound(), with(events, of(bad, extra)), today); badness(is) < badness(was) || len(is.Reasons) < len(was.Reasons) {
				t.Fatalf("%+v made %s of %s", of(bad, extra), is.State, was.State)
			}
		}
		for _, id := range []string{"1", "2", "3"} {
			closed := of(ready.Closed, ready.Event{ID: id, Day: today})
			if is := ready.Decide(sound(), with(events, closed), today); badness(is) > badness(was) {
				t.Fatalf("closing %s made %s of %s", id, is.State, was.State)
			}
		}
		whole := slices.ContainsFunc(events, func(e ready.Event) bool { return e.Kind == ready.Walk && e.Ended && e.Looked == e.Asked })
		if was.State == ready.NoFaultFound && (len(was.Reasons) > 0 || !whole) {
			t.Fatalf("no fault found with %+v", was.Reasons)
		}
		for _, r := range was.Reasons {
			if r.Severity == check.Stop != (was.State == ready.Stop) && r.Severity == check.Stop || was.State == ready.NotLookedAt {
				t.Fatalf("%s with %+v", was.State, r)
			}
		}
	})
}

// Leaving a row out never helps, nor does breaking a walk off when the rest of it was gone through whole.
func TestSkippingNeverHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events := drawEvents(t)
		was := badness(ready.Decide(sound(), events, today))
		for i, e := range events {
			if e.Kind != ready.Walk || e.Looked == 0 {
				continue
			}
			changed := slices.Clone(events)
			changed[i].Looked = rapid.IntRange(0, e.Looked-1).Draw(t, "fewer")
			if is := badness(ready.Decide(sound(), changed, today)); is < was {
				t.Fatalf("skipping made %d of %d", is, was)
			}
			changed[i] = e
			if changed[i].Ended = false; e.Looked == e.Asked && badness(ready.Decide(sound(), changed, today)) < was {
				t.Fatalf("breaking off helped")
			}
		}
	})
}

// told is an answer with what is told of the last look: walks may differ in what belongs to other events.
func told(a ready.Answer) ready.Answer {
	if l := a.LastLook; l != nil {
		a.LastLook = &ready.Event{Moment: l.Moment, Day: l.Day, Asked: l.Asked, Looked: l.Looked}
	}
	return a
}

// The order in which events are given never matters, whatever their clocks.
func TestOrderNeverMatters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events := drawEvents(t)
		if rapid.Bool().Draw(t, "all at once") { // then only what they say tells them apart
			for i := range events {
				events[i].Day, events[i].At, events[i].Bike, events[i].Kind = today, 0, "", events[0].Kind
			}
		}
		other := rapid.Permutation(events).Draw(t, "other order")
		if a, b := told(ready.Decide(sound(), events, today)), told(ready.Decide(sound(), other, today)); !reflect.DeepEqual(a, b) {
			t.Fatalf("%+v\n%+v", a, b)
		}
	})
}

// What belongs to a wheel goes where the wheel goes: the bike that gets it has its reasons, the one that gave it away has them no more.
func TestReasonsGoWithTheWheel(t *testing.T) {
	mine := func(a ready.Answer, things ...string) []ready.Reason {
		var out []ready.Reason
		for _, r := range a.Reasons {
			if slices.Contains(things, r.Thing) {
				out = append(out, r)
			}
		}
		return out
	}
	rapid.Check(t, func(t *rapid.T) {
		events := drawEvents(t)
		gave, got := sound(), ready.Bike{ID: "c", Ends: []ready.End{end("front", "wx", "tx"), end("rear", "wr", "tr")}}
		before := mine(ready.Decide(gave, events, today), "wr", "tr")
		gave.Ends = gave.Ends[:1]
		if after := mine(ready.Decide(got, events, today), "wr", "tr"); !reflect.DeepEqual(before, after) {
			t.Fatalf("%+v came along as %+v", before, after)
		}
		if left := mine(ready.Decide(gave, events, today), "wr", "tr"); left != nil {
			t.Fatalf("%+v stayed behind", left)
		}
	})
}
