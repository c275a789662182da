package pressure_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/pressure"
	"rimside/calc/unit"
)

// Only what the gauge shows, and so what to do, hangs on the gauge.
func TestGaugeErrorMovesOnlyTheReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawAny(t)
		in.GaugeError = 0
		off := in
		off.GaugeError = unit.FromKPa(between(t, 1, 30, "error"))
		a, b := decide(t, in), decide(t, off)
		for _, side := range pressure.Sides {
			if w := b.Wheel(side); w.Advice != nil {
				if moved := w.Advice.Gauge - a.Wheel(side).Advice.Gauge; math.Abs(float64(moved-off.GaugeError)) > 1e-6 {
					t.Errorf("%s gauge moved by %v, its error is %v", side, moved, off.GaugeError)
				}
			}
		}
		if err := sameNumbers(withoutReading(a), withoutReading(b)); err != nil {
			t.Error(err)
		}
	})
}

func withoutReading(a pressure.Answer) pressure.Answer {
	for _, side := range pressure.Sides {
		if w := a.Wheel(side); w.Advice != nil {
			w.Advice.Gauge, w.Advice.Action = 0, nil
		}
	}
	var kept []pressure.Notice
	for _, n := range a.Notices {
		if n.Code != pressure.OverLimitNow {
			kept = append(kept, n)
		}
	}
	a.Notices = kept
	return a
}

// What is set here is what is ridden there: the gas law, worked again in this test, brings Set back to AtRide.
func TestSetIsCarriedToTheRide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawAny(t)
		a := decide(t, in)
		for _, side := range pressure.Sides {
			if w := a.Wheel(side); w.Advice != nil {
				got := moved(w.Advice.Set.KPa(), in.Set, in.Ride)
				if math.Abs(got-w.Advice.AtRide.KPa()) > 1e-6 || w.Advice.AtRide != w.Advice.Recommended {
					t.Errorf("%s: set gives %v at the ride, not %v", side, got, w.Advice.AtRide.KPa())
				}
			}
		}
	})
}

// A hair more weight is a hair more pressure: no jump above the solver's step.
func TestRecommendationIsContinuous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawAny(t)
		hair := in
		hair.Rider *= 1 + 1e-6
		a, b := decide(t, in), decide(t, hair)
		for _, side := range pressure.Sides {
			one, other := a.Wheel(side).Advice, b.Wheel(side).Advice
			if one == nil || other == nil {
				continue
			}
			if p, q := float64(one.Recommended), float64(other.Recommended); !(math.Abs(q/p-1) < 1e-4) {
				t.Errorf("%s jumps from %v to %v", side, p, q)
			}
		}
	})
}

// What to do: nothing at the aim; else by the whole gap, in the right direction; and never nothing over the ceiling.
func TestActionFollowsTheGauge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawAny(t)
		in.Now = pressure.Readings{Stroke: unit.FromML(100)}
		a := decide(t, in)
		if a.Front.Advice == nil {
			t.Skip("no advice")
		}
		if a.Front.Advice.Action != nil {
			t.Error("something to do without a reading")
		}
		aim := a.Front.Advice.Gauge
		gap := unit.FromKPa(between(t, -300, 300, "gap"))
		reading := aim + gap
		in.Now.Front = &aim
		if do := decide(t, in).Front.Advice.Action; do.Do != pressure.Leave || do.By != 0 || do.Strokes != nil {
			t.Errorf("at the aim: %+v", do)
		}
		in.Now.Front = &reading
		b := decide(t, in)
		do, near := b.Front.Advice.Action, math.Max(2.5, 0.02*math.Abs(aim.KPa()))
		over := lowestMax(in.Front) // what the reading may be, where it is set
		limited := moved(reading.KPa()-in.GaugeError.KPa(), in.Set, in.Set) > over+hair
		switch {
		case limited && do.Do == pressure.Leave && in.Front.Tyre.Max > 0:
			t.Errorf("over the limit of %v with %v, but left", over, reading.KPa())
		case do.Do == pressure.Leave && math.Abs(gap.KPa()) > near+hair:
			t.Errorf("left with a gap of %v", gap.KPa())
		case do.Do == pressure.Leave:
		case do.Do == pressure.Add && (gap > 0 || do.Strokes == nil || *do.Strokes <= 0), do.Do == pressure.LetOut && gap < 0:
			t.Errorf("gap %v: %+v", gap.KPa(), do)
		case math.Abs(do.By.KPa()-math.Abs(gap.KPa())) > hair:
			t.Errorf("gap %v, but by %v", gap.KPa(), do.By.KPa())
		case math.Abs(gap.KPa()) <= near && !told(b, pressure.Front, pressure.OverLimitNow, pressure.Care):
			t.Errorf("a gap of %v is nothing to do", gap.KPa())
		}
	})
}
