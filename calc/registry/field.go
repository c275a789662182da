package registry

// kind is what a field holds.
type kind string

const (
	number  kind = "number"
	integer kind = "integer"
	boolean kind = "boolean"
	choice  kind = "choice"
	object  kind = "object"
	list    kind = "list"
)

// Field is one row of a calculation's table: its name, what it holds, its unit and bounds, and whether it must be there.
type Field struct {
	Name     string
	Kind     kind
	Words    string // what a person calls it; starts an error message
	Unit     string
	Min, Max float64 // bounds of a number, or of a list's length
	Optional bool
	Choices  []string
	Fields   []Field // of an object, or of each item of a list
	Usual    []Usual // what a person may take when they do not know, by the tyre's printed width
}

// Usual is one row of what may be assumed: up to this printed width in mm, this value.
type Usual struct {
	UpTo  float64 `json:"up_to"`
	Value float64 `json:"value"`
}

func num(name, words, unit string, lo, hi float64) Field {
	return Field{Name: name, Kind: number, Words: words, Unit: unit, Min: lo, Max: hi}
}

func oneOf(name, words string, choices []string) Field {
	return Field{Name: name, Kind: choice, Words: words, Choices: choices}
}

func yesNo(name, words string) Field { return Field{Name: name, Kind: boolean, Words: words} }

func group(name, words string, fields ...Field) Field {
	return Field{Name: name, Kind: object, Words: words, Fields: fields}
}

// optional is the same field, allowed to be missing.
func (f Field) optional() Field {
	f.Optional = true
	return f
}

// described is a Field as the description publishes it: a flat list with dotted paths, "*" for the items of a list.
type described struct {
	Path     string   `json:"path"`
	Type     kind     `json:"type"`
	Words    string   `json:"words"`
	Unit     string   `json:"unit,omitempty"`
	Min      *float64 `json:"min,omitempty"`
	Max      *float64 `json:"max,omitempty"`
	Required bool     `json:"required"`
	Choices  []string `json:"choices,omitempty"`
	Usual    []Usual  `json:"usual,omitempty"`
}

// describe flattens a table.
func describe(prefix string, fields []Field) []described {
	var out []described
	for _, f := range fields {
		path := prefix + f.Name
		d := described{Path: path, Type: f.Kind, Words: f.Words, Unit: f.Unit, Required: !f.Optional, Choices: f.Choices, Usual: f.Usual}
		if f.Kind == number || f.Kind == integer || f.Kind == list {
			lo, hi := f.Min, f.Max
			d.Min, d.Max = &lo, &hi
		}
		out = append(out, d)
		below := path + "."
		if f.Kind == list {
			below = path + ".*."
		}
		out = append(out, describe(below, f.Fields)...)
	}
	return out
}
