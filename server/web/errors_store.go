package web

import (
	"context"
	"errors"
	"net/http"

	"rimside/store/fault"
)

var errTooLarge = fault.New(fault.TooLarge, "body_too_large", "This is larger than the server takes in one piece. Send it in smaller parts.")

var errBroken = fault.New(fault.Broken, "internal", "The server could not read or write its book. Nothing is lost on this phone; it tries again by itself.")

// refuseStore answers with what the store says when somebody can do something about it. Anything else is written to the
// log and told only as a fault of the server.
func (a *app) refuseStore(w http.ResponseWriter, r *http.Request, err error) {
	said := fault.Of(err)
	switch {
	case said != nil && said.Kind < fault.Broken:
		refuse(w, r, said)
		return
	case errors.As(err, new(*http.MaxBytesError)):
		refuse(w, r, errTooLarge)
		return
	case r.Context().Err() != nil || errors.Is(err, context.Canceled):
		panic(http.ErrAbortHandler) // whoever asked has gone
	case said == nil:
		said = errBroken
	}
	a.log.Error("the book could not be read or written", "path", r.URL.Path, "error", err)
	refuse(w, r, said)
}
