package registry

// kind is what a field holds.
type kind string

const (
	number  kind = "number"
	integer kind = "integer"
	boolean kind = "boolean"
	choice  kind = "choice"
	day     kind = "day"
	object  kind = "object"
	list    kind = "list"
	text    kind = "text"   // a key or words of no fixed choice; of a request, at most Max characters
	span    kind = "range"  // of an answer: two numbers, the lower first
	twin    kind = "pair"   // of an answer: two numbers
	named   kind = "values" // of an answer: an object of values by name
)

// Field is one row of a calculation's table: its name, what it holds, its unit and bounds, and whether it must be there.
type Field struct {
	Name     string
	Kind     kind
	Words    string // what a person calls it; starts an error message
	Unit     string
	Min, Max float64 // bounds of a number, of a list's length, or Max of a text's
	Optional bool
	Nullable bool // null is allowed: of an answer where there is no such number or thing, of a request as if left out
	Choices  []string
	Fields   []Field // of an object, or of each item of a list
	Item     kind    // of a list of an answer whose items are no objects: what they are
	Default  any     // what is taken when it is left out: a float64, a bool or a string; nil where nothing is
	Usual    []Usual // what a person may take when they do not know, by the tyre's printed width
}

// Usual is one row of what may be assumed: up to this printed width in mm, this value.
type Usual struct{ UpTo, Value float64 }

func num(name, words, unit string, lo, hi float64) Field {
	return Field{Name: name, Kind: number, Words: words, Unit: unit, Min: lo, Max: hi}
}

func oneOf(name, words string, choices []string) Field {
	return Field{Name: name, Kind: choice, Words: words, Choices: choices}
}

// label is a text, as an id or a trade name, of at most so many characters.
func label(name, words string, most float64) Field {
	return Field{Name: name, Kind: text, Words: words, Max: most}
}

// date is a calendar day, written 2026-07-14.
func date(name, words string) Field { return Field{Name: name, Kind: day, Words: words} }

func listOf(name, words string, lo, hi float64, table ...Field) Field {
	return Field{Name: name, Kind: list, Words: words, Min: lo, Max: hi, Fields: table}
}

func yesNo(name, words string) Field { return Field{Name: name, Kind: boolean, Words: words} }

func group(name, words string, table ...Field) Field {
	return Field{Name: name, Kind: object, Words: words, Fields: table}
}

// optional is the same field, allowed to be missing.
func (f Field) optional() Field {
	f.Optional = true
	return f
}

// nullable is the same field, null where there is none.
func (f Field) nullable() Field {
	f.Nullable = true
	return f
}

// instead is the same field, allowed to be missing, with the value that is then taken: a number, a bool or a choice.
func (f Field) instead(value any) Field {
	if whole, isWhole := value.(int); isWhole {
		value = float64(whole)
	}
	f.Default = value
	return f.optional()
}

// describe flattens a table as the description publishes it: dotted paths, "*" for the items of a list.
func describe(prefix string, table []Field) []any {
	var out []any
	for _, f := range table {
		path := prefix + f.Name
		out = append(out, f.described(path))
		below := path + "."
		if f.Kind == list {
			below = path + ".*."
		}
		out = append(out, describe(below, f.Fields)...)
	}
	return out
}

func (f Field) described(path string) fields {
	d := fields{{"path", path}, {"type", string(f.Kind)}, {"words", f.Words}, {"required", !f.Optional}}
	if f.Nullable {
		d = append(d, field{"nullable", true})
	}
	if f.Unit != "" {
		d = append(d, field{"unit", f.Unit})
	}
	if f.Kind == number || f.Kind == integer || f.Kind == list {
		d = append(d, field{"min", f.Min}, field{"max", f.Max})
	}
	if f.Kind == text {
		d = append(d, field{"max", f.Max})
	}
	if f.Kind == day {
		d = append(d, field{"from", firstDay}, field{"to", lastDay})
	}
	if f.Default != nil {
		d = append(d, field{"instead", f.Default})
	}
	if len(f.Choices) > 0 {
		choices := make([]any, len(f.Choices))
		for i, c := range f.Choices {
			choices[i] = c
		}
		d = append(d, field{"choices", choices})
	}
	if len(f.Usual) > 0 {
		usual := make([]any, len(f.Usual))
		for i, u := range f.Usual {
			usual[i] = fields{{"up_to", u.UpTo}, {"value", u.Value}}
		}
		d = append(d, field{"usual", usual})
	}
	return d
}
