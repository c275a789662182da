package salt_test

import (
	"math"
	"testing"

	"rimside/calc/salt"
)

func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// Wrought aluminium against 18 % chromium steel lies 0.40 V apart in the published index: over 0.15 and 0.25, under 0.50.
func TestIndexGapOfAluminiumAndStainless(t *testing.T) {
	got, ok := salt.IndexGap(salt.Aluminium, salt.Stainless)
	if near(t, "gap", got, 0.40, 0); !ok || got <= salt.GapLimit || got <= 0.25 || got >= 0.50 {
		t.Errorf("%v, %v", got, ok)
	}
}

// The published pairs: index gap, sea-water gap from and to, and the larger that is used.
func TestPublishedPairs(t *testing.T) {
	for _, c := range []struct {
		a, b                   salt.Material
		index, low, high, used float64
	}{
		{salt.Aluminium, salt.Stainless, 0.40, 0.66, 0.96, 0.96},
		{salt.Aluminium, salt.Carbon, 0.90, 0.96, 1.30, 1.30},
		{salt.Aluminium, salt.Steel, 0.05, 0.04, 0.43, 0.43},
		{salt.Titanium, salt.Aluminium, 0.60, 0.72, 1.06, 1.06},
		{salt.Titanium, salt.Carbon, 0.30, 0.14, 0.34, 0.34},
		{salt.Brass, salt.Aluminium, 0.50, 0.36, 0.69, 0.69},
		{salt.Magnesium, salt.Steel, 0.90, 0.88, 1.06, 1.06},
		{salt.Carbon, salt.Carbon, 0, 0, 0, 0},
	} {
		for _, pair := range [][2]salt.Material{{c.a, c.b}, {c.b, c.a}} {
			index, _ := salt.IndexGap(pair[0], pair[1])
			low, high, _ := salt.SeaGap(pair[0], pair[1])
			used, ok := salt.Gap(pair[0], pair[1])
			if index != c.index || low != c.low || high != c.high || used != c.used || !ok {
				t.Errorf("%v: index %v, sea %v to %v, used %v, %v", pair, index, low, high, used, ok)
			}
		}
	}
	if gap, ok := salt.Gap(salt.Aluminium, "unobtainium"); ok {
		t.Errorf("an unknown material has a gap of %v", gap)
	}
}

// 50 mmol/L of table salt is 2.92 g/L; the sweat of the study is told in the same way (its whole-body mean of 35.9 mmol/L).
func TestSaltInSweat(t *testing.T) {
	near(t, "g/L", salt.SaltPerLitre(50), 2.92, 0.01)
	near(t, "g/L at the mean", salt.SaltPerLitre(35.9), salt.SaltMean, 0.01)
	near(t, "g/L, low", salt.SaltPerLitre(18.2), salt.SaltLow, 0.01)
	near(t, "g/L, high", salt.SaltPerLitre(70.8), salt.SaltHigh, 0.01)
	near(t, "g an hour", salt.SaltMean*salt.SweatRate, 2.7, 0.05)
}

// The anode is the one that gives way; an unknown material leaves its couples out and no others.
func TestCouples(t *testing.T) {
	wheel := salt.Wheel{Rim: salt.Carbon, Nipple: salt.Aluminium, Spoke: salt.Stainless, Hub: salt.Aluminium, Bearing: salt.Steel}
	want := []salt.Couple{
		{Where: "rim_nipple", Anode: salt.Aluminium, Cathode: salt.Carbon, GapV: 1.30, OverV: 1.15},
		{Where: "nipple_spoke", Anode: salt.Aluminium, Cathode: salt.Stainless, GapV: 0.96, OverV: 0.81},
		{Where: "spoke_hub", Anode: salt.Aluminium, Cathode: salt.Stainless, GapV: 0.96, OverV: 0.81},
		{Where: "hub_bearing", Anode: salt.Aluminium, Cathode: salt.Steel, GapV: 0.43, OverV: 0.28},
	}
	same(t, wheel.Couples(), want)
	wheel.Spoke = ""
	same(t, wheel.Couples(), []salt.Couple{want[0], want[3]})
	same(t, salt.Wheel{Rim: salt.Brass, Nipple: salt.Stainless}.Couples(), []salt.Couple{
		{Where: "rim_nipple", Anode: salt.Brass, Cathode: salt.Stainless, GapV: 0.36, OverV: 0.21},
	})
	same(t, salt.Wheel{Rim: salt.Aluminium, Nipple: salt.Aluminium}.Couples(), []salt.Couple{
		{Where: "rim_nipple", Anode: salt.Aluminium, Cathode: salt.Aluminium},
	})
	same(t, salt.Wheel{}.Couples(), nil)
}

func same(t *testing.T, got, want []salt.Couple) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%+v, want %+v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%+v, want %+v", got[i], want[i])
		}
	}
}
