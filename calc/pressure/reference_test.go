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
	sidewall              tyre.Sidewall
	label                 float64
	setup                 pressure.Setup
	ground                string
	kmh                   float64
	optimum               [2]float64
	good                  [2][2]float64
	custom, floor, advice [2]float64
}

var references = []reference{
	{"cloth", 28, "tubeless", "patched", 29, [2]float64{372, 517}, [2][2]float64{{241, 584}, {358, 757}}, [2]float64{453, 489}, [2]float64{379, 411}, [2]float64{453, 489}},
	{"glove", 32, "tube", "chips", 28, [2]float64{228, 323}, [2][2]float64{{147, 356}, {224, 468}}, [2]float64{345, 372}, [2]float64{338, 366}, [2]float64{345, 372}},
	{"glove", 40, "tubeless", "pea", 25, [2]float64{145, 208}, [2][2]float64{{89, 236}, {140, 310}}, [2]float64{232, 251}, [2]float64{194, 211}, [2]float64{232, 251}},
	{"cloth", 45, "tubeless", "walnut", 22, [2]float64{90, 128}, [2][2]float64{{58, 139}, {89, 183}}, [2]float64{193, 209}, [2]float64{162, 175}, [2]float64{174, 188}},
	{"hose", 57, "insert", "egg", 18, [2]float64{0, 0}, [2][2]float64{{40, 56}, {40, 71}}, [2]float64{133, 144}, [2]float64{85, 92}, [2]float64{120, 130}},
	{"cloth", 28, "tubeless", "smooth", 33, [2]float64{556, 772}, [2][2]float64{{342, 926}, {510, 1188}}, [2]float64{453, 489}, [2]float64{379, 411}, [2]float64{453, 510}},
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

func TestReferencePoints(t *testing.T) {
	const share = 0.02
	for _, r := range references {
		a, err := pressure.Decide(inputOf(setupOf(r.label, r.sidewall, r.setup), stretchOf(r.ground, r.kmh, 1)))
		if err != nil {
			t.Fatal(err)
		}
		for i, w := range []pressure.Wheel{a.Front, a.Rear} {
			name := string(r.sidewall) + " " + r.ground + " " + string(pressure.Sides[i]) + " "
			f := w.Figures
			within(t, name+"custom", f.Custom.KPa(), r.custom[i], share)
			within(t, name+"good low", f.Good.Low.KPa(), r.good[i][0], share)
			within(t, name+"good high", f.Good.High.KPa(), r.good[i][1], share)
			within(t, name+"floor", f.Floor.KPa(), r.floor[i], share)
			within(t, name+"recommended", w.Advice.Recommended.KPa(), r.advice[i], share)
			if r.optimum[i] == 0 {
				if f.Optimum != nil {
					t.Errorf("%scomputed best = %v, want none", name, f.Optimum.KPa())
				}
				continue
			}
			if f.Optimum == nil {
				t.Errorf("%scomputed best is none, want %v", name, r.optimum[i])
				continue
			}
			within(t, name+"computed best", f.Optimum.KPa(), r.optimum[i], share)
		}
	}
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
