package pressure_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/unit"
)

// notLess fails when a falls short of b by more than a hundred-millionth.
func notLess(what string, a, b unit.Pascal) error {
	if !(a >= b-1e-8*b) {
		return fmt.Errorf("%s fell from %v to %v kPa", what, b.KPa(), a.KPa())
	}
	return nil
}

// heavierWantsMore compares the answers for a lighter and a heavier rider.
func heavierWantsMore(light, heavy pressure.Answer) error {
	for _, side := range pressure.Sides {
		l, h := light.Wheel(side), heavy.Wheel(side)
		if l.Advice == nil || h.Advice == nil {
			return fmt.Errorf("%s has no advice", side)
		}
		for _, err := range []error{
			notLess(string(side)+" custom", h.Figures.Custom, l.Figures.Custom),
			notLess(string(side)+" floor", h.Figures.Floor, l.Figures.Floor),
			notLess(string(side)+" recommended", h.Advice.Recommended, l.Advice.Recommended),
		} {
			if err != nil {
				return err
			}
		}
		if h.Figures.Custom <= l.Figures.Custom {
			return fmt.Errorf("%s custom does not move", side)
		}
	}
	return nil
}

func TestHeavierRiderWantsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawFree(t)
		in.FrontLoad, in.RearLoad = 0, 0
		heavy := in
		heavy.Rider *= unit.Kilogram(between(t, 1.001, 1.4, "heavier"))
		light, more := decide(t, in), decide(t, heavy)
		if err := heavierWantsMore(light, more); err != nil {
			t.Error(err)
		}
		if heavierWantsMore(more, light) == nil {
			t.Error("the rule holds both ways round: it cannot fail")
		}
	})
}

func TestWiderMeasuredWantsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawFree(t)
		in.Front.Tyre.Measured = in.Front.Tyre.Label
		wider := in
		wider.Front.Tyre.Measured += unit.FromMM(between(t, 0.1, 5, "wider"))
		a, b := decide(t, in), decide(t, wider)
		if b.Front.Figures.Custom >= a.Front.Figures.Custom {
			t.Errorf("custom rose from %v to %v", a.Front.Figures.Custom, b.Front.Figures.Custom)
		}
	})
}

// rougherIsNotHarder compares the computed bests on one ground and a rougher one; none at all means at the edge of the search.
func rougherIsNotHarder(smooth, rough pressure.Answer) error {
	for _, side := range pressure.Sides {
		s, r := smooth.Wheel(side).Figures, rough.Wheel(side).Figures
		if s.Optimum != nil && r.Optimum != nil && *r.Optimum > *s.Optimum+100 { // solved to 0.1 kPa
			return fmt.Errorf("%s computed best rose from %v to %v", side, *s.Optimum, *r.Optimum)
		}
	}
	return nil
}

func TestRougherGroundIsNotHarder(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		in := drawFree(t)
		rough := in
		rough.Ground = append([]road.Stretch(nil), in.Ground...)
		factor := road.Roughness(between(t, 1.01, 4, "rougher"))
		for i := range rough.Ground {
			rough.Ground[i].Rough *= factor
		}
		a, b := decide(t, in), decide(t, rough)
		if err := rougherIsNotHarder(a, b); err != nil {
			t.Error(err)
		}
		if a.Front.Figures.Optimum != nil && b.Front.Figures.Optimum != nil {
			compared++
			if factor > 1.1 && rougherIsNotHarder(b, a) == nil {
				t.Error("the rule holds both ways round: it cannot fail")
			}
		}
	})
	if compared == 0 {
		t.Error("no computed best was ever compared")
	}
}

// numbers lists every number and word of an answer with its path, by reflection, so that none is forgotten.
func numbers(a pressure.Answer) map[string]float64 {
	out := map[string]float64{}
	walk(out, "", reflect.ValueOf(a))
	return out
}

func walk(out map[string]float64, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		out[path] = v.Float()
	case reflect.Pointer:
		if !v.IsNil() {
			walk(out, path, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			walk(out, path+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(out, fmt.Sprintf("%s.%d", path, i), v.Index(i))
		}
	case reflect.String:
		out[path+"="+v.String()] = 1
	}
}

// sameNumbers fails when two answers differ by more than a share of 1e-9 anywhere (1e-9 absolute where numbers are tiny).
func sameNumbers(a, b pressure.Answer) error {
	one, other := numbers(a), numbers(b)
	if len(one) != len(other) {
		return fmt.Errorf("%d numbers against %d", len(one), len(other))
	}
	for path, x := range one {
		y, found := other[path]
		if !found || !(math.Abs(x-y) <= 1e-9*math.Max(1, math.Abs(x))) {
			return fmt.Errorf("%s: %.15g against %.15g", path, x, y)
		}
	}
	return nil
}

func TestGroundMayBeWrittenInManyWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawAny(t)
		want := decide(t, in)
		first := in.Ground[0]
		part := between(t, 0.01, 0.99, "cut")
		a, b := first, first
		a.Share, b.Share = first.Share*part, first.Share*(1-part)
		cut := in
		cut.Ground = append([]road.Stretch{a}, append(append([]road.Stretch(nil), in.Ground[1:]...), b)...)
		if err := sameNumbers(want, decide(t, cut)); err != nil {
			t.Errorf("cut in two: %v", err)
		}
		scaled := in
		factor := between(t, 0.001, 1000, "scale")
		scaled.Ground = append([]road.Stretch(nil), in.Ground...)
		for i := range scaled.Ground {
			scaled.Ground[i].Share *= factor
		}
		if err := sameNumbers(want, decide(t, scaled)); err != nil {
			t.Errorf("scaled: %v", err)
		}
		rougher := in
		rougher.Ground = append([]road.Stretch(nil), in.Ground...)
		for i := range rougher.Ground {
			rougher.Ground[i].Rough *= 1.01
		}
		if want.Front.Figures != nil && want.Front.Figures.Good != nil && sameNumbers(want, decide(t, rougher)) == nil {
			t.Error("other ground, same numbers: the comparison cannot fail")
		}
	})
}

// Half firm and half soft is not mostly soft, in whatever unit the halves are written.
func TestHalfSoftIsTheSameInEveryUnit(t *testing.T) {
	for _, shares := range [][3]float64{{1, 7, 8}, {0.1, 0.7, 0.8}, {10, 70, 80}, {1.1, 2.2, 3.3}, {0.3, 0.6, 0.9}} {
		in := inputOf(setupOf(40, "glove", "tubeless"),
			stretchOf("pea", 25, shares[0]), stretchOf("walnut", 22, shares[1]), stretchOf("soft", 12, shares[2]))
		a, err := pressure.Decide(in)
		if err != nil {
			t.Fatal(err)
		}
		if a.Front.Figures.Good == nil {
			t.Errorf("shares %v: taken for mostly soft", shares)
		}
	}
}
