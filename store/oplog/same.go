package oplog

import (
	"bytes"
	"encoding/json"
	"strconv"
)

// Same tells whether two texts of one id are the same op. Spaces and the order of members do not count. An erased form
// and a full one of one record are the same op: it has no values left to compare, but it still tells whose it is.
func Same(stored, arrived []byte) bool {
	if bytes.Equal(stored, arrived) {
		return true
	}
	a, faultA := Parse(stored)
	b, faultB := Parse(arrived)
	if faultA != nil || faultB != nil || a.ID != b.ID || a.Rec != b.Rec {
		return false
	}
	return a.Erased || b.Erased || equalValues(stored, arrived)
}

// equalValues compares two JSON values as a browser would: numbers as IEEE doubles.
func equalValues(a, b []byte) bool {
	if bytes.Equal(a, b) {
		return true
	}
	left, right := decoded(a), decoded(b)
	return left.ok && right.ok && equal(left.value, right.value)
}

type anyValue struct {
	value any
	ok    bool
}

func decoded(raw []byte) anyValue {
	decoder := json.NewDecoder(bytes.NewReader(raw))
	decoder.UseNumber()
	var value any
	err := decoder.Decode(&value)
	return anyValue{value, err == nil}
}

func equal(a, b any) bool {
	switch a := a.(type) {
	case json.Number:
		b, isNumber := b.(json.Number)
		return isNumber && double(a) == double(b)
	case []any:
		b, isList := b.([]any)
		if !isList || len(a) != len(b) {
			return false
		}
		for i := range a {
			if !equal(a[i], b[i]) {
				return false
			}
		}
		return true
	case map[string]any:
		b, isObject := b.(map[string]any)
		if !isObject || len(a) != len(b) {
			return false
		}
		for name, value := range a {
			other, found := b[name]
			if !found || !equal(value, other) {
				return false
			}
		}
		return true
	}
	return sameScalar(a, b)
}

// double reads a number; one that is too large is an infinity, as in a browser.
func double(number json.Number) float64 {
	value, _ := strconv.ParseFloat(number.String(), 64)
	return value
}

// sameScalar compares null, true, false and texts; == on a list or an object would panic.
func sameScalar(a, b any) bool {
	switch b.(type) {
	case []any, map[string]any:
		return false
	}
	return a == b
}
