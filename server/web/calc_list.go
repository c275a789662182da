package web

import (
	"encoding/json"
	"net/http"

	"rimside/calc/registry"
)

// described is a calculation as it is published.
type described struct {
	Name     string           `json:"name"`
	Sentence string           `json:"sentence"`
	Fields   []describedField `json:"fields"`
	Example  json.RawMessage  `json:"example"`
	Sources  []map[string]any `json:"sources"` // the constants and formulas that it rests on
}

// describedField is one field of a request: a dotted path, "*" for the items of a list.
type describedField struct {
	Path     string           `json:"path"`
	Type     string           `json:"type"`
	Words    string           `json:"words"`
	Required bool             `json:"required"`
	Nullable bool             `json:"nullable,omitempty"` // null is as if it were left out
	Unit     string           `json:"unit,omitempty"`
	Min      *float64         `json:"min,omitempty"` // of a number, or of a list's length
	Max      *float64         `json:"max,omitempty"`
	From     string           `json:"from,omitempty"` // of a day
	To       string           `json:"to,omitempty"`
	Instead  any              `json:"instead,omitempty"` // what is taken when it is left out
	Choices  []string         `json:"choices,omitempty"`
	Usual    []map[string]any `json:"usual,omitempty"` // what may be assumed, by printed width
}

// calcList answers with every calculation: what it is for, its fields with their bounds, and an example.
func (a *app) calcList(w http.ResponseWriter, _ *http.Request) {
	list := []described{}
	for _, c := range a.calc.Contracts() {
		d := described{Name: c.Name, Sentence: sentences[c.Name], Example: json.RawMessage(c.Example), Fields: []describedField{}}
		for _, row := range registry.Rows(c.Request) {
			d.Fields = append(d.Fields, describe(row))
		}
		d.Sources = describeSources(registry.Sources(c.Name))
		list = append(list, d)
	}
	body, err := json.Marshal(list)
	if err != nil {
		panic(err) // an example of the registry that is no JSON
	}
	answer(w, http.StatusOK, "application/json", body)
}

func describeSources(list []registry.Source) []map[string]any {
	out := []map[string]any{}
	for _, s := range list {
		values := []map[string]any{}
		for _, v := range s.Values {
			values = append(values, map[string]any{"words": v.Words, "value": v.Value, "unit": v.Unit})
		}
		out = append(out, map[string]any{
			"group": s.Group, "words": s.Words, "formula": s.Formula, "values": values, "source": s.From, "mark": string(s.Mark),
		})
	}
	return out
}

func describe(row registry.Row) describedField {
	kind := string(row.Kind)
	d := describedField{
		Path: row.Path, Type: kind, Words: wordsOf(row.Path), Required: !row.Optional, Nullable: row.Nullable, Unit: row.Unit, Instead: row.Default, Choices: row.Choices,
	}
	switch kind {
	case "number", "integer", "list":
		d.Min, d.Max = &row.Min, &row.Max
	case "text":
		d.Max = &row.Max
	case "day":
		d.From, d.To = registry.FirstDay, registry.LastDay
	}
	for _, u := range row.Usual {
		d.Usual = append(d.Usual, map[string]any{"up_to": u.UpTo, "value": u.Value})
	}
	return d
}
