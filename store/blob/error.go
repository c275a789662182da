package blob

import "rimside/store/fault"

// What can be wrong with a file.
var (
	ErrWrongHash = fault.New(fault.Invalid, "blob_wrong_hash", "This photo is not the one it is named after: it changed on its way. Send it again.")
	ErrTooLarge  = fault.New(fault.TooLarge, "blob_too_large", "This photo is larger than 4 MiB. Make it smaller, then send it again.")
	ErrWrongType = fault.New(fault.WrongForm, "blob_wrong_type", "Only photos are taken here: JPEG, PNG or WebP.")
	ErrBadName   = fault.New(fault.Invalid, "blob_bad_name", "A photo is named by its SHA-256, as 64 lowercase hex digits.")
	ErrNotFound  = fault.New(fault.NotFound, "blob_not_found", "This photo is not here. The phone that took it may not have sent it yet.")
)
