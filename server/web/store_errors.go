package web

import (
	"context"
	"errors"
	"net/http"

	"rimside/store/blob"
	"rimside/store/sqlite"
)

// refuseStore answers with what the store says when a person can do something about it. Anything else is written to the
// log and told only as a fault.
func (a *app) refuseStore(w http.ResponseWriter, r *http.Request, err error) {
	if of := (*sqlite.Refusal)(nil); errors.As(err, &of) {
		refuse(w, r, problem{Code: of.Code, Field: fieldOf[of.Code], Message: of.Message})
		return
	}
	if of := (*blob.Error)(nil); errors.As(err, &of) {
		refuse(w, r, problem{Code: of.Code, Message: of.Message})
		return
	}
	if tooLarge := (*http.MaxBytesError)(nil); errors.As(err, &tooLarge) {
		refuse(w, r, problem{Code: bodyTooLarge, Message: "This is larger than the server takes in one piece. Send it in smaller parts."})
		return
	}
	if r.Context().Err() != nil || errors.Is(err, context.Canceled) {
		panic(http.ErrAbortHandler) // whoever asked has gone
	}
	a.log.Error("the book could not be read or written", "path", r.URL.Path, "error", err)
	refuse(w, r, problem{Code: internalError, Message: "The server could not read or write its book. Nothing is lost on this phone; it tries again by itself."})
}

var fieldOf = map[string]string{badRequest: "book", otherBook: "book"}
