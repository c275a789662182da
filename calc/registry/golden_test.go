package registry_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"rimside/calc/registry"
)

var update = flag.Bool("update", false, "write the golden answers anew")

// golden is one request with its answer. The answers were written by this program: they hold it to itself, natively and in the
// browser's form, while the published values stand in the tests of each package.
type golden struct {
	Name   string          `json:"name"`
	About  string          `json:"about"`
	Body   json.RawMessage `json:"body"`
	Answer json.RawMessage `json:"answer"`
}

var goldenFile = filepath.Join("testdata", "golden.json")

func readGolden(t *testing.T) []golden {
	t.Helper()
	raw, err := os.ReadFile(goldenFile)
	if err != nil {
		t.Fatal(err)
	}
	var list []golden
	if err := json.Unmarshal(raw, &list); err != nil {
		t.Fatal(err)
	}
	return list
}

// sameJSON compares decoded JSON: numbers to a share of 1e-9 (1e-9 absolute below 1), all else exactly.
func sameJSON(path string, got, want any) error {
	switch w := want.(type) {
	case map[string]any:
		g, ok := got.(map[string]any)
		if !ok || len(g) != len(w) {
			return fmt.Errorf("%s: %v, want %v", path, got, want)
		}
		for name := range w {
			if err := sameJSON(path+"."+name, g[name], w[name]); err != nil {
				return err
			}
		}
		return nil
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			return fmt.Errorf("%s: %v, want %v", path, got, want)
		}
		for i := range w {
			if err := sameJSON(fmt.Sprintf("%s.%d", path, i), g[i], w[i]); err != nil {
				return err
			}
		}
		return nil
	case float64:
		if g, ok := got.(float64); !ok || !(math.Abs(g-w) <= 1e-9*math.Max(1, math.Abs(w))) {
			return fmt.Errorf("%s: %v, want %v", path, got, want)
		}
		return nil
	}
	if got != want {
		return fmt.Errorf("%s: %v, want %v", path, got, want)
	}
	return nil
}

func TestGolden(t *testing.T) {
	list := readGolden(t)
	if len(list) < 20 {
		t.Errorf("only %d golden requests", len(list))
	}
	compared := map[string]int{}
	for i, g := range list {
		answer, err := registry.Call(g.Name, g.Body)
		if err != nil {
			t.Errorf("%s: %v", g.About, err)
			continue
		}
		if *update {
			list[i].Answer = thinned(t, answer)
			continue
		}
		var got, want any
		if json.Unmarshal(thinned(t, answer), &got) != nil || json.Unmarshal(g.Answer, &want) != nil {
			t.Errorf("%s: not JSON", g.About)
			continue
		}
		if err := sameJSON("", got, want); err != nil {
			t.Errorf("%s: %v", g.About, err)
		}
		compared[g.Name]++
	}
	if *update {
		writeGolden(t, list)
		return
	}
	for _, name := range registry.Names() {
		if compared[name] == 0 {
			t.Errorf("nothing golden for %s", name)
		}
	}
}

// thinned keeps of every curve its length and three of its points, so that the file stays small.
func thinned(t *testing.T, answer []byte) json.RawMessage {
	t.Helper()
	var whole any
	if err := json.Unmarshal(answer, &whole); err != nil {
		t.Fatal(err)
	}
	members, _ := whole.(map[string]any) // nil, and nothing to thin, where the answer is a list
	for _, member := range members {
		if wheel, ok := member.(map[string]any); ok {
			if curve, ok := wheel["curve"].([]any); ok && len(curve) > 0 {
				n := len(curve)
				wheel["curve"] = []any{n, curve[0], curve[n/2], curve[n-1]}
			}
		}
	}
	raw, err := json.Marshal(whole)
	if err != nil {
		t.Fatal(err)
	}
	return raw
}

// writeGolden puts each part of a request on its own line, so that a change shows where it is.
func writeGolden(t *testing.T, list []golden) {
	t.Helper()
	var out bytes.Buffer
	for i, g := range list {
		out.WriteString(map[bool]string{true: "[\n", false: ",\n"}[i == 0])
		about, err := json.Marshal(g.About)
		if err != nil {
			t.Fatal(err)
		}
		var body bytes.Buffer
		if err := json.Compact(&body, g.Body); err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "{\"name\":%q,\"about\":%s,\n\"body\":%s,\n\"answer\":%s}", g.Name, about, &body, g.Answer)
	}
	out.WriteString("\n]\n")
	if err := os.WriteFile(goldenFile, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// The comparison can fail: a number moved by a share of 1e-8, a number in place of null, a list cut short.
func TestGoldenComparisonHasTeeth(t *testing.T) {
	read := func(s string) (v any) {
		if err := json.Unmarshal([]byte(s), &v); err != nil {
			t.Fatal(err)
		}
		return v
	}
	want := read(`{"a":[1,2,{"b":300}],"c":null,"d":"e"}`)
	if err := sameJSON("", read(`{"a":[1,2,{"b":300.0000001}],"c":null,"d":"e"}`), want); err != nil {
		t.Error(err)
	}
	for _, other := range []string{
		`{"a":[1,2,{"b":300.000003}],"c":null,"d":"e"}`, `{"a":[1,2,{"b":300}],"c":0,"d":"e"}`, `{"a":[1,2],"c":null,"d":"e"}`,
		`{"a":[1,2,{"b":null}],"c":null,"d":"e"}`, `{"a":[1,2,{"b":300}],"c":null,"d":"f"}`, `{"a":[1,2,{"b":300}],"d":"e"}`,
	} {
		if sameJSON("", read(other), want) == nil {
			t.Errorf("%s passes for the same", other)
		}
	}
}
