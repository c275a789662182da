package blob

// Error is why a file was not taken or given: a code for programs and a sentence fit to show. Any other error of this
// package is internal.
type Error struct{ Code, Message string }

func (e *Error) Error() string { return e.Message }

// What can be wrong with a file.
var (
	ErrWrongHash = &Error{"blob_wrong_hash", "This photo is not the one it is named after: it changed on its way. Send it again."}
	ErrTooLarge  = &Error{"blob_too_large", "This photo is larger than 4 MiB. Make it smaller, then send it again."}
	ErrWrongType = &Error{"blob_wrong_type", "Only photos are taken here: JPEG, PNG or WebP."}
	ErrBadName   = &Error{"blob_bad_name", "A photo is named by its SHA-256, as 64 lowercase hex digits."}
	ErrNotFound  = &Error{"blob_not_found", "This photo is not here. The phone that took it may not have sent it yet."}
)
