package pressure_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"rimside/calc/pressure"
	"rimside/calc/unit"
)

// The same table holds the phone's own sum to these answers.
func TestShiftsOfTheSharedTable(t *testing.T) {
	text, err := os.ReadFile("testdata/shifts.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name  string
		Notes []struct {
			Ridden   float64 `json:"ridden_kpa"`
			Custom   float64 `json:"custom_kpa"`
			Firmness int
			Felt     pressure.Felt
			Struck   bool `json:"rim_strike"`
		}
		Shift float64
	}
	if err := json.Unmarshal(text, &cases); err != nil || len(cases) == 0 {
		t.Fatal(len(cases), err)
	}
	for _, c := range cases {
		var notes []pressure.RideNote
		for _, n := range c.Notes {
			notes = append(notes, pressure.RideNote{Ridden: unit.FromKPa(n.Ridden), Custom: unit.FromKPa(n.Custom), Firmness: n.Firmness, Felt: n.Felt, Struck: n.Struck})
		}
		if got := pressure.Shift(notes); math.Abs(got-c.Shift) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.Name, got, c.Shift)
		}
	}
}

// asRidden is a note of somebody who rode custom times e^shift.
func asRidden(shift float64, felt pressure.Felt) pressure.RideNote {
	custom := unit.FromKPa(230)
	return pressure.RideNote{Ridden: custom * unit.Pascal(math.Exp(shift)), Custom: custom, Felt: felt}
}

// Identity: who rides what was asked for and finds it right moves nothing, however often.
func TestRightAtWhatWasAskedForMovesNothing(t *testing.T) {
	notes := []pressure.RideNote{asRidden(0, pressure.FeltHard)}
	first := pressure.Shift(notes)
	for range 40 {
		notes = append(notes, asRidden(pressure.Shift(notes), pressure.FeltRight))
	}
	if last := pressure.Shift(notes); math.Abs(last-first) > 1e-12 {
		t.Errorf("the shift drifts from %v to %v", first, last)
	}
}

// Limit: one note moves half of what it says, many notes of the same move all of it.
func TestManyNotesOutweighThePrior(t *testing.T) {
	const says = -0.08
	var notes []pressure.RideNote
	before := 0.0
	for n := 1; n <= 400; n++ {
		notes = append(notes, asRidden(says, pressure.FeltRight))
		got := pressure.Shift(notes)
		if want := says * float64(n) / float64(n+1); math.Abs(got-want) > 1e-12 {
			t.Fatalf("after %d notes %v, want %v", n, got, want)
		}
		if got >= before {
			t.Fatalf("note %d moves away from what all say: %v after %v", n, got, before)
		}
		before = got
	}
}

// Inverse: an answer and its opposite cancel, and harsher always asks for less air.
func TestOppositeAnswersCancel(t *testing.T) {
	order := []pressure.Felt{pressure.FeltTooHard, pressure.FeltHard, pressure.FeltRight, pressure.FeltSoft, pressure.FeltTooSoft}
	last := math.Inf(-1)
	for i, felt := range order {
		one := pressure.Shift([]pressure.RideNote{asRidden(0, felt)})
		if one <= last {
			t.Errorf("%s asks for %v, no more than the harsher answer's %v", felt, one, last)
		}
		last = one
		opposite := asRidden(0, order[len(order)-1-i])
		if got := pressure.Shift([]pressure.RideNote{asRidden(0, felt), opposite}); math.Abs(got) > 1e-12 {
			t.Errorf("%s and its opposite leave %v", felt, got)
		}
	}
}

// Whatever was noted, custom is never more than e^0.5 away.
func TestNoNoteMovesWithoutBound(t *testing.T) {
	for _, ridden := range []unit.Pascal{1, 1e12, unit.Pascal(math.Inf(1)), unit.Pascal(math.NaN())} {
		var notes []pressure.RideNote
		for range 1000 {
			notes = append(notes, pressure.RideNote{Ridden: ridden, Custom: 2e5, Felt: pressure.FeltRight})
		}
		if got := pressure.Shift(notes); !(math.Abs(got) <= pressure.ShiftMost) {
			t.Errorf("ridden %v: shift %v", ridden, got)
		}
	}
}
