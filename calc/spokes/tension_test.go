package spokes_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/spokes"
	"rimside/calc/unit"
)

func unitMetre(m float64) unit.Metre   { return unit.Metre(m) }
func unitNewton(n float64) unit.Newton { return unit.Newton(n) }

func steel(free, diameter float64) spokes.Spoke {
	return spokes.Spoke{Free: unit.FromMM(free), Diameter: unit.FromMM(diameter), Density: spokes.SteelDensity}
}

// Published: pitches of round steel spokes, reckoned in facts 7 with the published string equation (rows of its table, S1).
func TestTensionOfPrintedPitches(t *testing.T) {
	for _, c := range []struct{ free, diameter, newton, hz float64 }{
		{280, 2, 784.5, 315.5}, {280, 2, 980.7, 352.7}, {280, 2, 1176.8, 386.4}, {280, 1.8, 980.7, 391.9}, {200, 2, 980.7, 493.8},
	} {
		if got := steel(c.free, c.diameter).Pitch(unit.Newton(c.newton)); math.Abs(got-c.hz) > 0.06 {
			t.Errorf("%+v: %.2f Hz", c, got)
		}
	}
	if got := float64(steel(280, 2).Tension(352.74)); math.Abs(got-980.7) > 0.2 {
		t.Errorf("S1: %.2f N, want 980.7", got)
	}
}

func ExampleSpoke_Tension() {
	spoke := spokes.Spoke{Free: unit.FromMM(280), Diameter: unit.FromMM(2), Density: spokes.SteelDensity}
	fmt.Printf("%.1f N\n", float64(spoke.Tension(352.74)))
	// Output: 980.7 N
}

// Identities: pitch x 1.2 is 1.44 times the tension (S2), an octave four times; and the one undoes the other.
func TestTensionGoesWithTheSquareOfThePitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := steel(rapid.Float64Range(80, 350).Draw(t, "free"), rapid.Float64Range(1, 4).Draw(t, "diameter"))
		hz, by := rapid.Float64Range(50, 2000).Draw(t, "hz"), rapid.Float64Range(0.5, 2).Draw(t, "by")
		if got := float64(s.Tension(hz*by) / s.Tension(hz)); math.Abs(got/(by*by)-1) > 1e-12 {
			t.Fatalf("%v: %v", by, got)
		}
		if back := s.Pitch(s.Tension(hz)); math.Abs(back/hz-1) > 1e-12 {
			t.Fatalf("%v Hz comes back as %v", hz, back)
		}
	})
}

// Deviations add up to nothing; a spoke just beyond a fifth of the mean is an outlier, one just within is not.
func TestEvenness(t *testing.T) {
	even := spokes.Evenness([]unit.Newton{1000, 1000, 1000, 1000})
	if even.Mean != 1000 || even.Outliers != 0 || even.Spread != 0 {
		t.Errorf("four alike: %+v", even)
	}
	// Of four, one at 1000 x: mean 250 (3 + x), deviation 4 x/(3 + x) - 1, which is -0.20 at x = 3 x 0.8/3.2 = 0.75 and 0.20 at 3 x 1.2/2.8 = 9/7.
	for x, want := range map[float64]int{0.7501: 0, 0.7499: 1, 1.2856: 0, 1.2858: 1} {
		if got := spokes.Evenness([]unit.Newton{1000, 1000, unit.Newton(1000 * x), 1000}); got.Outliers != want {
			t.Errorf("%v: %+v", x, got)
		}
	}
	// By hand: 900, 1000, 1100: mean 1000, standard deviation 100.
	if got := spokes.Evenness([]unit.Newton{900, 1000, 1100}); math.Abs(got.Spread-0.1) > 1e-12 || math.Abs(float64(got.Mean)-1000) > 1e-9 {
		t.Errorf("%+v", got)
	}
	if got := spokes.Evenness(nil); got.Mean != 0 || len(got.Deviations) != 0 {
		t.Errorf("none: %+v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		var side []unit.Newton
		for _, n := range rapid.SliceOfN(rapid.Float64Range(100, 2000), 1, 24).Draw(t, "side") {
			side = append(side, unit.Newton(n))
		}
		sum := 0.0
		for _, by := range spokes.Evenness(side).Deviations {
			sum += by
		}
		if math.Abs(sum) > 1e-9 {
			t.Fatalf("deviations add up to %v", sum)
		}
	})
}
