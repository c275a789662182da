package registry_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// FuzzCall throws any body at every calculation: never a panic; an error in its one shape, or JSON with finite numbers, and a
// pressure between its floor and its ceiling.
func FuzzCall(f *testing.F) {
	for i, name := range registry.Names() {
		f.Add(i, []byte(registry.Example(name)))
		f.Add(i, []byte(`{"kpa":1e400}`))
	}
	f.Add(0, []byte(`{"rider_kg":72,"rider_kg":72}`))
	f.Add(0, []byte(strings.Replace(registry.Example("pressure"), `"kind":"pea"`, `"kind":"soft"`, 1)))
	f.Add(0, []byte(strings.Replace(registry.Example("pressure"), `"profile":"hooked"`, `"profile":"hookless"`, 2)))
	f.Fuzz(func(t *testing.T, which int, body []byte) {
		names := registry.Names()
		if which < 0 || which >= len(names) {
			return
		}
		answer, err := registry.Call(names[which], body)
		if err != nil {
			e, isFault := err.(*registry.Error)
			if !isFault || !slices.Contains(registry.Codes(), e.Code) || !json.Valid(e.JSON()) {
				t.Errorf("error %v", err)
			}
			return
		}
		var read any
		if err := json.Unmarshal(answer, &read); err != nil {
			t.Fatalf("%s answers %s: %v", names[which], answer, err)
		}
		checkFinite(t, "", read)
		if names[which] != "pressure" {
			return
		}
		var a pressureAnswer
		if err := json.Unmarshal(answer, &a); err != nil {
			t.Fatal(err)
		}
		for side, w := range a.wheels() {
			if w.Recommended == nil {
				continue
			}
			if w.Floor == nil || *w.Recommended < *w.Floor-1e-9 || w.Ceiling != nil && *w.Recommended > *w.Ceiling+1e-9 {
				t.Errorf("%s: %v is outside its limits", side, *w.Recommended)
			}
		}
	})
}

func checkFinite(t *testing.T, path string, value any) {
	t.Helper()
	switch v := value.(type) {
	case map[string]any:
		for name, member := range v {
			checkFinite(t, path+"."+name, member)
		}
	case []any:
		for _, item := range v {
			checkFinite(t, path+".*", item)
		}
	case float64:
		if math.IsNaN(v) || math.Abs(v) > 1e9 {
			t.Errorf("%s is %v", path, v)
		}
	}
}

// The whole way: JSON in, both wheels, JSON out.
func BenchmarkCallPressure(b *testing.B) {
	body := []byte(registry.Example("pressure"))
	for b.Loop() {
		if _, err := registry.Call("pressure", body); err != nil {
			b.Fatal(err)
		}
	}
}
