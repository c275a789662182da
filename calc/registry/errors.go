package registry

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

// JSON is the error as it is sent: {"error":{"code","field","message"}}.
func (e *Error) JSON() []byte {
	out, _ := encode(fields{{"error", fields{{"code", e.Code}, {"field", e.Field}, {"message", e.Message}}}})
	return out
}

// PanicJSON is how a caught panic is told, in the same shape with its details beside it.
func PanicJSON(message, details string) []byte {
	out, _ := encode(fields{{"error", fields{{"code", "panic"}, {"field", ""}, {"message", message}, {"details", details}}}})
	return out
}
