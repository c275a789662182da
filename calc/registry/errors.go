package registry

import "encoding/json"

// Codes of an Error. Each comes with a message fit to show a person.
const (
	CodeUnknown   = "unknown_calculation"
	CodeMalformed = "malformed"
	CodeTrailing  = "trailing_data"
	CodeDuplicate = "duplicate"
	CodeNull      = "null"
	CodeField     = "unknown_field"
	CodeMissing   = "missing"
	CodeType      = "wrong_type"
	CodeBounds    = "out_of_bounds"
	CodeChoice    = "unknown_choice"
	CodeConflict  = "conflict"
	CodeCannot    = "cannot_compute"
)

// Error says what is wrong with a request: a code, the dotted path of the field, and a message fit to show a person.
type Error struct{ Code, Field, Message string }

func (e *Error) Error() string {
	if e.Field == "" {
		return e.Message
	}
	return e.Field + ": " + e.Message
}

// errorBody is the one JSON shape of every error.
type errorBody struct {
	Code    string `json:"code"`
	Field   string `json:"field"`
	Message string `json:"message"`
}

// JSON is the error as it is sent: {"error":{"code","field","message"}}.
func (e *Error) JSON() []byte {
	raw, err := json.Marshal(map[string]errorBody{"error": {e.Code, e.Field, e.Message}})
	if err != nil { // three strings always encode
		panic(err)
	}
	return raw
}
