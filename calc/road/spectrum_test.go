package road_test

import (
	"math"
	"testing"

	"rimside/calc/road"
)

// within compares by an absolute tolerance; NaN is never within.
func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g within %g", what, got, want, tolerance)
	}
}

// P = pi^2 k Gd n0^2 v (Zuo and Zhang 2013; Turner, arXiv 2405.00019): 9.8696 x 150000 x 256e-6 x 0.01 = 3.790 N.
func TestPointForce(t *testing.T) {
	f := float64(road.Roughness(256e-6).PointForce(150e3))
	within(t, "force, N", f, 3.790, 0.0005)
	within(t, "power at 8.33 m/s, W", f*8.33, 31.570, 0.001)
	// Geometric means of the ISO 8608 classes A to E at 100 N/mm.
	for gd, want := range map[float64]float64{16: 0.158, 64: 0.632, 256: 2.527, 1024: 10.11, 4096: 40.4} {
		within(t, "force, N", float64(road.Roughness(gd*1e-6).PointForce(100e3)), want, 0.001*want+0.0005)
	}
}

// International Roughness Index without its 250 mm filter, mm/m, for the ISO class means: worked from the reference quarter
// car (ASTM E1364) and the same power law.
func TestIRI(t *testing.T) {
	within(t, "class A, mm/m", 1e3*road.Roughness(16e-6).IRI(), 2.219, 0.002)
	for gd, want := range map[float64]float64{64: 4.44, 256: 8.88, 1024: 17.8, 4096: 35.5} {
		within(t, "mm/m", 1e3*road.Roughness(gd*1e-6).IRI(), want, 0.003*want)
	}
	// F = 0.321 k IRI^2.
	g := road.Roughness(256e-6)
	within(t, "factor", float64(g.PointForce(1))/(g.IRI()*g.IRI()), 0.321, 0.0005)
}

// 2 pi x 16e-6 x 0.01: the figure that some codes print as 1e-6 for class A.
func TestAngularScale(t *testing.T) {
	within(t, "class A", road.Roughness(16e-6).Angular(), 1.0053e-6, 0.0001e-6)
}

// The moving average passes half the power at 0.4429 waves in its length (the root of sin y = y/sqrt 2) and none at 1.
func TestAveraging(t *testing.T) {
	lo, hi := 0.1, 0.9
	for range 60 {
		if mid := (lo + hi) / 2; road.Averaging(mid) > 0.5 {
			lo = mid
		} else {
			hi = mid
		}
	}
	within(t, "half power", lo, 0.4429, 0.0001)
	within(t, "one wave", road.Averaging(1), 0, 1e-15)
	for _, n := range []float64{0, 1e-300, 1e-9, 1e-8, 1e-5} {
		within(t, "no length", road.Averaging(n), 1, 1e-8)
	}
}

// Directive 2002/44/EC: 5 m/s2 for two hours is 2.5 over eight, the hand-arm action value.
func TestDailyVibration(t *testing.T) {
	within(t, "A(8)", float64(road.DailyVibration(5, 2*3600)), 2.5, 1e-12)
	within(t, "a full day", float64(road.DailyVibration(0.5, 8*3600)), 0.5, 1e-12)
}

// Sv = 4 pi^2 Gd n0^2 v, by hand for 256e-6 at 10 m/s.
func TestVelocitySpectrum(t *testing.T) {
	within(t, "Sv", road.Roughness(256e-6).VelocitySpectrum(10), 1.010647e-3, 1e-9)
}

// The grounds that the eye tells apart (our choice on the ISO 8608 classes).
func TestKinds(t *testing.T) {
	for key, want := range map[string][2]float64{
		"smooth": {64, 30}, "patched": {128, 29}, "chips": {192, 28}, "setts": {1024, 22}, "rice": {192, 26},
		"pea": {256, 25}, "walnut": {512, 22}, "egg": {1024, 18}, "fist": {2048, 14}, "soft": {0, 12},
	} {
		k, ok := road.KindOf(key)
		if !ok || k.Soft != (key == "soft") {
			t.Errorf("%s: %v, %v", key, k, ok)
		}
		within(t, key+" roughness", float64(k.Rough)*1e6, want[0], 1e-9)
		within(t, key+" speed, km/h", float64(k.Speed)*3.6, want[1], 1e-9)
	}
	if n := len(road.Kinds()); n != 10 {
		t.Errorf("%d kinds, want 10", n)
	}
	if _, ok := road.KindOf("Pea"); ok {
		t.Error("a kind in another case is known")
	}
	within(t, "washboard", float64(road.Roughness(1e-4).Washboard()), 2e-4, 1e-15)
}

func TestSeatedBody(t *testing.T) {
	// 40 kg at 5 Hz undamped, damping ratio 0.475 (Fairley and Griffin 1989): by hand 39.478 kN/m and 1193.8 N s/m.
	w := road.Wheel{Body: 40}.SeatedBody()
	within(t, "spring, N/m", float64(w.BodySpring), 39478.4, 0.1)
	within(t, "damper, N s/m", w.BodyDamper, 1193.8, 0.1)
	// Base transmissibility at 5 Hz, sqrt((1 + (2z)^2)/(2z)^2) = 1.452.
	ratio := w.BodyDamper / math.Sqrt(float64(w.BodySpring)*float64(w.Body))
	within(t, "transmissibility", math.Hypot(1, ratio)/ratio, 1.452, 0.0005)
}
