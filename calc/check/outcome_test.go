package check_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"rimside/calc/check"
)

func read[T any](t *testing.T, name string) []T {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	var cases []T
	if err := json.Unmarshal(raw, &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) < 20 {
		t.Errorf("only %d cases", len(cases))
	}
	return cases
}

// These cases are shared with the app, which comes to its outcome without asking here.
func TestOutcomes(t *testing.T) {
	type shared struct {
		Items      []check.Item
		Outcome    check.Outcome
		Looked, Of int
	}
	for _, c := range read[shared](t, "outcomes.json") {
		if got := check.Judge(c.Items); got != (check.Verdict{Outcome: c.Outcome, Looked: c.Looked, Of: c.Of}) {
			t.Errorf("%+v come to %+v, want %s, %d of %d", c.Items, got, c.Outcome, c.Looked, c.Of)
		}
	}
}

// These too. A rotor of 1.54 mm without a mark is replaced, and accepted when it is marked 1.50: the number on the part wins.
func TestJudgements(t *testing.T) {
	type shared struct {
		What         check.Measure
		MM           float64
		RotorMin     float64 `json:"rotor_min_mm"`
		Road, Racing bool
		Severity     check.Severity
	}
	for _, c := range read[shared](t, "judgements.json") {
		limits := check.LimitsOf(c.What, check.Bike{Road: c.Road, Racing: c.Racing}, check.Wheel{RotorMin: c.RotorMin})
		if got, ok := limits.Judge(c.MM); got != c.Severity || !ok {
			t.Errorf("%+v is judged %q, %v", c, got, ok)
		}
	}
}

func TestWhatIsNoMeasurement(t *testing.T) {
	for _, mm := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -0.1, 1001} {
		if got, ok := check.LimitsOf(check.Pads, check.Bike{}, check.Wheel{}).Judge(mm); ok {
			t.Errorf("%v is judged %q", mm, got)
		}
	}
	if got, ok := check.LimitsOf("length of hair", check.Bike{}, check.Wheel{}).Judge(1); ok {
		t.Errorf("what has no limits is judged %q", got)
	}
}

func TestLimitsInWords(t *testing.T) {
	for what, want := range map[check.Measure]string{
		check.RotorThickness: "under 1.55 mm: do not ride", check.RotorRunOut: "over 0.2 mm: ride with care", check.RimRunOut: "over 0.8 mm: ride with care",
		check.Pads: "0.5 mm or less: do not ride; 1.5 mm or less: ride with care", check.Wall: "1 mm or less: do not ride",
		check.Room: "under 1.6 mm: do not ride; under 6 mm: ride with care",
	} {
		if got := check.LimitsOf(what, check.Bike{}, check.Wheel{}).Words(); got != want {
			t.Errorf("%s: %s", what, got)
		}
	}
}

// The threads on sale do not interchange (trade axle guides), and what is not known fits nothing.
func TestThreads(t *testing.T) {
	threads := []check.Thread{{12, 1.0}, {12, 1.5}, {12, 1.75}, {15, 1.5}}
	for i, a := range threads {
		for j, b := range threads {
			if a.Fits(b) != (i == j) {
				t.Errorf("%v into %v: %v", a, b, a.Fits(b))
			}
		}
	}
	for _, unknown := range []check.Thread{{}, {12, 0}, {0, 1.5}, {math.NaN(), math.NaN()}} {
		if unknown.Fits(unknown) || unknown.Fits(threads[0]) {
			t.Errorf("%v fits", unknown)
		}
	}
}
