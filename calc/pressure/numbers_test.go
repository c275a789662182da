package pressure_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"rimside/calc/pressure"
)

// numbersOf lists every number and word of an answer with its path, by reflection, so that none is forgotten.
func numbersOf(a pressure.Answer) map[string]float64 {
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

// sameNumbers fails when two answers differ by more than a share of 1e-9 anywhere (1e-9 absolute where numbers are tiny; of a
// flat bottom's place, the computed best, a share of 1e-6).
func sameNumbers(a, b pressure.Answer) error {
	one, other := numbersOf(a), numbersOf(b)
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

func TestSameNumbersHasTeeth(t *testing.T) {
	in := inputOf(fortyOne(), stretchOf("pea", 25, 1))
	a := mustDecide(t, in)
	in.Rider *= 1 + 1e-7
	if sameNumbers(a, a) != nil || sameNumbers(a, mustDecide(t, in)) == nil {
		t.Error("a hundred-thousandth of the weight makes no difference")
	}
}
