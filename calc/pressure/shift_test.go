package pressure_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"rimside/calc/pressure"
	"rimside/calc/unit"
)

func TestShiftsOfTheTable(t *testing.T) {
	text, err := os.ReadFile("testdata/shifts.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name  string
		Notes []struct {
			Ride   string
			Side   pressure.Side `json:"wheel"`
			Ridden float64       `json:"ridden_kpa"`
			P0     float64       `json:"p0_kpa"`
			Felt   pressure.Felt
			Struck bool
			Label  float64 `json:"label_mm"`
		}
		Shift                  float64
		Count                  int `json:"notes_counted"`
		OtherTyre, UnknownTyre int
	}
	if err := json.Unmarshal(text, &cases); err != nil || len(cases) < 15 {
		t.Fatal(len(cases), err)
	}
	now := pressure.Kind{Label: unit.FromMM(40), Sidewall: "glove", Setup: "tubeless"}
	for _, c := range cases {
		var notes []pressure.RideNote
		for _, n := range c.Notes {
			note := pressure.RideNote{Ride: n.Ride, Side: n.Side, Ridden: unit.FromKPa(n.Ridden), P0: unit.FromKPa(n.P0), Felt: n.Felt, Struck: n.Struck}
			if n.Side == "" {
				note.Side = pressure.Front
			}
			if n.Label >= 0 { // left out: the tyre that is on now; below 0: not known
				kind := now
				if n.Label > 0 {
					kind.Label = unit.FromMM(n.Label)
				}
				note.Tyre = &kind
			}
			notes = append(notes, note)
		}
		got := pressure.Learn(notes, pressure.Front, now)
		if math.Abs(got.Shift-c.Shift) > 1e-9 || got.Notes != c.Count {
			t.Errorf("%s: %+v, want %v from %d notes", c.Name, got, c.Shift, c.Count)
		}
	}
}

var kind = pressure.Kind{Label: unit.FromMM(40), Sidewall: "glove", Setup: "tubeless"}

// ridden is a note of somebody who rode p_0 e^off.
func ridden(off float64, felt pressure.Felt) pressure.RideNote {
	p0 := unit.FromKPa(230)
	return pressure.RideNote{Side: pressure.Front, Tyre: &kind, Ridden: p0 * unit.Pascal(math.Exp(off)), P0: p0, Felt: felt}
}

func shift(notes ...pressure.RideNote) float64 {
	return pressure.Learn(notes, pressure.Front, kind).Shift
}

// Identity: who rides what was recommended and finds it right moves nothing, however often. Judged by what was wrong: the pressure of
// usual practice in place of p_0 would make the next number softer on rough ground.
func TestRightOnWhatWasAdvisedMovesNothing(t *testing.T) {
	a := mustDecide(t, inputOf(setupOf(40, "glove", "tubeless"), stretchOf("setts", 22, 1)))
	note := pressure.RideNote{Side: pressure.Front, Tyre: &kind, Ridden: a.Front.Advice.Recommended, P0: a.Front.Advice.P0, Felt: pressure.FeltRight}
	notes := []pressure.RideNote{}
	for range 4 {
		notes = append(notes, note)
		if s := shift(notes...); s != 0 {
			t.Errorf("after %d right rides the shift is %v", len(notes), s)
		}
	}
	note.P0 = a.Front.Figures.Practice
	if s := shift(note); s > -0.03 {
		t.Errorf("measured against usual practice the shift would be %v", s)
	}
}

// A struck rim never softens: it asks for more than was ridden and never for less than was recommended, whatever else was said, and
// the shift is never below what it would be without the strikes.
func TestAStruckRimNeverSoftens(t *testing.T) {
	d := newDice()
	felts := append(pressure.Felts(), "")
	for range 2000 {
		var all, unstruck []pressure.RideNote
		for range 1 + d.IntN(6) {
			n := ridden(d.between(-0.4, 0.4), pressure.Felt(pick(d, felts)))
			if n.Struck = d.oneIn(3); n.Struck {
				if by, _ := n.Observed(); by < 0.10-1e-12 {
					t.Fatalf("a strike observes %v", by)
				}
			} else {
				unstruck = append(unstruck, n)
			}
			all = append(all, n)
		}
		if shift(all...) < shift(unstruck...)-1e-12 {
			t.Fatalf("with its strikes %v, without them %v", shift(all...), shift(unstruck...))
		}
	}
	if shift(ridden(0, pressure.FeltRight), pressure.RideNote{Side: pressure.Front, Tyre: &kind, Ridden: 2e5, P0: 2e5, Struck: true}) <= 0 {
		t.Error("one strike in two right rides firms nothing")
	}
}

