package air_test

import (
	"errors"
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/unit"
)

// within compares by an absolute tolerance; NaN is never within.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g within %g", what, got, want, tolerance)
	}
}

func state(celsius, metres float64) air.State {
	return air.State{Temperature: unit.FromCelsius(celsius), Altitude: unit.Metre(metres)}
}

func TestAmbientFollowsTheStandardAtmosphere(t *testing.T) {
	// hPa as printed for ISO 2533: p = 1013.25 (1 - 0.0065 H/288.15)^5.25588.
	for metres, hPa := range map[float64]float64{
		0: 1013.25, 500: 954.61, 1000: 898.75, 1500: 845.56, 2000: 794.95, 2438.4: 752.62, 3000: 701.09, 4000: 616.40, 4572: 571.82,
	} {
		pa, err := air.Ambient(unit.Metre(metres))
		if err != nil {
			t.Fatal(err)
		}
		within(t, "ambient, hPa", float64(pa)/100, hPa, 0.0051)
	}
	// A second, independent printed table gives 75249 Pa at 8000 ft; the formula may differ from it by its rounding.
	pa, _ := air.Ambient(2438.4)
	within(t, "ambient at 8000 ft, Pa", float64(pa), 75249, 20)
}

func TestCarryMeetsPublishedPressures(t *testing.T) {
	// Worked from the gas law at constant volume with the ISO 2533 air, gauge kPa to 0.01 (623.9: to 0.1).
	for _, c := range []struct {
		from     float64
		a, b     air.State
		to, near float64
	}{
		{200, state(20, 0), state(0, 0), 179.44, 0.01},
		{500, state(20, 0), state(50, 0), 561.54, 0.01},
		{250, state(15, 0), state(35, 0), 274.38, 0.01},
		{200, state(20, 0), state(7, 2000), 208.47, 0.01},
		{200, state(20, 0), state(40, 0), 220.56, 0.01},
		{500, state(20, 0), state(-10, 0), 438.46, 0.01},
		{180, state(22, 0), state(8, 0), 166.66, 0.01},
		{600, state(20, 0), state(30, 0), 623.9, 0.05},
		{470.71, state(20, 0), state(35, 0), 500, 0.02},
		{250, state(20, 0), state(20, 2438.4), 250 + 26.06, 0.01}, // cabin altitude of 8000 ft (14 CFR 25.841)
		{250, state(20, 0), state(20, 4572), 250 + 44.14, 0.01},   // 15000 ft, after a failure (same)
		{480, state(20, 0), state(30, 0), 499.83, 0.01},           // the highest whole kPa that stays under 500
		{444, state(20, 0), state(50, 0), 499.81, 0.01},
	} {
		got, err := air.Carry(unit.FromKPa(c.from), c.a, c.b)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "carried, kPa", got.KPa(), c.to, c.near)
	}
	back, _ := air.Carry(unit.FromKPa(500), state(35, 0), state(20, 0))
	within(t, "set at 20 C for 500 kPa at 35 C", back.KPa(), 470.71, 0.02)
}

func TestCarryThereAndBackIsTheSame(t *testing.T) {
	for _, p := range []float64{-50, 0, 35, 200, 1500} {
		for _, s := range []air.State{state(-40, -400), state(0, 8848), state(20, 0), state(55, 3000)} {
			here := state(13, 640)
			there, err := air.Carry(unit.FromKPa(p), here, s)
			if err != nil {
				t.Fatal(err)
			}
			back, err := air.Carry(there, s, here)
			if err != nil {
				t.Fatal(err)
			}
			within(t, "there and back, kPa", back.KPa(), p, 1e-9*(101.325+math.Abs(p)))
		}
		same, err := air.Carry(unit.FromKPa(p), state(13, 640), state(13, 640))
		if err != nil {
			t.Fatal(err)
		}
		within(t, "not moved at all, kPa", same.KPa(), p, 1e-9*(101.325+math.Abs(p)))
	}
}

// States that cannot exist give an error, never a number.
func TestImpossibleStatesAreErrors(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	mild := state(20, 0)
	for name, c := range map[string]struct {
		p    unit.Pascal
		a, b air.State
		want error
	}{
		"NaN pressure":        {unit.Pascal(nan), mild, mild, air.ErrVacuum},
		"infinite pressure":   {unit.Pascal(inf), mild, mild, air.ErrVacuum},
		"below vacuum":        {unit.FromKPa(-102), mild, mild, air.ErrVacuum},
		"vacuum":              {unit.FromKPa(-101.325), mild, mild, air.ErrVacuum},
		"vacuum at altitude":  {unit.FromKPa(-80), state(20, 2000), mild, air.ErrVacuum}, // 79.5 kPa of air there
		"below absolute zero": {unit.FromKPa(200), state(-300, 0), mild, air.ErrTemperature},
		"ends below zero":     {unit.FromKPa(200), mild, state(-300, 0), air.ErrTemperature},
		"zero kelvin":         {unit.FromKPa(200), mild, air.State{}, air.ErrTemperature},
		"NaN temperature":     {unit.FromKPa(200), state(nan, 0), mild, air.ErrTemperature},
		"infinite heat":       {unit.FromKPa(200), mild, state(inf, 0), air.ErrTemperature},
		"NaN altitude":        {unit.FromKPa(200), state(20, nan), mild, air.ErrAltitude},
		"above the formula":   {unit.FromKPa(200), mild, state(20, 11001), air.ErrAltitude},
		"deep underground":    {unit.FromKPa(200), mild, state(20, -5001), air.ErrAltitude},
	} {
		got, err := air.Carry(c.p, c.a, c.b)
		if !errors.Is(err, c.want) || got != 0 {
			t.Errorf("%s: got %v, %v; want no number and %v", name, got, err, c.want)
		}
	}
}
