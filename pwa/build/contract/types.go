package contract

import (
	"encoding/json"
	"strings"
	"unicode"

	"rimside/calc/registry"
)

// members writes an object's type, its lines indented.
func members(table []*registry.Field, indent string) string {
	if len(table) == 0 {
		return "{}"
	}
	var out strings.Builder
	out.WriteString("{\n")
	for _, f := range table {
		out.WriteString(indent + "  readonly " + f.Name)
		if f.Optional {
			out.WriteString("?")
		}
		out.WriteString(": " + typeOf(f, indent+"  ") + ";")
		if f.Unit != "" {
			out.WriteString(" // " + f.Unit)
		}
		out.WriteString("\n")
	}
	out.WriteString(indent + "}")
	return out.String()
}

func typeOf(f *registry.Field, indent string) string {
	written := plainType(f, indent)
	if f.Nullable {
		written += " | null"
	}
	return written
}

func plainType(f *registry.Field, indent string) string {
	switch kind := string(f.Kind); kind {
	case "list":
		if f.Each != nil && f.Each.Item != "" { // a list of lists
			return "readonly (" + plainType(f.Each, indent) + ")[]"
		}
		if f.Item != "" {
			return "readonly " + scalar(string(f.Item), f.Choices, true) + "[]"
		}
		return "readonly " + members(f.Fields, indent) + "[]"
	case "object":
		return members(f.Fields, indent)
	default:
		return scalar(kind, f.Choices, false)
	}
}

// scalar is the type of what holds no fields; a union is bracketed where it is the item of a list.
func scalar(kind string, choices []string, bracketed bool) string {
	switch kind {
	case "number", "integer":
		return "number"
	case "boolean":
		return "boolean"
	case "choice":
		return union(choices, bracketed)
	case "day", "text":
		return "string"
	case "range", "pair":
		return "readonly [number, number]"
	case "values":
		return "Readonly<Record<string, number | string | boolean | null>>"
	}
	panic("no type is known for the kind " + kind) // a kind that was added to the registry alone
}

func union(choices []string, bracketed bool) string {
	quoted := make([]string, len(choices))
	for i, c := range choices {
		quoted[i] = literal(c)
	}
	all := strings.Join(quoted, " | ")
	if bracketed && len(choices) > 1 {
		return "(" + all + ")"
	}
	return all
}

// literal writes a value as a script has it.
func literal(value any) string {
	written, err := json.Marshal(value)
	if err != nil {
		panic(err) // an infinity where a bound belongs
	}
	return string(written)
}

// title makes a type’s name of a calculation’s: bike_match is BikeMatch.
func title(name string) string {
	var out strings.Builder
	for word := range strings.SplitSeq(name, "_") {
		out.WriteRune(unicode.ToUpper(rune(word[0])))
		out.WriteString(word[1:])
	}
	return out.String()
}

// camel begins a name with a small letter.
func camel(name string) string { return string(unicode.ToLower(rune(name[0]))) + name[1:] }
