package road

import (
	"math"
	"testing"

	"rimside/calc/unit"
)

// scan is a family of wheels whose poles turn from pairs into real ones somewhere along the tyre's stiffness.
type scan struct {
	rigid, body unit.Kilogram
	ratio       float64 // of the damper to a seated body's
}

func (c scan) wheel(k float64) Wheel {
	w := Wheel{Tyre: unit.NewtonPerMetre(k), Rigid: c.rigid, Body: c.body}.SeatedBody()
	w.BodyDamper *= c.ratio
	return w
}

// realPoles counts the poles on the real axis.
func realPoles(w Wheel) (n int) {
	for _, s := range w.Poles().at {
		if math.Abs(imag(s)) < 1e-6*math.Abs(real(s)) {
			n++
		}
	}
	return n
}

// Where two poles meet the residues run away from each other; what they add up to must not jump. Every change in the number of
// real poles is closed in on, down to neighbouring numbers.
func TestNoJumpWherePolesMeet(t *testing.T) {
	meetings := 0
	for _, c := range []scan{{1, 60, 1}, {1, 60, 2.0886}, {1, 60, 3}, {9, 30, 1.1}, {9, 30, 1.9}, {20, 10, 1.9}, {5, 5, 1.7}} {
		const step = 1.02
		for k := 100.0; k < 4e6; k *= step {
			if realPoles(c.wheel(k)) != realPoles(c.wheel(k*step)) {
				meetings++
				closeIn(t, c, k, k*step)
			}
		}
	}
	if meetings < 7 {
		t.Errorf("only %d meetings of poles were found: the scan tests nothing", meetings)
	}
}

// closeIn checks ever nearer to the stiffness at which two poles meet.
func closeIn(t *testing.T, c scan, lo, hi float64) {
	t.Helper()
	before := realPoles(c.wheel(lo))
	for range 60 {
		mid := math.Sqrt(lo * hi)
		checkAround(t, c, mid)
		if realPoles(c.wheel(mid)) == before {
			lo = mid
		} else {
			hi = mid
		}
	}
}

// checkAround compares a wheel with the mean of two neighbours far enough off to be safe.
func checkAround(t *testing.T, c scan, k float64) {
	t.Helper()
	all := func(k float64) [3]float64 {
		p := c.wheel(k).Poles()
		s := p.Shake(300e-6, 7, 0.012)
		return [3]float64{float64(p.Force(300e-6, 0.012)), float64(s.ForceSpread), float64(s.Acceleration)}
	}
	here, below, above := all(k), all(k*(1-1e-4)), all(k*(1+1e-4))
	for i, name := range []string{"force", "spread", "frame"} {
		if mean := (below[i] + above[i]) / 2; !(math.Abs(here[i]-mean) <= 2e-6*mean) { // the solver parts meeting poles by a millionth
			t.Fatalf("%s at k %.17g of %v: %.12g, but %.12g around it", name, k, c, here[i], mean)
		}
	}
}

// An exact double root: (s + 2)^2 (s^2 + 2 s + 9) = s^4 + 6 s^3 + 21 s^2 + 44 s + 36, multiplied by hand.
func TestQuarticRoots(t *testing.T) {
	found := map[string]int{}
	for _, z := range quarticRoots([5]float64{36, 44, 21, 6, 1}) {
		switch {
		case math.Hypot(real(z)+2, imag(z)) < 1e-6:
			found["double"]++
		case math.Hypot(real(z)+1, math.Abs(imag(z))-math.Sqrt(8)) < 1e-9:
			found["pair"]++
		default:
			t.Errorf("no root here: %v", z)
		}
	}
	if found["double"] != 2 || found["pair"] != 2 {
		t.Errorf("roots found: %v", found)
	}
}

// E(x) = (e^x - 1 - x)/x^2 at values worked to many digits: E(0) = 1/2, E(-1) = 1/e, E(1) = e - 2; and no jump at the border
// between the series and the closed form.
func TestAveraged(t *testing.T) {
	for x, want := range map[complex128]float64{0: 0.5, -1: 1 / math.E, 1: math.E - 2, 1e-9: 0.5, -0.1: 0.48374180359596} {
		if got := averaged(x); !(math.Abs(real(got)-want) < 1e-9) || imag(got) != 0 {
			t.Errorf("E(%v) = %v, want %v", x, got, want)
		}
	}
	for _, turn := range []complex128{-0.3, 0.3i, -0.15 + 0.15i} {
		below, above := averaged(turn*(1-1e-13)), averaged(turn*(1+1e-13))
		if magnitude(below-above) > 1e-12 {
			t.Errorf("jump at %v: %v and %v", turn, below, above)
		}
	}
}
