package registry

import "strings"

// Codes of an Error. What to tell a person is made of the code, the field and the values by whoever shows it: pwa/src/words on the
// phone, server/web for programs.
const (
	CodeUnknown   = "unknown_calculation"
	CodeMalformed = "malformed"      // no JSON
	CodeTrailing  = "trailing_data"  // something after the request's end
	CodeDuplicate = "duplicate"      // given twice
	CodeNull      = "null"           // leave it out or give a value
	CodeField     = "unknown_field"  // write: how the name is written, where only its case is wrong
	CodeMissing   = "missing"        // with: the field that asks for it, "" when it is always needed
	CodeType      = "wrong_type"     // type, and unit or choices: what belongs there
	CodeBounds    = "out_of_bounds"  // min, max, unit; items: true for a list's length, characters: true for a text's
	CodeChoice    = "unknown_choice" // choices
	CodeConflict  = "conflict"       // with: the field that it does not go with
	CodeCannot    = "cannot_compute" // why: a key
	CodePanic     = "panic"          // a fault of ours; details: where
)

// Codes lists them.
func Codes() []string {
	return []string{
		CodeUnknown, CodeMalformed, CodeTrailing, CodeDuplicate, CodeNull, CodeField, CodeMissing, CodeType, CodeBounds, CodeChoice, CodeConflict,
		CodeCannot, CodePanic,
	}
}

// maxFaults is how many faults of one request are told: a hostile body has thousands.
const maxFaults = 100

// Error is what is wrong with a request: a code, the dotted path of the field, and what a sentence about it needs. It may be the
// first of several.
type Error struct {
	Code, Field string
	Values      map[string]any // float64, string, bool or []string
	others      []*Error
}

// wrong makes an error; the values are names and what they are, by turns.
func wrong(code, field string, values ...any) *Error {
	e := &Error{Code: code, Field: field, Values: map[string]any{}}
	for i := 0; i+1 < len(values); i += 2 {
		e.Values[values[i].(string)] = values[i+1]
	}
	return e
}

// together joins errors, of which any may be nil, into the first of them; nil where there is none.
func together(errors ...*Error) *Error {
	var first *Error
	for _, e := range errors {
		switch {
		case e == nil:
		case first == nil:
			first = e
		case len(first.others)+1 < maxFaults:
			room := maxFaults - 1 - len(first.others)
			all := e.All()
			first.others = append(first.others, all[:min(room, len(all))]...)
		}
	}
	return first
}

// All lists this error and those that were found beside it, in the order of the request.
func (e *Error) All() []*Error { return append([]*Error{e}, e.others...) }

// besides leaves out what follows from a field that was refused already.
func (e *Error) besides(told *Error) *Error {
	if e == nil || told == nil {
		return e
	}
	refused := map[string]bool{}
	for _, each := range told.All() {
		refused[each.Field] = true
	}
	var left *Error
	for _, each := range e.All() {
		with, _ := each.Values["with"].(string)
		if !refused[each.Field] && !refused[with] {
			left = together(left, &Error{Code: each.Code, Field: each.Field, Values: each.Values})
		}
	}
	return left
}

// Error is for logs: the code and the field.
func (e *Error) Error() string { return strings.TrimSuffix(e.Code+" "+e.Field, " ") }

// JSON is the error as the phone gets it: {"error":the first,"errors":[{"code","field","values"}]}.
func (e *Error) JSON() []byte {
	var list []any
	for _, each := range e.All() {
		list = append(list, fields{{"code", each.Code}, {"field", each.Field}, {"values", each.valuesJSON()}})
	}
	out, _ := encode(fields{{"error", list[0]}, {"errors", list}})
	return out
}

// valuesJSON puts the values in the order of their names: the same error, the same bytes.
func (e *Error) valuesJSON() fields {
	out := make(fields, 0, len(e.Values))
	for name, value := range e.Values {
		if list, isList := value.([]string); isList {
			value = texts(list)
		}
		out = append(out, field{})
		at := len(out) - 1
		for ; at > 0 && out[at-1].name > name; at-- {
			out[at] = out[at-1]
		}
		out[at] = field{name, value}
	}
	return out
}

// PanicJSON is how a caught panic is told, in the same shape with its details.
func PanicJSON(message, details string) []byte {
	return wrong(CodePanic, "", "message", message, "details", details).JSON()
}
