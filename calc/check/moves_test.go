package check_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/check"
	"rimside/calc/unit"
)

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
