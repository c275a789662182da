package registry_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// described is one field as its table has it.
type described struct {
	Path, Type string
	Min, Max   float64
	Required   bool
	Nullable   bool
	Choices    []string
	Each       *described // of a list of plain values
}

type publication struct {
	Name    string
	Fields  []described
	Example string
}

func published(t *testing.T) []publication {
	t.Helper()
	var list []publication
	for _, c := range registry.Contracts() {
		p := publication{Name: c.Name, Example: c.Example}
		for _, row := range registry.Rows(c.Request) {
			p.Fields = append(p.Fields, describe(row.Path, row.Field))
		}
		list = append(list, p)
	}
	if len(list) != len(registry.Names()) {
		t.Fatalf("%d calculations are described, %d exist", len(list), len(registry.Names()))
	}
	return list
}

func describe(path string, f *registry.Field) described {
	d := described{path, string(f.Kind), f.Min, f.Max, !f.Optional, f.Nullable, f.Choices, nil}
	if f.Each != nil {
		each := describe(path+".*", f.Each)
		d.Each = &each
	}
	return d
}

// ordinary is a value that a field takes.
func (p publication) ordinary(f described) any {
	switch f.Type {
	case "number", "integer":
		return f.Min
	case "choice":
		return f.Choices[0]
	case "boolean":
		return false
	case "text":
		return "x"
	case "day":
		return "2026-07-14"
	case "list":
		out := []any{}
		for range max(1, int(f.Min)) {
			out = append(out, p.item(f))
		}
		return out
	}
	return p.object(f.Path)
}

// item is one that a list takes.
func (p publication) item(list described) any {
	if list.Each != nil {
		return p.ordinary(*list.Each)
	}
	return p.object(list.Path + ".*")
}

// object holds every required member below a path.
func (p publication) object(path string) map[string]any {
	out := map[string]any{}
	for _, f := range p.Fields {
		if name, below := strings.CutPrefix(f.Path, path+"."); below && !strings.Contains(name, ".") && f.Required {
			out[name] = p.ordinary(f)
		}
	}
	return out
}

