// Package record knows what a book's records may hold: kinds.json, which the phone reads too. A store takes whatever it
// is given, since a newer app may know more; this list is for reading records, and for the limits that forms show.
package record

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"unicode/utf8"
)

// Role tells what becomes of a record once it is there.
type Role string

// The roles of kinds.
const (
	Description Role = "description" // edited in place
	Entry       Role = "entry"       // written once; a correction is a new entry that names the old
	Control     Role = "control"     // tells holders what to do
)

// Kind is one kind of record: what it is and what it may hold.
type Kind struct {
	Is     Role             `json:"is"`
	Fields map[string]Field `json:"fields"`
}

// Field is one field. Unit and bounds belong to numbers, Max also to texts (characters).
type Field struct {
	Type    string   `json:"type"` // number text choice flag ref day time blob list object any
	Unit    string   `json:"unit"`
	Min     *float64 `json:"min"`
	Max     *float64 `json:"max"`
	Options []string `json:"options"` // of a choice
	Kinds   []string `json:"kinds"`   // what a ref may point to; "*" is anything
	Of      *Field   `json:"of"`      // what a list holds
}

//go:embed kinds.json
var kindsJSON []byte

var table = read()

func read() (list struct {
	Schema int             `json:"schema"`
	Kinds  map[string]Kind `json:"kinds"`
}) {
	if err := json.Unmarshal(kindsJSON, &list); err != nil {
		panic(err) // a mistake in the program itself, found by its first test
	}
	return list
}

// FieldNames lists the fields of a kind in the order in which kinds.json has them, which is that of columns and forms; nil for a kind
// that is not there.
func FieldNames(kind string) []string {
	var list struct {
		Kinds map[string]struct {
			Fields json.RawMessage `json:"fields"`
		} `json:"kinds"`
	}
	if err := json.Unmarshal(kindsJSON, &list); err != nil {
		panic(err)
	}
	fields, known := list.Kinds[kind]
	if !known || len(fields.Fields) == 0 {
		return nil
	}
	decoder := json.NewDecoder(bytes.NewReader(fields.Fields))
	if _, err := decoder.Token(); err != nil {
		panic(err)
	}
	var names []string
	for decoder.More() {
		name, err := decoder.Token()
		var skipped json.RawMessage
		if err != nil || decoder.Decode(&skipped) != nil {
			panic("kinds.json is not the list it was a moment ago")
		}
		names = append(names, name.(string))
	}
	return names
}

// Schema is the version of the list, written into every op.
func Schema() int { return table.Schema }

// Kinds gives the list by name.
func Kinds() map[string]Kind { return table.Kinds }

// Check tells why a value does not suit the field, or nil. The message names the bound.
func (f Field) Check(value json.RawMessage) error {
	var decoded any
	if err := json.Unmarshal(value, &decoded); err != nil {
		return fmt.Errorf("must be a JSON value")
	}
	if decoded == nil {
		return nil // not known, or taken back
	}
	return f.check(decoded)
}

func (f Field) check(value any) error {
	switch f.Type {
	case "number", "time":
		return f.checkNumber(value)
	case "flag":
		if _, isFlag := value.(bool); !isFlag {
			return fmt.Errorf("must be true or false")
		}
	case "list":
		return f.checkList(value)
	case "object":
		if _, isObject := value.(map[string]any); !isObject {
			return fmt.Errorf("must be an object")
		}
	case "any":
	default:
		return f.checkText(value)
	}
	return nil
}

func (f Field) checkNumber(value any) error {
	number, isNumber := value.(float64)
	switch {
	case !isNumber || math.IsInf(number, 0):
		return fmt.Errorf("must be a number")
	case f.Min != nil && number < *f.Min:
		return fmt.Errorf("must be at least %v %s", *f.Min, f.Unit)
	case f.Max != nil && number > *f.Max:
		return fmt.Errorf("must be at most %v %s", *f.Max, f.Unit)
	}
	return nil
}

func (f Field) checkList(value any) error {
	list, isList := value.([]any)
	if !isList {
		return fmt.Errorf("must be a list")
	}
	for i, each := range list {
		if err := f.Of.check(each); err != nil {
			return fmt.Errorf("item %d %w", i+1, err)
		}
	}
	return nil
}

func (f Field) checkText(value any) error {
	text, isText := value.(string)
	if !isText {
		return fmt.Errorf("must be a text")
	}
	switch f.Type {
	case "text":
		if f.Max != nil && float64(utf8.RuneCountInString(text)) > *f.Max {
			return fmt.Errorf("must have at most %v characters", *f.Max)
		}
		return nil
	case "choice":
		for _, option := range f.Options {
			if text == option {
				return nil
			}
		}
		return fmt.Errorf("must be one of %v", f.Options)
	}
	if shape := shapes[f.Type]; shape == nil || !shape.MatchString(text) {
		return fmt.Errorf("must be %s", shapeWords[f.Type])
	}
	return nil
}
