package air_test

import (
	"errors"
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/unit"
)

func reading(kPa, celsius, metres float64) air.Reading {
	return air.Reading{Pressure: unit.FromKPa(kPa), State: state(celsius, metres)}
}

func leak(t *testing.T, first, second air.Reading, days float64) float64 {
	t.Helper()
	loss, err := air.LeakPerDay(first, second, days)
	if err != nil {
		t.Fatal(err)
	}
	return loss
}

// Half the excess gone in two days is 1 - sqrt(1/2) a day: the definition of an exponential loss.
func TestLeakHalfInTwoDays(t *testing.T) {
	within(t, "loss a day", leak(t, reading(300, 20, 0), reading(150, 20, 0), 2), 1-math.Sqrt(0.5), 1e-12)
}

// A tyre that only cooled or climbed has not leaked: 200 kPa at 20 C by the sea reads 208.47 kPa at 7 C and 2000 m (gas law
// with the ISO 2533 air).
func TestLeakIsNotCoolingOrClimbing(t *testing.T) {
	within(t, "loss a day", leak(t, reading(200, 20, 0), reading(208.47, 7, 2000), 3), 0, 2e-5)
	within(t, "loss a day", leak(t, reading(200, 20, 0), reading(200, 20, 0), 3), 0, 1e-12)
}

// AfterLeak undoes LeakPerDay: from the first reading it foretells the second.
func TestAfterLeakForetellsTheSecondReading(t *testing.T) {
	first, second := reading(250, 20, 0), reading(231, 20, 0)
	loss := leak(t, first, second, 5)
	got, err := air.AfterLeak(first, loss, 5, second.State)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "second reading, kPa", got.KPa(), 231, 1e-9*231)
	// Over no time, or without loss, only the gas law is left.
	for _, c := range [][2]float64{{0.3, 0}, {0, 40}} {
		got, err := air.AfterLeak(first, c[0], c[1], state(-5, 1200))
		want, wantErr := air.Carry(first.Pressure, first.State, state(-5, 1200))
		if err != nil || wantErr != nil {
			t.Fatal(err, wantErr)
		}
		within(t, "carried only, kPa", got.KPa(), want.KPa(), 1e-9*250)
	}
	// Two spans after each other are one span.
	half, _ := air.AfterLeak(first, loss, 2, first.State)
	whole, _ := air.AfterLeak(air.Reading{Pressure: half, State: first.State}, loss, 3, first.State)
	within(t, "two spans, kPa", whole.KPa(), 231, 1e-9*231)
}

func TestLeakRefusesWhatIsNoLeak(t *testing.T) {
	for name, c := range map[string]struct {
		first, second air.Reading
		days          float64
		want          error
	}{
		"rising":            {reading(200, 20, 0), reading(210, 20, 0), 2, air.ErrRising},
		"rising when cold":  {reading(200, 20, 0), reading(190, 0, 0), 2, air.ErrRising}, // 179.44 kPa would be no loss
		"flat later":        {reading(200, 20, 0), reading(0, 20, 0), 2, air.ErrFlat},
		"flat before":       {reading(0, 20, 0), reading(0, 20, 0), 2, air.ErrFlat},
		"flat by cold":      {reading(5, 20, 0), reading(1, -40, 0), 2, air.ErrFlat},
		"no time":           {reading(200, 20, 0), reading(190, 20, 0), 0, air.ErrDays},
		"back in time":      {reading(200, 20, 0), reading(190, 20, 0), -1, air.ErrDays},
		"NaN days":          {reading(200, 20, 0), reading(190, 20, 0), math.NaN(), air.ErrDays},
		"NaN reading":       {reading(math.NaN(), 20, 0), reading(190, 20, 0), 1, air.ErrVacuum},
		"below vacuum":      {reading(-102, 20, 0), reading(190, 20, 0), 1, air.ErrVacuum},
		"impossible degree": {reading(200, -300, 0), reading(190, 20, 0), 1, air.ErrTemperature},
	} {
		if got, err := air.LeakPerDay(c.first, c.second, c.days); !errors.Is(err, c.want) || got != 0 {
			t.Errorf("%s: got %v, %v; want no number and %v", name, got, err, c.want)
		}
	}
	// NaN in the later reading, too, must not pass as a number.
	if got, err := air.LeakPerDay(reading(200, 20, 0), reading(math.NaN(), 20, 0), 1); err == nil {
		t.Errorf("a NaN later reading gives %v", got)
	}
	// A reading scattered a little above the first counts as no loss (our choice), never as a negative one.
	within(t, "scatter", leak(t, reading(200, 20, 0), reading(204, 20, 0), 2), 0, 1e-12)
}
