package web

import (
	"net/http"

	"rimside/server/access"
)

// deviceRevoke shuts a device out, at once and for ever. It travels in the log, so that other servers of the book learn of
// it from whoever comes by.
func (a *app) deviceRevoke(w http.ResponseWriter, r *http.Request) {
	id := pathValue(r, "id")
	if !a.isDevice(w, r, id) {
		return
	}
	if err := a.setDevice(r.Context(), id, via(r), "revoked", true); err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.note(r, access.Barred, id)
	a.answerDevice(w, r, id)
}
