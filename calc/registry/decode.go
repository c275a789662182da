package registry

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"rimside/calc/unit"
)

// values is an object that has passed its table: every member is known, has its type and lies inside its bounds.
type values map[string]any

// has says whether a member was given.
func (v values) has(name string) bool { _, ok := v[name]; return ok }

// num is a number, 0 when it was not given.
func (v values) num(name string) float64 { x, _ := v[name].(float64); return x }

// text is a choice, "" when it was not given.
func (v values) text(name string) string { s, _ := v[name].(string); return s }

// day is a calendar day, that of the epoch when it was not given.
func (v values) day(name string) unit.Day { d, _ := v[name].(unit.Day); return d }

// yes is a boolean, false when it was not given.
func (v values) yes(name string) bool { b, _ := v[name].(bool); return b }

// in is an object, nil (and safe to read) when it was not given.
func (v values) in(name string) values { o, _ := v[name].(values); return o }

// items is a list of objects.
func (v values) items(name string) []values { l, _ := v[name].([]values); return l }

// decode holds a body to a table.
func decode(body []byte, table []Field) (values, *Error) {
	raw, fault := parse(body)
	if fault != nil {
		return nil, fault
	}
	members, ok := raw.(entries)
	if !ok {
		return nil, &Error{CodeType, "", "The request must be a JSON object."}
	}
	return checkObject("", members, table)
}

func checkObject(path string, members entries, table []Field) (values, *Error) {
	out := values{}
	for _, m := range members {
		at := join(path, m.name)
		f, known := fieldNamed(table, m.name)
		if !known {
			return nil, &Error{CodeField, at, unknownText(table, m.name)}
		}
		if m.value == nil && f.Nullable {
			continue // as if it were left out
		}
		value, fault := f.check(at, m.value)
		if fault != nil {
			return nil, fault
		}
		out[m.name] = value
	}
	for _, f := range table {
		switch {
		case out.has(f.Name):
		case f.Default != nil:
			out[f.Name] = f.Default
		case !f.Optional:
			return nil, &Error{CodeMissing, join(path, f.Name), f.Words + " is missing."}
		}
	}
	return out, nil
}

func fieldNamed(table []Field, name string) (Field, bool) {
	for _, f := range table {
		if f.Name == name {
			return f, true
		}
	}
	return Field{}, false
}

func unknownText(table []Field, name string) string {
	for _, f := range table {
		if strings.EqualFold(f.Name, name) {
			return "Names are case-sensitive: write " + f.Name + "."
		}
	}
	return "There is no such field here."
}

// check holds one value to its field.
func (f Field) check(path string, value any) (any, *Error) {
	if value == nil {
		return nil, &Error{CodeNull, path, f.Words + " is null: leave it out or give a value."}
	}
	switch f.Kind {
	case number, integer:
		return f.checkNumber(path, value)
	case boolean:
		if b, ok := value.(bool); ok {
			return b, nil
		}
		return nil, &Error{CodeType, path, f.Words + ": true or false."}
	case choice:
		return f.checkChoice(path, value)
	case text:
		return f.checkText(path, value)
	case day:
		return f.checkDay(path, value)
	case list:
		return f.checkList(path, value)
	}
	members, ok := value.(entries)
	if !ok {
		return nil, &Error{CodeType, path, f.Words + ": an object with its fields."}
	}
	return checkObject(path, members, f.Fields)
}

func (f Field) checkNumber(path string, value any) (any, *Error) {
	written, ok := value.(numeral)
	if !ok {
		return nil, &Error{CodeType, path, f.Words + ": a number" + f.inUnit() + "."}
	}
	x, err := strconv.ParseFloat(string(written), 64)
	if err != nil || !(x >= f.Min && x <= f.Max) {
		return nil, &Error{CodeBounds, path, f.Words + ": from " + short(f.Min) + " to " + short(f.Max) + f.inUnit() + "."}
	}
	if f.Kind == integer && x != math.Trunc(x) {
		return nil, &Error{CodeType, path, f.Words + ": a whole number."}
	}
	return x, nil
}

func (f Field) checkChoice(path string, value any) (any, *Error) {
	key, ok := value.(string)
	if !ok {
		return nil, &Error{CodeType, path, f.Words + ": one of " + strings.Join(f.Choices, ", ") + "."}
	}
	for _, c := range f.Choices {
		if c == key {
			return key, nil
		}
	}
	return nil, &Error{CodeChoice, path, f.Words + ": one of " + strings.Join(f.Choices, ", ") + "."}
}

func (f Field) checkText(path string, value any) (any, *Error) {
	given, ok := value.(string)
	if !ok {
		return nil, &Error{CodeType, path, f.Words + ": a text."}
	}
	if n := utf8.RuneCountInString(given); n == 0 || float64(n) > f.Max {
		return nil, &Error{CodeBounds, path, f.Words + ": from 1 to " + short(f.Max) + " characters."}
	}
	return given, nil
}

// The days that a request may hold: from before the oldest bike still ridden, up to the last year that records know.
const firstDay, lastDay = "1900-01-01", "2200-12-31"

func (f Field) checkDay(path string, value any) (any, *Error) {
	text, _ := value.(string)
	at, ok := unit.ParseDay(text)
	if !ok {
		return nil, &Error{CodeType, path, f.Words + ": a day like 2026-07-14."}
	}
	if text < firstDay || text > lastDay {
		return nil, &Error{CodeBounds, path, f.Words + ": from " + firstDay + " to " + lastDay + "."}
	}
	return at, nil
}

func (f Field) checkList(path string, value any) (any, *Error) {
	raw, ok := value.([]any)
	if !ok {
		return nil, &Error{CodeType, path, f.Words + ": a list."}
	}
	if n := float64(len(raw)); n < f.Min || n > f.Max {
		return nil, &Error{CodeBounds, path, f.Words + ": from " + short(f.Min) + " to " + short(f.Max) + " items."}
	}
	out := make([]values, len(raw))
	for i, item := range raw {
		at := join(path, strconv.Itoa(i))
		members, ok := item.(entries)
		if !ok {
			return nil, &Error{CodeType, at, f.Words + ": each item is an object."}
		}
		checked, fault := checkObject(at, members, f.Fields)
		if fault != nil {
			return nil, fault
		}
		out[i] = checked
	}
	return out, nil
}

func (f Field) inUnit() string {
	if f.Unit == "" {
		return ""
	}
	return " " + f.Unit
}

// short prints a bound as a person would write it.
func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
