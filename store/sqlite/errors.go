package sqlite

import (
	"errors"
	"fmt"
	"io/fs"
	"syscall"

	driver "modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"rimside/store/fault"
)

// HowToMend is what a person does about a data folder whose database is damaged. The three files belong together: what is
// left of an old one would be read into a new one.
const HowToMend = "Stop the server. Move rimside.sqlite, rimside.sqlite-wal and rimside.sqlite-shm, as far as they are there, out of the data folder. " +
	"Then run rimside restore FILE with a backup, or copy the newest file of the folder copies to rimside.sqlite. What is missing then comes back from the phones."

// ErrOtherBook is the answer to whoever brings the ops of another book.
var ErrOtherBook = fault.At("book", fault.Conflict, "other_book", "This server keeps another book. Open that book separately, or use the server that keeps yours.")

// ErrErased is the answer to a file that belonged to an erased record.
var ErrErased = fault.New(fault.Gone, "erased", "This photo was erased for good and is not taken again.")

var (
	errBadBook  = fault.At("book", fault.Invalid, "bad_request", "The book's id must be 32 lowercase hex digits.")
	errNoBlobs  = errors.New("sqlite.Options.Blobs is missing: without it, erased photos would stay")
	errNotOurs  = fault.New(fault.Invalid, "not_rimside", "The file rimside.sqlite in the data folder was not made by Rimside. Choose another folder with -data DIR.")
	errUnusable = fault.New(fault.Broken, "damaged", "The file rimside.sqlite in the server's data folder is damaged. "+HowToMend)
)

// What is wrong with the server, so that nobody takes it for a fault of what was sent.
var (
	errFull     = fault.New(fault.Full, "full", "The server's disk is full. Nothing is lost on this phone. Make room on the server's disk; what was not sent then goes by itself.")
	errReadOnly = fault.New(fault.Unready, "read_only", "The server may not write to its data folder. Nothing is lost on this phone. Make the folder writable for the account that runs Rimside.")
	errBusy     = fault.New(fault.Unready, "busy", "The server's book is in use by another program for long. Nothing is lost on this phone; it tries again by itself.")
)

// explain turns what SQLite, or the system below it, says about a file into a sentence.
func explain(err error) error {
	switch code(err) {
	case lib.SQLITE_NOTADB, lib.SQLITE_CORRUPT:
		return errUnusable
	case lib.SQLITE_FULL:
		return errFull
	case lib.SQLITE_READONLY, lib.SQLITE_PERM, lib.SQLITE_CANTOPEN:
		return errReadOnly
	case lib.SQLITE_BUSY, lib.SQLITE_LOCKED:
		return errBusy
	}
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return errFull
	case errors.Is(err, syscall.EROFS), errors.Is(err, fs.ErrPermission):
		return errReadOnly
	}
	return err
}

// code is SQLite's primary result code, or 0.
func code(err error) int {
	if of := (*driver.Error)(nil); errors.As(err, &of) {
		return of.Code() & 0xff
	}
	return 0
}

// newerFormat is what a program says that is older than the file.
func newerFormat(version, known int) *fault.Error {
	return fault.New(fault.Invalid, "newer_format", fmt.Sprintf("The data folder is of format %d, which a newer Rimside wrote; this one knows formats up to %d. "+
		"Nothing was changed. Start the newer program, or choose another folder with -data DIR.", version, known))
}
