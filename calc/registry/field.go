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

// Field is one row of a calculation's table: its name, what it holds, its unit and bounds, and whether it must be there. What a person
// calls it stands in server/web, for programs, and in pwa/src/words.
type Field struct {
	Name     string
	Kind     kind
	Unit     string
	Min, Max float64 // bounds of a number, of a list's length, or Max of a text's
	Optional bool
	Nullable bool // null where there is no such number or thing; in a request as good as left out
	Choices  []string
	Fields   []*Field // of an object, or of each item of a list
	Item     kind     // of a list whose items are no objects: what they are
	Each     *Field   // of such a list in a request: what each item is held to
	Default  any      // what is taken when it is left out: a float64, a bool or a string; nil where nothing is
	Usual    []Usual  // what a person may take when they do not know, by the tyre's printed width
}

// Usual is one row of what may be assumed: up to this printed width in mm, this value.
type Usual struct{ UpTo, Value float64 }

func num(name, unit string, lo, hi float64) *Field {
	return &Field{Name: name, Kind: number, Unit: unit, Min: lo, Max: hi}
}

func oneOf(name string, choices []string) *Field {
	return &Field{Name: name, Kind: choice, Choices: choices}
}

// label is a text, as an id or a trade name, of at most so many characters.
func label(name string, most float64) *Field {
	return &Field{Name: name, Kind: text, Max: most}
}

// date is a calendar day, written 2026-07-14.
func date(name string) *Field { return &Field{Name: name, Kind: day} }

func listOf(name string, lo, hi float64, table ...*Field) *Field {
	return &Field{Name: name, Kind: list, Min: lo, Max: hi, Fields: table}
}

// plainList is a list of a request whose items are no objects: each is held to what stands in the field given for one.
func plainList(name string, lo, hi float64, each *Field) *Field {
	return &Field{Name: name, Kind: list, Min: lo, Max: hi, Item: each.Kind, Each: each}
}

func yesNo(name string) *Field { return &Field{Name: name, Kind: boolean} }

func group(name string, table ...*Field) *Field {
	return &Field{Name: name, Kind: object, Fields: table}
}

// optional is the same field, allowed to be missing.
func (f *Field) optional() *Field {
	same := *f
	same.Optional = true
	return &same
}

// nullable is the same field, null where there is none: in an answer, or in a request, where null is as good as left out.
func (f *Field) nullable() *Field {
	same := *f
	same.Nullable = true
	return &same
}

// instead is the same field, allowed to be missing, with the value that is then taken: a number, a bool or a choice.
func (f *Field) instead(value any) *Field {
	if whole, isWhole := value.(int); isWhole {
		value = float64(whole)
	}
	same := *f
	same.Optional, same.Default = true, value
	return &same
}

// Row is a field with its dotted path; "*" stands for the items of a list.
type Row struct {
	Path string
	*Field
}

// Rows flattens a table: each field is followed by those that it holds.
func Rows(table []*Field) []Row { return rowsBelow("", table) }

func rowsBelow(prefix string, table []*Field) []Row {
	var out []Row
	for _, f := range table {
		path := prefix + f.Name
		out = append(out, Row{path, f})
		below := path + "."
		if f.Kind == list {
			below = path + ".*."
		}
		out = append(out, rowsBelow(below, f.Fields)...)
	}
	return out
}
