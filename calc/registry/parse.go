package registry

import (
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// maxDepth is deeper than any table here; it keeps a hostile body from filling the stack.
const maxDepth = 12

// entries is a JSON object with its members in order, so that faults are told in the order of the text.
type entries []member

type member struct {
	name  string
	value any // string, bool, numeral, nil, entries or []any
}

// numeral is a JSON number as written.
type numeral string

// parse reads one JSON value strictly after RFC 8259: no duplicate names, no trailing data, no broken text, nothing deeper
// than maxDepth. Where names are given twice, the value with the first of each comes beside the error. The standard library's reader lets the first two pass and is half of the browser's download; a fuzz test
// holds this one to its judgement of what is well-formed.
func parse(body []byte) (any, *Error) {
	p := &parser{text: body}
	value, fault := p.value("", 0)
	if fault != nil {
		return nil, together(p.twice, fault)
	}
	if p.space(); p.at < len(p.text) {
		return nil, together(p.twice, wrong(CodeTrailing, ""))
	}
	return value, p.twice
}

type parser struct {
	text  []byte
	at    int
	twice *Error // names that were given twice
}

func malformed(path string) *Error { return wrong(CodeMalformed, path) }

// space passes over white space.
func (p *parser) space() {
	for p.at < len(p.text) && (p.text[p.at] == ' ' || p.text[p.at] == '\t' || p.text[p.at] == '\n' || p.text[p.at] == '\r') {
		p.at++
	}
}

// next is the byte to come, 0 at the end.
func (p *parser) next() byte {
	if p.at < len(p.text) {
		return p.text[p.at]
	}
	return 0
}

// take passes over a byte if it is the one to come after white space.
func (p *parser) take(want byte) bool {
	p.space()
	if p.next() != want || p.at == len(p.text) {
		return false
	}
	p.at++
	return true
}

func (p *parser) word(want string) bool {
	if len(p.text)-p.at < len(want) || string(p.text[p.at:p.at+len(want)]) != want {
		return false
	}
	p.at += len(want)
	return true
}

func (p *parser) value(path string, depth int) (any, *Error) {
	if depth > maxDepth {
		return nil, malformed(path)
	}
	switch {
	case p.take('{'):
		return p.object(path, depth)
	case p.take('['):
		return p.list(path, depth)
	case p.take('"'):
		return p.string(path)
	case p.word("true"):
		return true, nil
	case p.word("false"):
		return false, nil
	case p.word("null"):
		return nil, nil
	}
	return p.number(path)
}

func (p *parser) object(path string, depth int) (any, *Error) {
	out, seen := entries{}, map[string]bool{}
	if p.take('}') {
		return out, nil
	}
	for {
		if !p.take('"') {
			return nil, malformed(path)
		}
		name, fault := p.string(path)
		if fault != nil {
			return nil, fault
		}
		at := join(path, name)
		again := seen[name]
		if again {
			p.twice = together(p.twice, wrong(CodeDuplicate, at))
		}
		seen[name] = true
		if !p.take(':') {
			return nil, malformed(at)
		}
		value, fault := p.value(at, depth+1)
		if fault != nil {
			return nil, fault
		}
		if !again {
			out = append(out, member{name, value})
		}
		if p.take('}') {
			return out, nil
		}
		if !p.take(',') {
			return nil, malformed(path)
		}
	}
}

func (p *parser) list(path string, depth int) (any, *Error) {
	out := []any{}
	if p.take(']') {
		return out, nil
	}
	for {
		value, fault := p.value(join(path, strconv.Itoa(len(out))), depth+1)
		if fault != nil {
			return nil, fault
		}
		out = append(out, value)
		if p.take(']') {
			return out, nil
		}
		if !p.take(',') {
			return nil, malformed(path)
		}
	}
}

// string reads the rest of a string, its opening quote already taken.
func (p *parser) string(path string) (string, *Error) {
	var out []byte
	for p.at < len(p.text) {
		c := p.text[p.at]
		switch {
		case c == '"':
			p.at++
			return string(out), nil
		case c == '\\':
			r, ok := p.escape()
			if !ok {
				return "", malformed(path)
			}
			out = utf8.AppendRune(out, r)
		case c < ' ':
			return "", malformed(path)
		default:
			r, size := utf8.DecodeRune(p.text[p.at:])
			if r == utf8.RuneError && size == 1 {
				return "", malformed(path)
			}
			out = append(out, p.text[p.at:p.at+size]...)
			p.at += size
		}
	}
	return "", malformed(path)
}

var escapes = map[byte]rune{'"': '"', '\\': '\\', '/': '/', 'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}

func (p *parser) escape() (rune, bool) {
	p.at++ // the backslash
	c := p.next()
	p.at++
	if c != 'u' {
		r, known := escapes[c]
		return r, known
	}
	first, ok := p.hex()
	if !ok || !utf16.IsSurrogate(first) {
		return first, ok
	}
	if !p.word(`\u`) {
		return utf8.RuneError, true
	}
	second, ok := p.hex()
	return utf16.DecodeRune(first, second), ok
}

func (p *parser) hex() (rune, bool) {
	if len(p.text)-p.at < 4 {
		return 0, false
	}
	x, err := strconv.ParseUint(string(p.text[p.at:p.at+4]), 16, 32)
	p.at += 4
	return rune(x), err == nil
}

// number reads -?(0|[1-9][0-9]*)(.[0-9]+)?([eE][+-]?[0-9]+)? as written.
func (p *parser) number(path string) (any, *Error) {
	start := p.at
	p.word("-")
	if !p.word("0") && !p.digits() {
		return nil, malformed(path)
	}
	if p.word(".") && !p.digits() {
		return nil, malformed(path)
	}
	if p.word("e") || p.word("E") {
		_ = p.word("+") || p.word("-")
		if !p.digits() {
			return nil, malformed(path)
		}
	}
	return numeral(p.text[start:p.at]), nil
}

func (p *parser) digits() bool {
	start := p.at
	for c := p.next(); c >= '0' && c <= '9'; c = p.next() {
		p.at++
	}
	return p.at > start
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
