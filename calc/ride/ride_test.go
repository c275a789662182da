package ride_test

import (
	"math"
	"testing"

	"rimside/calc/ride"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// within compares by an absolute tolerance; NaN is never within.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// The benchmark bicycle of Meijaard et al. 2007: rear body and rider 85 kg at 0.30 m, front frame 4 kg at 0.90 m, wheels 2 kg
// and 3 kg, wheelbase 1.02 m. By statics 32.16/95.88.
func TestShareOfFrontOfTheBenchmarkBicycle(t *testing.T) {
	got := ride.ShareOfFront(1.02,
		ride.PointMass{Mass: 85, Ahead: 0.30}, ride.PointMass{Mass: 4, Ahead: 0.90},
		ride.PointMass{Mass: 2, Ahead: 0}, ride.PointMass{Mass: 3, Ahead: 1.02})
	within(t, "front share", got, 0.33542, 0.00001)
}

// 10 km/h and 30 km/h over equal distances are 15 km/h: 2/(1/10 + 1/30).
func TestCourseSpeedIsDistanceOverTime(t *testing.T) {
	c := ride.NewCourse([]road.Stretch{
		{Rough: 64e-6, Speed: unit.FromKMH(10), Share: 3}, {Rough: 256e-6, Speed: unit.FromKMH(30), Share: 3},
		{Speed: unit.FromKMH(12), Share: 2, Soft: true},
	})
	within(t, "mean speed, m/s", float64(c.Speed()), 15/3.6, 1e-12)
	within(t, "soft share", c.Soft(), 0.25, 1e-12)
	if !c.Firm() || ride.NewCourse([]road.Stretch{{Share: 1, Soft: true}}).Firm() {
		t.Error("firm ground is told wrongly")
	}
}

func wheel() ride.Wheel {
	casing, _ := tyre.CasingOf(tyre.Glove)
	return ride.Wheel{
		Section: tyre.Mounted(unit.FromMM(622), unit.FromMM(40)), Casing: casing, Load: ride.LoadOf(48, 72, 11),
	}
}

// Cutting a stretch in two, or measuring shares otherwise, is the same course.
func TestCourseDoesNotDependOnHowItIsWritten(t *testing.T) {
	a, b := road.Stretch{Rough: 192e-6, Speed: 7.5, Share: 0.7}, road.Stretch{Rough: 600e-6, Speed: 5, Share: 0.3}
	cut := func(s road.Stretch, share float64) road.Stretch { s.Share = share; return s }
	whole := ride.NewCourse([]road.Stretch{a, b})
	for name, same := range map[string]ride.Course{
		"cut":            ride.NewCourse([]road.Stretch{cut(a, 0.25), cut(b, 0.3), cut(a, 0.45)}),
		"scaled":         ride.NewCourse([]road.Stretch{cut(a, 7000), cut(b, 3000)}),
		"with a nothing": ride.NewCourse([]road.Stretch{a, cut(road.Stretch{Rough: 1, Speed: 1}, 0), b}),
	} {
		for _, kPa := range []float64{60, 200, 700} {
			p := unit.FromKPa(kPa)
			one, other := whole.Loss(wheel(), p), same.Loss(wheel(), p)
			within(t, name+": casing, N", float64(other.Casing), float64(one.Casing), 1e-12*float64(one.Casing))
			within(t, name+": roughness, N", float64(other.Roughness), float64(one.Roughness), 1e-12*float64(one.Roughness))
			f, g := whole.Feel(wheel(), p), same.Feel(wheel(), p)
			within(t, name+": light", g.Light, f.Light, 1e-12)
			within(t, name+": frame, m/s2", float64(g.Acceleration), float64(f.Acceleration), 1e-9)
		}
	}
}

// Force is weighted by distance; what the rider feels is weighted by time: two equal distances at 3 and 9 m/s are 3/4 and
// 1/4 of the time.
func TestFeelIsWeightedByTime(t *testing.T) {
	slow, fast := road.Stretch{Rough: 500e-6, Speed: 3, Share: 1}, road.Stretch{Rough: 100e-6, Speed: 9, Share: 1}
	p := unit.FromKPa(250)
	square := func(s ...road.Stretch) float64 {
		a := float64(ride.NewCourse(s).Feel(wheel(), p).Acceleration)
		return a * a
	}
	force := func(s ...road.Stretch) float64 { return float64(ride.NewCourse(s).Loss(wheel(), p).Roughness) }
	within(t, "mean square", square(slow, fast), 0.75*square(slow)+0.25*square(fast), 1e-9)
	within(t, "mean force", force(slow, fast), 0.5*force(slow)+0.5*force(fast), 1e-12)
}

// The rougher course is the same as typing the rougher ground.
func TestRougherCourse(t *testing.T) {
	s := road.Stretch{Rough: 100e-6, Speed: 6, Share: 1}
	thrice := s
	thrice.Rough = 300e-6
	c := ride.NewCourse([]road.Stretch{s})
	got, want := c.Likely(3).Loss(wheel(), 3e5), ride.NewCourse([]road.Stretch{thrice}).Loss(wheel(), 3e5)
	within(t, "roughness, N", float64(got.Roughness), float64(want.Roughness), 1e-12)
	within(t, "unchanged original, N", float64(c.Loss(wheel(), 3e5).Roughness), float64(got.Roughness)/3, 1e-9)
}

// A normal wheel load with mean W and deviation sigma is below 0 with probability Phi(-W/sigma); the classic value for two
// deviations is 0.0227501 (printed normal tables).
func TestLightIsTheNormalTail(t *testing.T) {
	w := wheel()
	p := unit.FromKPa(250)
	// Find the roughness where the spread is W/2, by the square root law, then ask for the share of time.
	try := road.Stretch{Rough: 1e-4, Speed: 6, Share: 1}
	d := unit.Metre(tyre.SquashOf(w.Section.Fill(w.Load.Weight, p, w.Casing.Own))) * w.Section.Width
	shaken := road.Wheel{Tyre: tyre.Stiffness(w.Load.Weight, d), Rigid: w.Load.Rigid, Body: w.Load.Body}.SeatedBody()
	tau := unit.Second(float64(w.Section.PatchLength(d)) / 6)
	spread := shaken.Poles().Shake(try.Rough, 6, tau).ForceSpread
	ratio := float64(w.Load.Weight / 2 / spread)
	try.Rough *= road.Roughness(ratio * ratio)
	within(t, "light share", ride.NewCourse([]road.Stretch{try}).Feel(w, p).Light, 0.0227501, 1e-6)
	for factor, want := range map[road.Roughness]bool{0.999: false, 1.001: true} {
		s := try
		s.Rough *= factor
		if got := ride.NewCourse([]road.Stretch{s}).Feel(w, p).UpperBound; got != want {
			t.Errorf("upper bound at %v of the border is %v", factor, got)
		}
	}
}

func TestLoadOfKeepsTheWhole(t *testing.T) {
	l := ride.LoadOf(35, 72, 11) // rigid part 35 x 11/83 (design)
	within(t, "weight, N", float64(l.Weight), 35*9.80665, 1e-9)
	within(t, "rigid, kg", float64(l.Rigid), 4.638554, 1e-6)
	within(t, "whole, kg", float64(l.Rigid+l.Body), 35, 1e-12)
}

// A measured stretch goes to the ends of its interval, whatever the factor; the others are multiplied.
func TestMeasuredStretchKeepsToItsInterval(t *testing.T) {
	seen := road.Stretch{Rough: 100e-6, Speed: 6, Share: 1}
	known := road.Stretch{Rough: 100e-6, Low: 80e-6, High: 130e-6, Speed: 6, Share: 1}
	for factor, want := range map[float64][2]float64{2: {200e-6, 130e-6}, 0.5: {50e-6, 80e-6}} {
		got := ride.NewCourse([]road.Stretch{seen, known}).Likely(factor).Loss(wheel(), 3e5)
		rough := func(g float64) float64 {
			return float64(ride.NewCourse([]road.Stretch{{Rough: road.Roughness(g), Speed: 6, Share: 1}}).Loss(wheel(), 3e5).Roughness)
		}
		within(t, "roughness, N", float64(got.Roughness), (rough(want[0])+rough(want[1]))/2, 1e-9)
	}
}
