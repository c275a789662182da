package pack_test

import (
	"slices"
	"testing"

	"rimside/calc/pack"
)

// The published lists of codes hold what some bike on some way is told, and nothing else: the words of each language follow them.
func TestCodesAreListed(t *testing.T) {
	told := map[string]map[string]bool{"step": {}, "stage": {}, "tool": {}, "note": {}, "as built": {}, "question": {}}
	see := func(kind string, codes ...string) {
		for _, code := range codes {
			told[kind][code] = true
		}
	}
	for _, build := range builds {
		for _, way := range pack.Ways() {
			for _, home := range []bool{false, true} {
				a := pack.Plan(pack.Trip{Bike: build, Way: pack.Way(way), Home: home})
				see("tool", a.Bag...)
				for _, s := range slices.Concat(a.Steps, a.Arrival) {
					see("step", s.ID)
					see("stage", s.Stage)
					see("note", s.Notes...)
					see("as built", s.AsBuilt...)
				}
				for _, q := range a.Ask {
					see("question", q.Field)
				}
			}
		}
	}
	half := builds["gravel"]
	half.Front.RotorMount = ""
	for _, q := range pack.Plan(pack.Trip{Bike: half, Way: pack.AirBag}).Ask {
		see("question", q.Field)
	}
	for kind, listed := range map[string][]string{
		"step": pack.StepIDs(), "stage": pack.Stages(), "tool": pack.Tools(), "note": pack.Notes(), "as built": pack.AsBuilt(), "question": pack.Questions(),
	} {
		for _, code := range listed {
			if !told[kind][code] {
				t.Errorf("no bike is ever told the %s %s", kind, code)
			}
		}
		for code := range told[kind] {
			if !slices.Contains(listed, code) {
				t.Errorf("the %s %s is not listed", kind, code)
			}
		}
	}
}

// Stages stand in the order of the work, each in one piece.
func TestStagesStandInOrder(t *testing.T) {
	for name, build := range builds {
		for _, way := range pack.Ways() {
			a, last := pack.Plan(pack.Trip{Bike: build, Way: pack.Way(way)}), 0
			for _, s := range slices.Concat(a.Steps, a.Arrival) {
				at := slices.Index(pack.Stages(), s.Stage)
				if at < last {
					t.Errorf("%s, %s: %s stands in %s, out of order", way, name, s.ID, s.Stage)
				}
				last = max(last, at)
			}
		}
	}
}
