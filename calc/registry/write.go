package registry

import (
	"math"
	"strconv"
	"unicode/utf8"
)

// fields is a JSON object to be written, member by member in order. Values may be string, bool, float64, int, nil, fields,
// []any, raw, or a *float64 or pair, which are null when nil.
type fields []field

type field struct {
	name  string
	value any
}

// raw is JSON already written.
type raw string

// pair is a range of two numbers.
type pair [2]float64

// encode writes a value; ok is false when a number in it is not finite, which JSON cannot say and nobody should read.
func encode(value any) (out []byte, ok bool) {
	e := encoder{ok: true}
	e.value(value)
	return e.out, e.ok
}

type encoder struct {
	out []byte
	ok  bool
}

func (e *encoder) value(value any) {
	switch v := value.(type) {
	case string:
		e.text(v)
	case bool:
		e.out = strconv.AppendBool(e.out, v)
	case int:
		e.out = strconv.AppendInt(e.out, int64(v), 10)
	case float64:
		e.number(v)
	case *float64:
		if v == nil {
			e.null()
		} else {
			e.number(*v)
		}
	case *pair:
		if v == nil {
			e.null()
		} else {
			e.list([]any{v[0], v[1]})
		}
	case raw:
		e.out = append(e.out, v...)
	case fields:
		e.object(v)
	case []any:
		e.list(v)
	case nil:
		e.null()
	default:
		e.ok = false
	}
}

func (e *encoder) null() { e.out = append(e.out, "null"...) }

func (e *encoder) number(x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		e.ok = false
		return
	}
	// The shortest digits that read back as the same number; exponents only where they are shorter to read.
	form := byte('f')
	if size := math.Abs(x); size != 0 && (size < 1e-6 || size >= 1e21) {
		form = 'e'
	}
	e.out = strconv.AppendFloat(e.out, x, form, -1, 64)
}

func (e *encoder) object(members fields) {
	e.out = append(e.out, '{')
	for i, m := range members {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		e.text(m.name)
		e.out = append(e.out, ':')
		e.value(m.value)
	}
	e.out = append(e.out, '}')
}

func (e *encoder) list(items []any) {
	e.out = append(e.out, '[')
	for i, item := range items {
		if i > 0 {
			e.out = append(e.out, ',')
		}
		e.value(item)
	}
	e.out = append(e.out, ']')
}

const hexDigits = "0123456789abcdef"

// text writes a string, escaping what RFC 8259 asks for; text that is not UTF-8 becomes the replacement character.
func (e *encoder) text(s string) {
	e.out = append(e.out, '"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			e.out = append(e.out, '\\', byte(r))
		case r < ' ':
			e.out = append(e.out, '\\', 'u', '0', '0', hexDigits[r>>4], hexDigits[r&15])
		default:
			e.out = utf8.AppendRune(e.out, r)
		}
	}
	e.out = append(e.out, '"')
}
