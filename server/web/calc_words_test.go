package web

import (
	"strings"
	"testing"

	"rimside/calc/registry"
)

// Every calculation has its sentence and every field its words; no words are left over from a field that went.
func TestEveryFieldHasWords(t *testing.T) {
	used := map[string]bool{}
	for _, c := range registry.Contracts() {
		if sentences[c.Name] == "" {
			t.Errorf("%s has no sentence", c.Name)
		}
		for _, row := range registry.Rows(c.Request) {
			if wordsOf(row.Path) == row.Path {
				t.Errorf("%s: %s has no words", c.Name, row.Path)
			}
			used[row.Path] = true
			for _, side := range []string{"front", "rear"} {
				used[strings.Join(replaced(strings.Split(row.Path, "."), side, "side"), ".")] = true
			}
		}
	}
	for _, table := range []map[string]string{fieldWords, sidedWords} {
		for path := range table {
			if !used[path] {
				t.Errorf("words for %s, which no request has", path)
			}
		}
	}
}

func replaced(parts []string, old, by string) []string {
	for i, part := range parts {
		if part == old {
			parts[i] = by
		}
	}
	return parts
}

// Every code makes a sentence that begins with a capital letter and ends with one full stop.
func TestEveryCodeMakesASentence(t *testing.T) {
	for _, code := range registry.Codes() {
		for _, values := range []map[string]any{
			{}, {"type": "number", "unit": "kPa", "min": 1.0, "max": 2.0}, {"type": "list", "items": true, "min": 0.0, "max": 3.0}, {"above": 0.0},
			{"type": "choice", "choices": []string{"a", "b"}}, {"with": "rear_load_kg", "why": "flat_tyre", "write": "kpa"}, {"why": "something new"},
		} {
			for _, field := range []string{"kpa", "front.tyre.label_mm", "ground.3.kmh", "a.new.one"} {
				said := message(&registry.Error{Code: code, Field: field, Values: values})
				if !strings.HasSuffix(said, ".") || strings.HasSuffix(said, "..") || strings.Contains(said, "<nil>") && values["min"] != nil || strings.Contains(said, "%!") {
					t.Errorf("%s with %v: %q", code, values, said)
				}
			}
		}
	}
}

func TestMessagesNameTheFieldAndTheBound(t *testing.T) {
	for body, want := range map[string]string{
		`{"kpa":3000,"from":{"c":20,"m":0},"to":{"c":5,"m":0}}`:   "Pressure: from -101 to 2000 kPa.",
		`{"kpa":"3","from":{"c":20,"m":0},"to":{"c":5,"m":0}}`:    "Pressure: a number kPa.",
		`{"KPA":3,"from":{"c":20,"m":0},"to":{"c":5,"m":0}}`:      "Names are case-sensitive: write kpa.",
		`{"kpa":3,"from":null,"to":{"c":5,"m":0}}`:                "Where it was read is null: leave it out or give a value.",
		`{"kpa":3,"from":{"c":20,"m":0},"to":{"c":5}}`:            "Altitude where it is wanted is missing.",
		`{"kpa":-60,"from":{"c":20,"m":5000},"to":{"c":5,"m":0}}`: "The pressure must be above a vacuum at this altitude.",
		`[]`: "The request must be a JSON object.", `{`: "The request is not well-formed JSON.",
	} {
		_, err := registry.Call("air", []byte(body))
		found, _ := err.(*registry.Error)
		if found == nil {
			t.Errorf("%s: %v", body, err)
		} else if got := message(found); got != want {
			t.Errorf("%s: %q, want %q", body, got, want)
		}
	}
}
