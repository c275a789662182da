// Package oplog is what a book is made of: operations ("ops") that are appended and never changed, and the rules that
// turn them into records. Everything here is a pure function of the ops: no clock, no files, no network. The phone has
// the same rules in TypeScript; the cases in testdata hold both to the same answers.
package oplog

import (
	"crypto/rand"
	"encoding/hex"
	"encoding/json"
)

// KindErase is the kind of an op that takes a record's values away for good, everywhere.
const KindErase = "erase"

// FieldDeleted is the field that hides a record while it is true.
const FieldDeleted = "deleted"

// The bounds of an op and of a push.
const (
	MaxOpBytes = 2 << 20 // bytes of one op's JSON
	MaxPush    = 500     // ops in one push
	maxDepth   = 64      // levels of lists and objects in one op
	maxName    = 64      // characters of a kind, an author, a device
)

// An op's time lies in the years 2020 to 2200, in ms since 1970 (our choice): outside, a clock was not set at all.
const (
	MinAt int64 = 1577836800000 // 2020-01-01T00:00Z
	EndAt int64 = 7289654400000 // 2201-01-01T00:00Z, the first moment that is too late
)

// Op is one operation: some fields of one record set at one moment.
type Op struct {
	ID, Rec, Kind  string                     // id and rec are 32 lowercase hex digits
	At             int64                      // ms since 1970, by the phone's clock and never below what it knew of the record
	Set            map[string]json.RawMessage // field -> value
	Bases          map[string][]string        // field -> the ops whose value this one replaces
	Seen           []string                   // of a delete: the ops it knew of
	Author, Device string                     // claims, not proven
	Schema         int
	Erased         bool   // only the frame is left, the values are gone
	Raw            []byte // the op's JSON as it was received
}

// Erases tells whether the op means that its record's values are gone.
func (op Op) Erases() bool { return op.Kind == KindErase || op.Erased }

// Rejection says why an op was not taken. The message is fit to show.
type Rejection struct {
	ID      string `json:"id"` // "" when it cannot be read
	Code    string `json:"code"`
	Message string `json:"message"`
}

func (r *Rejection) Error() string { return r.Message }

// The codes of rejections.
const (
	Malformed    = "op_malformed"
	TooLarge     = "op_too_large"
	AtOutOfRange = "at_out_of_range"
	OtherContent = "other_content"
)

// NewID draws an id for an op, a record, a book or a log: 32 hex digits.
func NewID() string {
	var id [16]byte
	_, _ = rand.Read(id[:]) // never fails: it ends the program instead
	return hex.EncodeToString(id[:])
}

// IsID tells whether a text is an id: 32 lowercase hex digits.
func IsID(text string) bool { return isHex(text, 32) }

func isHex(text string, length int) bool {
	if len(text) != length {
		return false
	}
	for i := range len(text) {
		if c := text[i]; (c < '0' || c > '9') && (c < 'a' || c > 'f') {
			return false
		}
	}
	return true
}
