package web

import (
	"net/http"

	"rimside/server/access"
)

const shownVisits = 100

// accessGet lists who came to the door lately: paired, guessed, slowed down, shut out.
func (a *app) accessGet(w http.ResponseWriter, r *http.Request) {
	visits := []access.Visit{}
	if a.visitors != nil {
		var err error
		if visits, err = a.visitors.Last(shownVisits); err != nil {
			a.refuseStore(w, r, err)
			return
		}
	}
	a.answerJSON(w, map[string][]access.Visit{"visits": visits})
}

// note writes a visit down. It is not worth a refusal when that fails.
func (a *app) note(r *http.Request, what, device string) {
	if a.visitors == nil {
		return
	}
	if err := a.visitors.Note(a.nowMS(), what, device, a.door.Peer(r)); err != nil {
		a.log.Error("the access log cannot be written", "error", err)
	}
}
