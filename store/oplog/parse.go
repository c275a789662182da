package oplog

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"unicode/utf8"
)

// Parse reads an op and checks its envelope. Values of fields, unknown kinds, fields and members are not judged: a newer
// app may have written them. The op keeps raw, which must not be changed afterwards.
func Parse(raw []byte) (Op, *Rejection) {
	if len(raw) > MaxOpBytes {
		return Op{}, &Rejection{ID: idIn(raw), Code: TooLarge, Message: "This entry is larger than 2 MiB, the most one entry may hold. Make it shorter."}
	}
	if fault := badText(raw); fault != "" {
		return Op{}, &Rejection{ID: idIn(raw), Code: Malformed, Message: fault}
	}
	var members []member
	isObject := json.Valid(raw)
	if isObject {
		members, isObject = membersOf(bytes.TrimSpace(raw))
	}
	if !isObject {
		return Op{}, &Rejection{Code: Malformed, Message: "This entry is not a JSON object."}
	}
	op := Op{Raw: raw}
	reader := memberReader{members: members}
	reader.id("id", &op.ID)
	reader.id("rec", &op.Rec)
	reader.name("kind", &op.Kind, true)
	reader.name("author", &op.Author, false)
	reader.name("device", &op.Device, false)
	reader.object("set", &op.Set, true)
	reader.idLists("bases", &op.Bases)
	reader.ids("seen", &op.Seen)
	reader.schema(&op.Schema)
	reader.flag("erased", &op.Erased)
	reader.at(&op.At)
	if reader.fault == nil {
		return op, nil
	}
	if IsID(op.ID) {
		reader.fault.ID = op.ID
	}
	return Op{}, reader.fault
}

// memberReader reads one member after the other and keeps the first fault.
type memberReader struct {
	members []member
	fault   *Rejection
}

func (r *memberReader) wrong(name, want string) {
	if r.fault == nil {
		r.fault = &Rejection{Code: Malformed, Message: "This entry's " + name + " must be " + want + "."}
	}
}

// find gives a member, and notes when it is needed and missing. Of two with one name the last counts, as in a browser.
func (r *memberReader) find(name string, required bool, want string) (raw json.RawMessage, found bool) {
	for _, each := range slices.Backward(r.members) {
		if each.name == name {
			return each.value, true
		}
	}
	if required {
		r.wrong(name, want)
	}
	return nil, false
}

func (r *memberReader) text(name string, into *string, required bool, want string) bool {
	raw, found := r.find(name, required, want)
	if !found {
		return false
	}
	text, isText := textOf(raw)
	if !isText {
		r.wrong(name, want)
		return false
	}
	*into = text
	return true
}

const wantID = "32 lowercase hex digits"

func (r *memberReader) id(name string, into *string) {
	if r.text(name, into, true, wantID) && !IsID(*into) {
		r.wrong(name, wantID)
	}
}

func (r *memberReader) name(name string, into *string, required bool) {
	const want = "a text of at most 64 characters"
	if r.text(name, into, required, want) && (utf8.RuneCountInString(*into) > maxName || required && *into == "") {
		r.wrong(name, want)
	}
}

func (r *memberReader) object(name string, into *map[string]json.RawMessage, required bool) {
	const want = "an object of fields and values"
	raw, found := r.find(name, required, want)
	if !found {
		return
	}
	members, isObject := membersOf(raw)
	if !isObject {
		r.wrong(name, want)
		return
	}
	*into = make(map[string]json.RawMessage, len(members))
	for _, each := range members {
		(*into)[each.name] = each.value
	}
}

func (r *memberReader) ids(name string, into *[]string) {
	const want = "a list of ids"
	if raw, found := r.find(name, false, want); found {
		*into = r.idList(name, want, raw)
	}
}

func (r *memberReader) idLists(name string, into *map[string][]string) {
	const want = "an object of fields, each with a list of ids"
	raw, found := r.find(name, false, want)
	if !found {
		return
	}
	lists, isObject := membersOf(raw)
	if !isObject {
		r.wrong(name, want)
		return
	}
	raws := make(map[string]json.RawMessage, len(lists))
	for _, each := range lists {
		raws[each.name] = each.value
	}
	*into = make(map[string][]string, len(raws))
	for field, list := range raws {
		(*into)[field] = r.idList(name, want, list)
	}
}

