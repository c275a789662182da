package check_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/check"
	"rimside/calc/unit"
)

var order = []check.Outcome{check.NothingFound, check.RideWithCare, check.DoNotRide}

// badness of an outcome, for comparing.
func badness(items []check.Item) int { return slices.Index(order, check.Judge(items).Outcome) }

func drawItem(t *rapid.T) check.Item {
	return rapid.SampledFrom([]check.Item{
		{State: "ok"}, {State: "ok"}, {State: "skipped"}, {State: "found", Severity: check.Note}, {State: "found", Severity: check.Care}, {State: "found", Severity: check.Stop},
	}).Draw(t, "item")
}

func drawItems(t *rapid.T) []check.Item {
	return rapid.SliceOfN(rapid.Custom(drawItem), 0, 20).Draw(t, "items")
}

// A stop never ends better than do not ride; a finding never improves the outcome; skipping never helps; nothing found means that
// everything was looked at and all was well.
func TestNothingMakesItBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := drawItems(t)
		was := badness(items)
		stop := slices.Contains(items, check.Item{State: "found", Severity: check.Stop})
		if stop != (was == 2) {
			t.Fatalf("%+v with a stop %v is %s", items, stop, order[was])
		}
		wanted := len(items) > 0
		for _, i := range items {
			wanted = wanted && i.State == "ok"
		}
		if wanted != (was == 0) {
			t.Fatalf("%+v is %s", items, order[was])
		}
		extra := drawItem(t)
		if more := badness(append(slices.Clone(items), extra)); len(items) > 0 && more < was || extra.State == "skipped" && more == 0 {
			t.Fatalf("%+v made %s of %s", extra, order[more], order[was])
		}
		for i, item := range items {
			if item.State != "ok" {
				continue
			}
			for _, other := range []check.Item{{State: "skipped"}, {State: "found", Severity: check.Note}, {State: "found", Severity: check.Stop}} {
				changed := slices.Clone(items)
				changed[i] = other
				if badness(changed) < was || badness(changed) == 0 {
					t.Fatalf("%+v in place of ok made %s of %s", other, order[badness(changed)], order[was])
				}
			}
		}
	})
}

func pick(t *rapid.T, name string, choices ...string) string {
	return rapid.SampledFrom(choices).Draw(t, name)
}

func drawWheel(t *rapid.T) check.Wheel {
	materials := []string{"aluminium", "carbon", "stainless", "steel", "brass", "titanium", "magnesium"}
	return check.Wheel{
		Setup: pick(t, "setup", "tube", "tubeless", "insert"), Profile: pick(t, "profile", "hooked", "hookless"),
		Rim: pick(t, "rim", materials...), Nipple: pick(t, "nipple", materials...), Spoke: pick(t, "spoke", materials...), Hub: pick(t, "hub", materials...),
		Brake: pick(t, "brake", "disc", "rim"), Axle: pick(t, "axle", "quick_release", "through_axle"), RotorMount: pick(t, "mount", "six_bolt", "lockring"),
	}
}

func drawBike(t *rapid.T) check.Bike {
	return check.Bike{Front: drawWheel(t), Rear: drawWheel(t), Frame: pick(t, "frame", "carbon", "steel"), Bar: pick(t, "bar", "carbon", "aluminium")}
}

func drawHistory(t *rapid.T) []check.Event {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) check.Event {
		return check.Event{
			Day: unit.Day(rapid.IntRange(0, 9).Draw(t, "day")), Kind: rapid.SampledFrom(check.Events()).Draw(t, "kind"),
			Conditions: pick(t, "conditions", "", "indoor", "wet", "salted", "dry"), Moment: rapid.SampledFrom(append(check.Moments(), "")).Draw(t, "moment"),
			New: rapid.Bool().Draw(t, "new"),
		}
	}), 0, 8).Draw(t, "history")
}

func idsOf(list []check.Check) []string {
	out := make([]string, len(list))
	for i, c := range list {
		out[i] = c.ID
	}
	return out
}

// forget makes some of what is known of a bike unknown.
func forget(t *rapid.T, b check.Bike) check.Bike {
	for _, s := range []*string{
		&b.Frame, &b.Bar, &b.Front.Setup, &b.Front.Profile, &b.Front.Rim, &b.Front.Nipple, &b.Front.Hub, &b.Front.Brake, &b.Front.Axle, &b.Front.RotorMount,
		&b.Rear.Setup, &b.Rear.Profile, &b.Rear.Rim, &b.Rear.Nipple, &b.Rear.Hub, &b.Rear.Brake, &b.Rear.Axle, &b.Rear.RotorMount,
	} {
		if rapid.Bool().Draw(t, "forget") {
			*s = ""
		}
	}
	return b
}

// Knowing less never asks less.
func TestUnknownAsksAtLeastAsMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bike, history := drawBike(t), drawHistory(t)
		moment := rapid.SampledFrom(check.Moments()).Draw(t, "moment")
		known := idsOf(check.Ask(bike, moment, history))
		for _, less := range []check.Bike{forget(t, bike), {}} {
			asked := idsOf(check.Ask(less, moment, history))
			for _, id := range known {
				if !slices.Contains(asked, id) {
					t.Fatalf("%s is asked of %+v and not of %+v", id, bike, less)
				}
			}
		}
	})
}

// The start line is fast: at most two at a station, twelve in all, and every station is visited, whatever the bike.
func TestStartLineIsFast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := check.Ask(forget(t, drawBike(t)), "start", drawHistory(t))
		per := map[check.Station]int{}
		for _, c := range list {
			per[c.Station]++
		}
		for _, s := range check.Stations() {
			if per[s] < 1 || per[s] > 2 {
				t.Fatalf("%s has %d", s, per[s])
			}
		}
	})
}
