package pressure_test

import (
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// reference is one line of the design's reference points: made by an independent implementation of the same model for a
// 72 kg rider on an 11 kg bike, front share 0.42, bead seat 622 mm, one ground, no ceiling reached. All in kPa; an optimum
// of 0 means none.
type reference struct {
	sidewall                tyre.Sidewall
	label                   float64
	setup                   pressure.Setup
	ground                  string
	kmh                     float64
	optimum                 [2]float64
	practice, floor, advice [2]float64
	fine                    [2][2]float64
}

var references = []reference{
	{"cloth", 28, "tubeless", "patched", 29, [2]float64{372, 517}, [2]float64{491.0, 529.9}, [2]float64{379.1, 410.7}, [2]float64{482.9, 528.9}, [2][2]float64{{379, 604}, {411, 661}}},
	{"glove", 32, "tube", "chips", 28, [2]float64{228, 323}, [2]float64{380.8, 411.0}, [2]float64{338.0, 366.1}, [2]float64{369.1, 402.6}, [2][2]float64{{338, 439}, {366, 497}}},
	{"glove", 40, "tubeless", "pea", 25, [2]float64{145, 208}, [2]float64{232.4, 250.9}, [2]float64{194.5, 210.7}, [2]float64{226.8, 247.4}, [2][2]float64{{194, 280}, {211, 309}}},
	{"cloth", 45, "tubeless", "walnut", 22, [2]float64{90, 128}, [2]float64{188.4, 203.3}, [2]float64{161.8, 175.3}, [2]float64{179.7, 195.1}, [2][2]float64{{162, 203}, {175, 223}}},
	{"hose", 57, "insert", "egg", 18, [2]float64{0, 0}, [2]float64{117.1, 126.4}, [2]float64{84.9, 92.0}, [2]float64{110.6, 119.1}, [2][2]float64{{85, 123}, {92, 132}}},
	{"cloth", 28, "tubeless", "smooth", 33, [2]float64{556, 772}, [2]float64{491.0, 529.9}, [2]float64{379.1, 410.7}, [2]float64{494.0, 544.1}, [2][2]float64{{379, 617}, {452, 680}}},
	{"glove", 40, "tubeless", "setts", 22, [2]float64{53, 81}, [2]float64{232.4, 250.9}, [2]float64{194.5, 210.7}, [2]float64{204.0, 218.4}, [2][2]float64{{194, 214}, {211, 229}}},
}

// setupOf is a hooked wheel with the label's measuring rim, so that the width is the label, and maxima out of reach.
func setupOf(label float64, wall tyre.Sidewall, setup pressure.Setup) pressure.WheelSetup {
	return pressure.WheelSetup{
		Tyre: pressure.Tyre{Label: unit.FromMM(label), Sidewall: wall, Setup: setup, Max: unit.FromKPa(1500), ForHookless: true},
		Rim:  pressure.Rim{BeadSeat: unit.FromMM(622), Inner: tyre.MeasuringRim(unit.FromMM(label)), Profile: tyre.Hooked, Max: unit.FromKPa(1500)},
	}
}

func stretchOf(key string, kmh, share float64) road.Stretch {
	kind, _ := road.KindOf(key)
	return road.Stretch{Rough: kind.Rough, Speed: unit.FromKMH(kmh), Share: share, Soft: kind.Soft}
}

func inputOf(wheel pressure.WheelSetup, ground ...road.Stretch) pressure.Input {
	mild := air.State{Temperature: unit.FromCelsius(20)}
	return pressure.Input{Rider: 72, Bike: 11, FrontShare: 0.42, Front: wheel, Rear: wheel, Ground: ground, Set: mild, Ride: mild}
}

// within compares by a share of the wanted value.
func within(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s = %.2f, want %.2f within %g %%", what, got, want, share*100)
	}
}

// printed compares to the last printed digit, one half of step.
func printed(t *testing.T, what string, got, want, step float64) {
	t.Helper()
	if !(math.Abs(got-want) <= step/2+1e-9) {
		t.Errorf("%s = %.3f, printed as %g", what, got, want)
	}
}

func mustDecide(t *testing.T, in pressure.Input) pressure.Answer {
	t.Helper()
	a, err := pressure.Decide(in)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestReferencePoints(t *testing.T) {
	for _, r := range references {
		a := mustDecide(t, inputOf(setupOf(r.label, r.sidewall, r.setup), stretchOf(r.ground, r.kmh, 1)))
		for i, w := range []pressure.Wheel{a.Front, a.Rear} {
			name := string(r.sidewall) + " " + r.ground + " " + string(pressure.Sides[i]) + " "
			printed(t, name+"usual practice", w.Figures.Practice.KPa(), r.practice[i], 0.1)
			printed(t, name+"floor", w.Figures.Floor.KPa(), r.floor[i], 0.1)
			printed(t, name+"recommended", w.Advice.Recommended.KPa(), r.advice[i], 0.1)
			printed(t, name+"fine low", w.Advice.Good.Low.KPa(), r.fine[i][0], 1)
			printed(t, name+"fine high", w.Advice.Good.High.KPa(), r.fine[i][1], 1)
			switch optimum := w.Figures.Optimum; {
			case optimum == nil && r.optimum[i] != 0:
				t.Errorf("%scomputed best is none, want %v", name, r.optimum[i])
			case optimum != nil:
				printed(t, name+"computed best", optimum.KPa(), r.optimum[i], 1)
			}
		}
	}
}

// The soft share draws the number evenly to the floor: glove 41 tubeless on peas, rider 73 kg, bike 10 kg.
func TestReferenceSoftBlend(t *testing.T) {
	want := [2][]float64{{218, 210, 202, 195, 187}, {237, 229, 220, 211, 203}}
	for i, q := range []float64{0, 0.25, 0.5, 0.75, 1} {
		in := inputOf(fortyOne(), stretchOf("pea", 25, 1-q), stretchOf("soft", 12, q))
		in.Rider, in.Bike = 73, 10
		a := mustDecide(t, in)
		printed(t, "front", a.Front.Advice.Recommended.KPa(), want[0][i], 1)
		printed(t, "rear", a.Rear.Advice.Recommended.KPa(), want[1][i], 1)
	}
}

// Every step of ground from smooth to fist moves the number.
func TestReferenceGrounds(t *testing.T) {
	for key, want := range map[string][2]float64{"smooth": {226, 248}, "pea": {218, 237}, "walnut": {211, 228}, "egg": {203, 218}, "fist": {197, 210}} {
		kind, _ := road.KindOf(key)
		in := inputOf(fortyOne(), road.Stretch{Rough: kind.Rough, Speed: kind.Speed, Share: 1})
		in.Rider, in.Bike = 73, 10
		a := mustDecide(t, in)
		printed(t, key+" front", a.Front.Advice.Recommended.KPa(), want[0], 1)
		printed(t, key+" rear", a.Rear.Advice.Recommended.KPa(), want[1], 1)
	}
}

func fortyOne() pressure.WheelSetup {
	wheel := setupOf(40, "glove", "tubeless")
	wheel.Tyre.Measured = unit.FromMM(41)
	return wheel
}

// The whole answer: three stretches, both wheels, curves, bands, good range.
func BenchmarkDecide(b *testing.B) {
	in := inputOf(setupOf(40, "glove", "tubeless"), stretchOf("chips", 28, 14), stretchOf("pea", 25, 44), stretchOf("walnut", 22, 20))
	for b.Loop() {
		if _, err := pressure.Decide(in); err != nil {
			b.Fatal(err)
		}
	}
}
