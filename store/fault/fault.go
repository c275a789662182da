// Package fault is the one form that an error has when somebody outside can do something about it: a kind, of which there
// are few and which the server turns into a status, a code for programs, and a sentence fit to show to a person. Any other
// error of the store and the server is a mistake of ours: it is written to the log and told only as such.
package fault

import "errors"

// Kind says whose turn it is. Those up to TooMany are about what was sent: sending the same again is of no use before
// something was changed. Those from Broken on are about the server: nothing is wrong with what was sent.
type Kind int

// The kinds.
const (
	Invalid     Kind = iota // what was sent cannot be taken as it is
	Unreadable              // it did not arrive whole
	TooLarge                // there is more of it than is taken at once
	WrongForm               // it is of a type, or packed in a way, that is not taken
	WrongHost               // this server does not answer to that name
	WrongMethod             // this address takes no such request
	NotFound                // there is no such thing
	Gone                    // there was, and it is gone for good
	Conflict                // it belongs to another book
	NotPaired               // nobody knows who sends it
	Forbidden               // it may not be sent from there, or not by this code
	TooMany                 // wait, then send it again
	Broken                  // the server, or what it keeps, is broken
	Full                    // no space is left on the server's disk
	Unready                 // the server cannot do it at this time
)

// Error is such an error. Code and Field go out on the wire and never change.
type Error struct {
	Kind    Kind   `json:"-"`
	Code    string `json:"code"`
	Field   string `json:"field"` // of the request, "" for none
	Message string `json:"message"`
}

// New makes one that is about no field.
func New(kind Kind, code, message string) *Error {
	return &Error{Kind: kind, Code: code, Message: message}
}

// At makes one about a field of the request.
func At(field string, kind Kind, code, message string) *Error {
	return &Error{Kind: kind, Code: code, Field: field, Message: message}
}

func (e *Error) Error() string { return e.Message }

// Of finds the fault in an error, or nil.
func Of(err error) *Error {
	var found *Error
	if errors.As(err, &found) {
		return found
	}
	return nil
}
