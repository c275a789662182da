package check_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/check"
)

// Every row is whole and stands at a known station in walking order.
func TestRowsAreWhole(t *testing.T) {
	for _, moment := range check.Moments() {
		seen, last := map[string]bool{}, 0
		for _, c := range check.Ask(check.Bike{}, moment, []check.Event{on(1, "crash"), on(1, "transport"), fitted(1, "pads")}) {
			if !slices.Contains(check.Sources(), string(c.Source)) {
				t.Errorf("%s: no source %q", c.ID, c.Source)
			}
			if seen[c.ID] || len(c.ID) > 60 || !slices.Contains([]check.Severity{check.Note, check.Care, check.Stop}, c.Worst) {
				t.Errorf("%s: twice, too long for a record, or worst is %q", c.ID, c.Worst)
			}
			seen[c.ID] = true
			at := slices.Index(check.Stations(), c.Station)
			if at < last {
				t.Errorf("%s, %s: out of walking order", moment, c.ID)
			}
			last = at
		}
		if len(seen) == 0 {
			t.Errorf("nothing is asked at %s", moment)
		}
	}
	if got := check.Ask(check.Bike{}, "midnight", nil); len(got) != 0 {
		t.Errorf("an unknown moment asks %d", len(got))
	}
}

func firstOf(list []check.Check) []string {
	var out []string
	for _, c := range list {
		if c.Group == check.First {
			out = append(out, c.ID)
		}
	}
	return out
}

// At most twenty rows stand before the rest, whatever the bike; axle, levers, bars and frame are always among them, and where there are
// no two levels all rows are first.
func TestWhatCanHurtStandsFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bike := forget(t, drawBike(t))
		moment := rapid.SampledFrom(check.Moments()).Draw(t, "moment")
		list := check.Ask(bike, moment, drawHistory(t))
		first := firstOf(list)
		if !slices.Contains([]string{"evening", "crash", "arrival"}, moment) {
			if len(first) != len(list) {
				t.Fatalf("%s: %d of %d are first", moment, len(first), len(list))
			}
			return
		}
		if len(first) > check.MostFirst || len(first) < 8 {
			t.Fatalf("%s: %d are first", moment, len(first))
		}
		for _, id := range []string{"bar.levers", "bar.headset", "frame.frame"} {
			if !slices.Contains(first, id) {
				t.Fatalf("%s: %s is not among %v", moment, id, first)
			}
		}
		if !slices.Contains(first, "front_wheel.quick_release") && !slices.Contains(first, "front_wheel.through_axle") {
			t.Fatalf("%s: no axle among %v", moment, first)
		}
	})
}

// How long the lists are, for the bike that is asked most of what is certain.
func TestLengthOfTheTwoLevels(t *testing.T) {
	for moment, want := range map[string]int{"evening": 20, "crash": 20, "arrival": 20} {
		list := check.Ask(carbonBike, moment, washed)
		if first := len(firstOf(list)); first > want || first < want-3 {
			t.Errorf("%s: %d of %d rows stand first: %v", moment, first, len(list), firstOf(list))
		}
	}
}