// edited is the example with one member changed by a function that gets its parent and name; parents that are missing are made.
func (p publication) edited(t *testing.T, path string, change func(parent map[string]any, name string)) string {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal([]byte(p.Example), &root); err != nil {
		t.Fatal(err)
	}
	at, steps := root, strings.Split(path, ".")
	for i := 0; i < len(steps)-1; i++ {
		if i+1 < len(steps) && steps[i+1] == "*" {
			if _, there := at[steps[i]]; !there {
				at[steps[i]] = []any{p.object(strings.Join(steps[:i+2], "."))}
			}
			at = at[steps[i]].([]any)[0].(map[string]any)
			i++
			continue
		}
		if _, there := at[steps[i]]; !there {
			at[steps[i]] = p.object(strings.Join(steps[:i+1], "."))
		}
		at = at[steps[i]].(map[string]any)
	}
	change(at, steps[len(steps)-1])
	raw, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

func set(value any) func(map[string]any, string) {
	return func(parent map[string]any, name string) { parent[name] = value }
}

// Every field of every calculation, as it is described, refuses what it must and names itself.
func TestEveryDescribedFieldGuardsItself(t *testing.T) {
	fields := 0
	for _, p := range published(t) {
		for _, f := range p.Fields {
			fields++
			at := strings.ReplaceAll(f.Path, "*", "0")
			if body := p.edited(t, f.Path, set(nil)); f.Nullable {
				if _, err := registry.Call(p.Name, []byte(body)); err != nil {
					t.Errorf("%s: %s may be null, but %v", p.Name, f.Path, err)
				}
			} else {
				refused(t, p.Name, body, "null", at)
			}
			renamed := f.Path[:strings.LastIndex(f.Path, ".")+1] + strings.ToUpper(f.Path[strings.LastIndex(f.Path, ".")+1:])
			refused(t, p.Name, p.edited(t, renamed, set(1)), "unknown_field", strings.ReplaceAll(renamed, "*", "0"))
			for _, wrong := range wrongTypes(f.Type) {
				refused(t, p.Name, p.edited(t, f.Path, set(wrong)), "wrong_type", at)
			}
			if f.Required {
				remove := func(parent map[string]any, name string) { delete(parent, name) }
				refused(t, p.Name, p.edited(t, f.Path, remove), "missing", at)
			}
			switch f.Type {
			case "number", "integer":
				checkBounds(t, p, f, at)
			case "text":
				for _, no := range []string{"", strings.Repeat("x", int(f.Max)+1)} {
					refused(t, p.Name, p.edited(t, f.Path, set(no)), "out_of_bounds", at)
				}
			case "choice":
				refused(t, p.Name, p.edited(t, f.Path, set("nothing of the kind")), "unknown_choice", at)
			case "day":
				for _, no := range []string{"2026-02-30", "14.07.2026", "2026-07-14T00:00", ""} {
					refused(t, p.Name, p.edited(t, f.Path, set(no)), "wrong_type", at)
				}
				for _, far := range []string{"1899-12-31", "2201-01-01"} {
					refused(t, p.Name, p.edited(t, f.Path, set(far)), "out_of_bounds", at)
				}
			case "list":
				item := p.item(f)
				for _, n := range []int{int(f.Min) - 1, int(f.Max) + 1} {
					if n < 0 { // a list that may be empty
						continue
					}
					items := make([]any, n)
					for i := range items {
						items[i] = item
					}
					refused(t, p.Name, p.edited(t, f.Path, set(items)), "out_of_bounds", at)
				}
				checkItems(t, p, f, at)
			}
		}
	}
	if fields < 60 {
		t.Errorf("only %d fields are described", fields)
	}
}

// checkItems tries items of a list of plain values that it must refuse, and looks for the path of the one that is wrong.
func checkItems(t *testing.T, p publication, f described, at string) {
	t.Helper()
	if f.Each == nil {
		return
	}
	for _, wrong := range wrongTypes(f.Each.Type) {
		items := p.ordinary(f).([]any)
		items[len(items)-1] = wrong
		refused(t, p.Name, p.edited(t, f.Path, set(items)), "wrong_type", at+"."+strconv.Itoa(len(items)-1))
	}
	outside := map[string][]any{"number": {f.Each.Min - 1e-3, f.Each.Max + 1e-3}, "text": {"", strings.Repeat("x", int(f.Each.Max)+1)}}
	for _, wrong := range outside[f.Each.Type] {
		items := p.ordinary(f).([]any)
		items[0] = wrong
		refused(t, p.Name, p.edited(t, f.Path, set(items)), "out_of_bounds", at+".0")
	}
}

func wrongTypes(kind string) []any {
	of := map[string]any{"number": 1, "boolean": true, "choice": "x", "list": []any{}, "object": map[string]any{}}
	var out []any
	for other, value := range of {
		if other != kind && (kind != "integer" || other != "number") && (kind != "text" || other != "choice") {
			out = append(out, value)
		}
	}
	return out
}

// checkBounds tries a number just outside both bounds, and the bounds themselves.
func checkBounds(t *testing.T, p publication, f described, at string) {
	t.Helper()
	hair := 1.0
	if f.Type == "number" {
		hair = 1e-6 * math.Max(1e-3, math.Abs(f.Max))
	}
	refused(t, p.Name, p.edited(t, f.Path, set(f.Min-hair)), "out_of_bounds", at)
	refused(t, p.Name, p.edited(t, f.Path, set(f.Max+hair)), "out_of_bounds", at)
	for _, edge := range []float64{f.Min, f.Max} {
		_, err := registry.Call(p.Name, []byte(p.edited(t, f.Path, set(edge))))
		if e, isFault := err.(*registry.Error); isFault && e.Code == "out_of_bounds" {
			t.Errorf("%s: %s refuses its own bound %v: %v", p.Name, f.Path, edge, e)
		}
	}
}