// One note a wheel and ride: the second replaces the first. Notes of the other wheel, of another tyre, or of one that is not known
// count for nothing.
func TestWhichNotesCount(t *testing.T) {
	first, second := ridden(0, pressure.FeltTooHard), ridden(0, pressure.FeltSoft)
	first.Ride, second.Ride = "a", "a"
	if got, want := shift(first, second), shift(second); got != want {
		t.Errorf("both notes of one ride count: %v, want %v", got, want)
	}
	second.Ride = "b"
	if got := shift(first, second); math.Abs(got-(-0.10+0.05)/3) > 1e-12 {
		t.Errorf("two rides: %v", got)
	}
	rear, other, unknown := ridden(0, pressure.FeltHard), ridden(0, pressure.FeltHard), ridden(0, pressure.FeltHard)
	wider := kind
	wider.Label = unit.FromMM(45)
	rear.Side, other.Tyre, unknown.Tyre = pressure.Rear, &wider, nil
	old := ridden(0, pressure.FeltHard)
	old.P0 = 0
	if got := pressure.Learn([]pressure.RideNote{rear, other, unknown, old}, pressure.Front, kind); got != (pressure.Learnt{OtherTyre: 1, Unknown: 2}) {
		t.Errorf("%+v", got)
	}
}

// Limit: one note moves half of what it says, many notes of the same move all of it; an answer and its opposite cancel.
func TestManyNotesOutweighThePrior(t *testing.T) {
	const says = -0.08
	var notes []pressure.RideNote
	for n := 1; n <= 400; n++ {
		notes = append(notes, ridden(says, pressure.FeltRight))
		if got, want := shift(notes...), says*float64(n)/float64(n+1); math.Abs(got-want) > 1e-12 {
			t.Fatalf("after %d notes %v, want %v", n, got, want)
		}
	}
	order, last := pressure.Felts(), math.Inf(-1)
	for i, felt := range order {
		one := shift(ridden(0, pressure.Felt(felt)))
		if one <= last {
			t.Errorf("%s asks for %v, no more than the harsher answer's %v", felt, one, last)
		}
		last = one
		if got := shift(ridden(0, pressure.Felt(felt)), ridden(0, pressure.Felt(order[len(order)-1-i]))); math.Abs(got) > 1e-12 {
			t.Errorf("%s and its opposite leave %v", felt, got)
		}
	}
}

// Whatever was noted, the number is never more than e^0.5 away.
func TestNoNoteMovesWithoutBound(t *testing.T) {
	for _, at := range []unit.Pascal{1, 1e12, unit.Pascal(math.Inf(1)), unit.Pascal(math.NaN())} {
		var notes []pressure.RideNote
		for range 1000 {
			notes = append(notes, pressure.RideNote{Side: pressure.Front, Tyre: &kind, Ridden: at, P0: 2e5, Felt: pressure.FeltRight})
		}
		if got := shift(notes...); !(math.Abs(got) <= pressure.ShiftMost) {
			t.Errorf("ridden %v: shift %v", at, got)
		}
	}
}

// A settled trial is an observation: one whose interval just clears zero moves as much as one ride, one twice as far from it as four, a
// clearer one no more. One that is not settled says nothing.
func TestTrialsAreWeighedByTheirInterval(t *testing.T) {
	tried := func(off, difference, half float64) pressure.RideNote {
		n := ridden(off, "")
		n.Trial = &pressure.Settled{Difference: difference, Low: difference - half, High: difference + half}
		return n
	}
	const says = -0.08
	for _, c := range []struct{ difference, half, weight float64 }{
		{1, 0.999999999, 1}, {-1, 0.999999999, 1}, {1, 0.5, 4}, {-3, 1.5, 4}, {1, 0.01, 4}, {3, 2, 2.25}, {1, 1.1, 0}, {0, 1, 0}, {1, 0, 4},
	} {
		got := pressure.Learn([]pressure.RideNote{tried(says, c.difference, c.half)}, pressure.Front, kind)
		if want := says * c.weight / (1 + c.weight); math.Abs(got.Shift-want) > 1e-8 || (got.Trials == 1) != (c.weight > 0) || got.Notes != 0 {
			t.Errorf("%+v: %+v, want %v", c, got, want)
		}
	}
	both := pressure.Learn([]pressure.RideNote{tried(says, 1, 0.5), ridden(says, pressure.FeltRight)}, pressure.Front, kind)
	if want := says * 5 / 6; math.Abs(both.Shift-want) > 1e-12 || both.Trials != 1 || both.Notes != 1 {
		t.Errorf("a trial and a ride: %+v, want %v", both, want)
	}
	if none := shift(tried(0, 1, 0.2)); none != 0 {
		t.Errorf("what was recommended came out best, and it moves %v", none)
	}
}