func (r *memberReader) idList(name, want string, raw json.RawMessage) []string {
	items, isList := itemsOf(raw)
	if !isList {
		r.wrong(name, want)
		return nil
	}
	ids := make([]string, 0, len(items))
	for _, item := range items {
		id, isText := textOf(item)
		if !isText || !IsID(id) {
			r.wrong(name, want)
			return nil
		}
		ids = append(ids, id)
	}
	return ids
}

func (r *memberReader) flag(name string, into *bool) {
	const want = "true or false"
	raw, found := r.find(name, false, want)
	if !found {
		return
	}
	if *into = string(raw) == "true"; !*into && string(raw) != "false" {
		r.wrong(name, want)
	}
}

func (r *memberReader) schema(into *int) {
	const want = "a whole number from 1"
	var number json.Number
	if !r.number("schema", &number, false, want) {
		return
	}
	value, whole := wholeNumber(number)
	if !whole || value < 1 {
		r.wrong("schema", want)
		return
	}
	*into = int(value)
}

func (r *memberReader) at(into *int64) {
	const want = "a time in whole milliseconds since 1970"
	var number json.Number
	if !r.number("at", &number, true, want) {
		return
	}
	value, whole := wholeNumber(number)
	switch {
	case !whole:
		r.wrong("at", want)
	case r.fault == nil && (value < MinAt || value >= EndAt):
		r.fault = &Rejection{Code: AtOutOfRange, Message: "This entry's time lies outside the years 2020 to 2200. Set this phone's clock, then make the change again."}
	default:
		*into = value
	}
}

func (r *memberReader) number(name string, into *json.Number, required bool, want string) bool {
	raw, found := r.find(name, required, want)
	if !found {
		return false
	}
	if c := raw[0]; c != '-' && (c < '0' || c > '9') {
		r.wrong(name, want)
		return false
	}
	*into = json.Number(raw)
	return true
}

// wholeNumber reads a JSON number that is whole, however it is written: 1.7e12 is one, as in a browser.
func wholeNumber(number json.Number) (int64, bool) {
	if value, err := strconv.ParseInt(number.String(), 10, 64); err == nil {
		return value, true
	}
	value, err := strconv.ParseFloat(number.String(), 64)
	if err != nil || value != math.Trunc(value) || math.Abs(value) > 1<<53 {
		return 0, false
	}
	return int64(value), true
}

// badText says what is wrong with an op's text before it is read, or "": text that a browser and this program would
// understand differently, or that is nested so deeply that reading it could overflow the stack.
func badText(raw []byte) string {
	if !utf8.Valid(raw) {
		return "This entry is not valid UTF-8 text."
	}
	depth := 0
	for i := 0; i < len(raw); i++ {
		switch raw[i] {
		case '{', '[':
			if depth++; depth > maxDepth {
				return "This entry is nested more than 64 levels deep."
			}
		case '}', ']':
			depth--
		case '"':
			end, whole := skipString(raw, i+1)
			if !whole {
				return "This entry holds half a character (a lone surrogate). Delete the last sign typed and save again."
			}
			i = end
		}
	}
	return ""
}

// skipString goes to the closing quote of the string that starts at from; whole is false when an escaped surrogate
// stands alone.
func skipString(raw []byte, from int) (end int, whole bool) {
	for i := from; i < len(raw); i++ {
		switch raw[i] {
		case '"':
			return i, true
		case '\\':
			high := surrogate(raw[i:])
			if high == 0 {
				i++
				continue
			}
			if high >= 0xdc00 || surrogate(raw[i+6:]) < 0xdc00 {
				return i, false
			}
			i += 11
		}
	}
	return len(raw), true
}

// surrogate reads a \uXXXX escape of a surrogate; anything else gives 0.
func surrogate(raw []byte) uint64 {
	if len(raw) < 6 || raw[0] != '\\' || raw[1] != 'u' {
		return 0
	}
	unit, err := strconv.ParseUint(string(raw[2:6]), 16, 16)
	if err != nil || unit < 0xd800 || unit > 0xdfff {
		return 0
	}
	return unit
}

// idIn finds the id of an op that could not be read as a whole, so that its sender can tell which one was meant.
func idIn(raw []byte) string {
	_, after, found := bytes.Cut(raw, []byte(`"id"`))
	after = bytes.TrimLeft(after, " \t\r\n:")
	if !found || len(after) < 34 || after[0] != '"' || after[33] != '"' || !IsID(string(after[1:33])) {
		return ""
	}
	return string(after[1:33])
}
