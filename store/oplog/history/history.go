// Package history makes up what may happen to a book: phones that edit apart, with clocks that are off, servers that
// never meet, answers that get lost, a server wiped or put back to an old copy. Tests let phones and servers live through
// such histories, in Go and in a browser, and then look whether anything was lost.
package history

import "encoding/json"

// Step is one thing that happens. What it needs not is zero.
type Step struct {
	Do     string            `json:"do"` // see the constants
	Now    int64             `json:"now"`
	Phone  int               `json:"phone"`
	Server int               `json:"server"`
	Rec    int               `json:"rec"`
	Set    map[string]string `json:"set,omitempty"`  // of an edit: field -> value, never used twice
	Lost   int               `json:"lost,omitempty"` // of a meeting: the n-th answer gets lost, and the meeting ends
}

// What may happen. A phone can do nothing to a record that it does not know; such steps are left out by whoever lives
// through them.
const (
	Edit    = "edit"    // set fields of a record, knowing what the phone shows
	Decide  = "decide"  // settle a conflict, if there is one, for the value shown
	Remove  = "remove"  // hide a record
	Restore = "restore" // show it again
	Erase   = "erase"   // for good
	Meet    = "meet"    // a phone exchanges everything with a server
	Wipe    = "wipe"    // a server loses everything
	Keep    = "keep"    // somebody copies a server's folder
	PutBack = "putback" // and puts the copy in its place later
)

// History is a cast and what happens to it, in order.
type History struct {
	Phones  []int64 `json:"phones"` // for each its clock's error, ms
	Servers int     `json:"servers"`
	Batch   int     `json:"batch"` // ops in a push or a page, at most
	Steps   []Step  `json:"steps"`
}

// String writes a history so that a test can show it.
func (h History) String() string {
	text, err := json.Marshal(h)
	if err != nil {
		panic(err) // numbers and texts always marshal
	}
	return string(text)
}

// Calm tells whether no server lost anything: then no phone has a reason to exchange everything anew.
func (h History) Calm() bool {
	for _, step := range h.Steps {
		if step.Do == Wipe || step.Do == PutBack {
			return false
		}
	}
	return true
}
