package air_test

import (
	"errors"
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/unit"
)

func expected(t *testing.T, set air.Reading, loss, days float64, here air.State) float64 {
	t.Helper()
	p, err := air.Expected(set, loss, days, here)
	if err != nil {
		t.Fatal(err)
	}
	return p.KPa()
}

// Without a leak only the gas law is left: 200 kPa at 20 degrees are 179.44 at 0, and 208.47 at 7 degrees and 2000 m (published pressures).
func TestExpectedIsTheGasLawAndTheLeak(t *testing.T) {
	set := reading(200, 20, 0)
	within(t, "colder, kPa", expected(t, set, 0, 9, state(0, 0)), 179.44, 0.01)
	within(t, "up and colder, kPa", expected(t, set, 0, 9, state(7, 2000)), 208.47, 0.01)
	// Two per cent of the excess a day, three days: 200 x 0.98^3.
	within(t, "leaking, kPa", expected(t, set, 0.02, 3, state(20, 0)), 188.2384, 1e-9)
	within(t, "a day that lies ahead, kPa", expected(t, set, 0.02, -3, state(20, 0)), 200, 1e-9)
	within(t, "all gone, in the cold, kPa", expected(t, set, 1, 3, state(-20, 0)), 0, 0)
	if _, err := air.Expected(reading(200, -300, 0), 0, 0, state(20, 0)); !errors.Is(err, air.ErrTemperature) {
		t.Errorf("below absolute zero: %v", err)
	}
}

// Inverse: in the same air, what a tyre was found at foretells itself by the loss taken from it.
func TestTypicalLossForetellsWhatWasFound(t *testing.T) {
	for _, c := range [][3]float64{{250, 238, 5}, {410, 300, 21}, {180, 179, 0.5}} {
		set, later := reading(c[0], 18, 200), reading(c[1], 18, 200)
		loss, ok := air.TypicalLoss([]air.Found{{Set: set, Later: later, Days: c[2]}})
		if !ok {
			t.Fatalf("%v tells no loss", c)
		}
		within(t, "found, kPa", expected(t, set, loss, c[2], later.State), c[1], 1e-9*c[1])
	}
}

// The middle of the newest five that tell of a leak; a time too short, and one pumped in between, do not.
func TestTypicalLossIsTheMiddle(t *testing.T) {
	lost := func(share, days float64) air.Found {
		return air.Found{Set: reading(200, 20, 0), Later: reading(200*math.Pow(1-share, days), 20, 0), Days: days}
	}
	for _, c := range []struct {
		found []air.Found
		want  float64
	}{
		{[]air.Found{lost(0.01, 3)}, 0.01},
		{[]air.Found{lost(0.01, 3), lost(0.03, 2)}, 0.02},
		{[]air.Found{lost(0.2, 1), lost(0.01, 3), lost(0.03, 2)}, 0.03},
		{[]air.Found{lost(0.5, 0.4), lost(0.01, 3)}, 0.01},
		{[]air.Found{{Set: reading(200, 20, 0), Later: reading(260, 20, 0), Days: 3}, lost(0.01, 3)}, 0.01},
		{[]air.Found{lost(0.01, 1), lost(0.01, 1), lost(0.01, 1), lost(0.01, 1), lost(0.01, 1), lost(0.3, 1), lost(0.3, 1), lost(0.3, 1), lost(0.3, 1), lost(0.3, 1), lost(0.3, 1)}, 0.01},
	} {
		got, ok := air.TypicalLoss(c.found)
		if !ok || !(math.Abs(got-c.want) < 1e-12) {
			t.Errorf("%d times found: %v, want %v", len(c.found), got, c.want)
		}
	}
	if _, ok := air.TypicalLoss(nil); ok {
		t.Error("a loss from nothing")
	}
	if _, ok := air.TypicalLoss([]air.Found{lost(0.5, 0.1)}); ok {
		t.Error("a loss from an hour")
	}
}

// FuzzExpected: an error or a pressure that is no less than nothing, never a panic.
func FuzzExpected(f *testing.F) {
	f.Add(200.0, 20.0, 0.0, 0.02, 3.0, 0.0, 2000.0)
	f.Add(1e300, -273.0, 11000.0, 1.0, 1e300, 1e300, -5000.0)
	f.Fuzz(func(t *testing.T, kPa, c, m, loss, days, hereC, hereM float64) {
		p, err := air.Expected(air.Reading{Pressure: unit.FromKPa(kPa), State: state(c, m)}, loss, days, state(hereC, hereM))
		if err != nil && p != 0 || p < 0 {
			t.Errorf("%v, %v", p, err)
		}
	})
}
