package oplog

import (
	"bytes"
	"encoding/json"
)

// What follows takes JSON apart that is known to be valid. Nothing is decoded or copied that need not be: reading ops is
// most of the work of a push.

// member is a name and its value.
type member struct {
	name  string
	value json.RawMessage
}

// membersOf splits an object into its members; ok is false for any other value.
func membersOf(raw []byte) (members []member, ok bool) {
	if len(raw) == 0 || raw[0] != '{' {
		return nil, false
	}
	members = make([]member, 0, 12)
	for i := space(raw, 1); raw[i] != '}'; {
		end := valueEnd(raw, i)
		name := nameOf(raw[i:end])
		i = space(raw, space(raw, end)+1) // past the colon
		end = valueEnd(raw, i)
		members = append(members, member{name, json.RawMessage(raw[i:end:end])})
		i = next(raw, end)
	}
	return members, true
}

// nameOf reads a member's name. Those that every op has need no memory of their own.
func nameOf(raw []byte) string {
	switch string(raw) {
	case `"id"`:
		return "id"
	case `"at"`:
		return "at"
	case `"kind"`:
		return "kind"
	case `"rec"`:
		return "rec"
	case `"set"`:
		return "set"
	case `"bases"`:
		return "bases"
	case `"author"`:
		return "author"
	case `"device"`:
		return "device"
	case `"schema"`:
		return "schema"
	}
	name, _ := textOf(raw)
	return name
}

// itemsOf splits a list; ok is false for any other value.
func itemsOf(raw []byte) (items []json.RawMessage, ok bool) {
	if len(raw) == 0 || raw[0] != '[' {
		return nil, false
	}
	for i := space(raw, 1); raw[i] != ']'; {
		end := valueEnd(raw, i)
		items = append(items, json.RawMessage(raw[i:end:end]))
		i = next(raw, end)
	}
	return items, true
}

// textOf reads a string; ok is false for any other value.
func textOf(raw []byte) (text string, ok bool) {
	if len(raw) < 2 || raw[0] != '"' {
		return "", false
	}
	if bytes.IndexByte(raw, '\\') < 0 {
		return string(raw[1 : len(raw)-1]), true
	}
	return text, json.Unmarshal(raw, &text) == nil
}

// space goes to the first sign from i on that is no white space.
func space(raw []byte, i int) int {
	for raw[i] == ' ' || raw[i] == '\n' || raw[i] == '\t' || raw[i] == '\r' {
		i++
	}
	return i
}

// next goes past the comma behind a value, if there is one.
func next(raw []byte, end int) int {
	i := space(raw, end)
	if raw[i] == ',' {
		i = space(raw, i+1)
	}
	return i
}

// valueEnd goes to the end of the value that starts at i.
func valueEnd(raw []byte, i int) int {
	for depth := 0; i < len(raw); i++ {
		switch raw[i] {
		case '"':
			for i++; raw[i] != '"'; i++ {
				if raw[i] == '\\' {
					i++
				}
			}
			if depth == 0 {
				return i + 1
			}
		case '{', '[':
			depth++
		case '}', ']':
			if depth == 0 {
				return i // of a number or a word before it
			}
			if depth--; depth == 0 {
				return i + 1
			}
		case ',', ' ', '\n', '\t', '\r', ':':
			if depth == 0 {
				return i
			}
		}
	}
	return i
}
