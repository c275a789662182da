package registry

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"rimside/calc/unit"
)

// values is an object held to its table: every member is known, has its type and lies inside its bounds, or is faulty.
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

// numbers is a list of plain numbers.
func (v values) numbers(name string) []float64 {
	list, _ := v[name].([]any)
	out := make([]float64, 0, len(list))
	for _, item := range list {
		if x, isNumber := item.(float64); isNumber {
			out = append(out, x)
		}
	}
	return out
}

// words is a list of plain texts.
func (v values) words(name string) []string {
	list, _ := v[name].([]any)
	out := make([]string, 0, len(list))
	for _, item := range list {
		if s, isText := item.(string); isText {
			out = append(out, s)
		}
	}
	return out
}

// faulty stands for a value that was given and refused: it counts as given.
type faulty struct{}

// decode holds a body to a table and finds all its faults. Beside an error the values hold what was right.
func decode(body []byte, table []*Field) (values, *Error) {
	raw, twice := parse(body)
	if raw == nil && twice != nil {
		return nil, twice
	}
	members, ok := raw.(entries)
	if !ok {
		return nil, wrong(CodeType, "", "type", string(object))
	}
	out, faults := checkObject("", members, table)
	return out, together(twice, faults)
}

func checkObject(path string, members entries, table []*Field) (values, *Error) {
	out := values{}
	var faults *Error
	for _, m := range members {
		at := join(path, m.name)
		f, known := fieldNamed(table, m.name)
		if !known {
			faults = together(faults, unknownField(at, table, m.name))
			continue
		}
		if m.value == nil && f.Nullable { // as if it were left out
			continue
		}
		value, fault := f.check(at, m.value)
		if fault != nil && value == nil {
			value = faulty{}
		}
		faults = together(faults, fault)
		out[m.name] = value
	}
	for _, f := range table {
		switch {
		case out.has(f.Name):
		case f.Default != nil:
			out[f.Name] = f.Default
		case !f.Optional:
			faults = together(faults, wrong(CodeMissing, join(path, f.Name)))
		}
	}
	return out, faults
}

func fieldNamed(table []*Field, name string) (*Field, bool) {
	for _, f := range table {
		if f.Name == name {
			return f, true
		}
	}
	return &Field{}, false
}

func unknownField(at string, table []*Field, name string) *Error {
	for _, f := range table {
		if strings.EqualFold(f.Name, name) {
			return wrong(CodeField, at, "write", f.Name)
		}
	}
	return wrong(CodeField, at)
}

// check holds one value to its field. Of an object or a list with faults, what is right comes beside the error.
func (f *Field) check(path string, value any) (any, *Error) {
	if value == nil {
		return nil, wrong(CodeNull, path)
	}
	switch f.Kind {
	case number, integer:
		return f.checkNumber(path, value)
	case boolean:
		if b, ok := value.(bool); ok {
			return b, nil
		}
		return nil, f.wrongType(path)
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
		return nil, f.wrongType(path)
	}
	return checkObject(path, members, f.Fields)
}

func (f *Field) wrongType(path string) *Error {
	if f.Kind == choice {
		return wrong(CodeType, path, "type", string(f.Kind), "choices", f.Choices)
	}
	return wrong(CodeType, path, "type", string(f.Kind), "unit", f.Unit)
}

func (f *Field) checkNumber(path string, value any) (any, *Error) {
	written, ok := value.(numeral)
	if !ok {
		return nil, f.wrongType(path)
	}
	x, err := strconv.ParseFloat(string(written), 64)
	if err != nil || !(x >= f.Min && x <= f.Max) {
		return nil, wrong(CodeBounds, path, "min", f.Min, "max", f.Max, "unit", f.Unit)
	}
	if f.Kind == integer && x != math.Trunc(x) {
		return nil, f.wrongType(path)
	}
	return x, nil
}

func (f *Field) checkChoice(path string, value any) (any, *Error) {
	key, ok := value.(string)
	if !ok {
		return nil, f.wrongType(path)
	}
	for _, c := range f.Choices {
		if c == key {
			return key, nil
		}
	}
	return nil, wrong(CodeChoice, path, "choices", f.Choices)
}

func (f *Field) checkText(path string, value any) (any, *Error) {
	given, ok := value.(string)
	if !ok {
		return nil, f.wrongType(path)
	}
	if n := utf8.RuneCountInString(given); n == 0 || float64(n) > f.Max {
		return nil, wrong(CodeBounds, path, "min", 1.0, "max", f.Max, "characters", true)
	}
	return given, nil
}

// FirstDay and LastDay are the days that a request may hold: from before the oldest bike still ridden, up to the last year that records know.
const FirstDay, LastDay = "1900-01-01", "2200-12-31"

func (f *Field) checkDay(path string, value any) (any, *Error) {
	text, _ := value.(string)
	at, ok := unit.ParseDay(text)
	if !ok {
		return nil, f.wrongType(path)
	}
	if text < FirstDay || text > LastDay {
		return nil, wrong(CodeBounds, path, "min", FirstDay, "max", LastDay)
	}
	return at, nil
}

func (f *Field) checkList(path string, value any) (any, *Error) {
	raw, ok := value.([]any)
	if !ok {
		return nil, f.wrongType(path)
	}
	if n := float64(len(raw)); n < f.Min || n > f.Max {
		return nil, wrong(CodeBounds, path, "min", f.Min, "max", f.Max, "items", true)
	}
	if f.Each != nil {
		return f.checkPlain(path, raw)
	}
	out := make([]values, len(raw))
	var faults *Error
	for i, item := range raw {
		at := join(path, strconv.Itoa(i))
		members, ok := item.(entries)
		if !ok {
			faults = together(faults, wrong(CodeType, at, "type", string(object)))
			continue
		}
		var fault *Error
		out[i], fault = checkObject(at, members, f.Fields)
		faults = together(faults, fault)
	}
	return out, faults
}

// checkPlain holds each item of a list of plain values to its field. Most lists have no fault, so paths are made only for those that do.
func (f *Field) checkPlain(path string, raw []any) (any, *Error) {
	out := make([]any, len(raw))
	var faults *Error
	for i, item := range raw {
		value, fault := f.Each.check("", item)
		if fault == nil {
			out[i] = value
			continue
		}
		_, fault = f.Each.check(join(path, strconv.Itoa(i)), item)
		if faults = together(faults, fault); len(faults.others)+1 >= maxFaults {
			break
		}
	}
	return out, faults
}
