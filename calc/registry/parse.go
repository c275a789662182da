package registry

import (
	"bytes"
	"encoding/json"
	"io"
	"strconv"
)

// maxDepth is deeper than any table here; it keeps a hostile body from filling the stack.
const maxDepth = 12

// entries is a JSON object with its members in order, so that the first fault in the text is the one reported.
type entries []member

type member struct {
	name  string
	value any // string, bool, json.Number, nil, entries or []any
}

// parse reads one JSON value strictly: no duplicate names, no trailing data, nothing deeper than maxDepth. The library
// alone would let the first two pass.
func parse(body []byte) (any, *Error) {
	p := parser{json.NewDecoder(bytes.NewReader(body))}
	p.UseNumber()
	value, fault := p.value("", 0)
	if fault != nil {
		return nil, fault
	}
	if _, err := p.Token(); err != io.EOF {
		return nil, &Error{CodeTrailing, "", "There is something after the end of the request."}
	}
	return value, nil
}

type parser struct{ *json.Decoder }

func malformed(path string) *Error {
	return &Error{CodeMalformed, path, "The request is not well-formed JSON."}
}

func (p parser) value(path string, depth int) (any, *Error) {
	token, err := p.Token()
	if err != nil || depth > maxDepth {
		return nil, malformed(path)
	}
	switch token {
	case json.Delim('{'):
		return p.object(path, depth)
	case json.Delim('['):
		return p.list(path, depth)
	}
	if _, stray := token.(json.Delim); stray {
		return nil, malformed(path)
	}
	return token, nil
}

func (p parser) object(path string, depth int) (any, *Error) {
	out, seen := entries{}, map[string]bool{}
	for p.More() {
		token, err := p.Token()
		name, isName := token.(string)
		if err != nil || !isName {
			return nil, malformed(path)
		}
		at := join(path, name)
		if seen[name] {
			return nil, &Error{CodeDuplicate, at, "This is given twice."}
		}
		seen[name] = true
		value, fault := p.value(at, depth+1)
		if fault != nil {
			return nil, fault
		}
		out = append(out, member{name, value})
	}
	if _, err := p.Token(); err != nil {
		return nil, malformed(path)
	}
	return out, nil
}

func (p parser) list(path string, depth int) (any, *Error) {
	out := []any{}
	for p.More() {
		value, fault := p.value(join(path, strconv.Itoa(len(out))), depth+1)
		if fault != nil {
			return nil, fault
		}
		out = append(out, value)
	}
	if _, err := p.Token(); err != nil {
		return nil, malformed(path)
	}
	return out, nil
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
