package trial_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/trial"
)

// Published: Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.10, percentage points of the t-distribution.
func TestQuantilesAsPrinted(t *testing.T) {
	for freedom, row := range map[float64]map[float64]float64{
		1: {0.95: 6.314, 0.975: 12.706, 0.995: 63.657}, 2: {0.95: 2.920, 0.975: 4.303, 0.995: 9.925}, 3: {0.95: 2.353, 0.975: 3.182, 0.995: 5.841},
		4: {0.95: 2.132, 0.975: 2.776, 0.995: 4.604}, 5: {0.95: 2.015, 0.975: 2.571, 0.995: 4.032}, 6: {0.95: 1.943, 0.975: 2.447, 0.995: 3.707},
		8: {0.95: 1.860, 0.975: 2.306, 0.995: 3.355}, 10: {0.95: 1.812, 0.975: 2.228, 0.995: 3.169}, 20: {0.95: 1.725, 0.975: 2.086, 0.995: 2.845},
		30: {0.95: 1.697, 0.975: 2.042, 0.995: 2.750}, 60: {0.95: 1.671, 0.975: 2.000, 0.995: 2.660}, 120: {0.95: 1.658, 0.975: 1.980, 0.995: 2.617},
	} {
		for share, want := range row {
			if got := trial.Quantile(share, freedom); math.Abs(got-want) > 0.00051 {
				t.Errorf("t(%v, %v) is %.4f, printed %.3f", share, freedom, got, want)
			}
		}
	}
}

// Identities: with one degree of freedom t is Cauchy's, with two it has a closed form; both stand in closed form in any handbook.
func TestClosedForms(t *testing.T) {
	for _, at := range []float64{-40, -3, -0.5, 0, 0.1, 1, 2.5, 12.7, 100} {
		if got, want := trial.Below(at, 1), 0.5+math.Atan(at)/math.Pi; math.Abs(got-want) > 1e-12 {
			t.Errorf("below %v of 1: %v, want %v", at, got, want)
		}
		if got, want := trial.Below(at, 2), 0.5+at/(2*math.Sqrt(2+at*at)); math.Abs(got-want) > 1e-12 {
			t.Errorf("below %v of 2: %v, want %v", at, got, want)
		}
	}
}

// Below agrees with the density summed up, the quantile undoes it, and both are symmetric.
func TestBelowAndQuantile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		freedom, at := rapid.Float64Range(1, 200).Draw(t, "freedom"), rapid.Float64Range(-8, 8).Draw(t, "at")
		a, _ := math.Lgamma((freedom + 1) / 2)
		b, _ := math.Lgamma(freedom / 2)
		density := func(x float64) float64 {
			return math.Exp(a-b-(freedom+1)/2*math.Log1p(x*x/freedom)) / math.Sqrt(freedom*math.Pi)
		}
		const steps = 2000 // Simpson's rule from 0
		sum, h := density(0)+density(at), at/steps
		for i := 1; i < steps; i++ {
			sum += density(float64(i)*h) * float64(2+2*(i%2))
		}
		share := trial.Below(at, freedom)
		if want := 0.5 + sum*h/3; math.Abs(share-want) > 1e-9 {
			t.Fatalf("below: %v, summed %v", share, want)
		}
		if share > 1e-6 && share < 1-1e-6 {
			if back := trial.Quantile(share, freedom); math.Abs(back-at) > 1e-7*math.Max(1, math.Abs(at)) {
				t.Fatalf("%v comes back as %v", at, back)
			}
		}
		if got := trial.Below(-at, freedom); math.Abs(got+share-1) > 1e-14 {
			t.Fatalf("%v and %v", share, got)
		}
	})
}
