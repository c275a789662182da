package check_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"rimside/calc/check"
)

// A rotor of 1.54 mm without a mark is replaced, and accepted when it is marked 1.50: the number on the part wins.
func TestJudgements(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("testdata", "judgements.json"))
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		What         check.Measure
		MM           float64
		RotorMin     float64 `json:"rotor_min_mm"`
		Road, Racing bool
		Severity     check.Severity
	}
	if err := json.Unmarshal(raw, &cases); err != nil || len(cases) < 20 {
		t.Fatalf("%d cases, %v", len(cases), err)
	}
	for _, c := range cases {
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
