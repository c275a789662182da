package web

import "net/http"

// mostWanted is how much is asked for at once.
const mostWanted = 500

// wantedGet lists what was damaged here, or never came: ops by their ids, to be pushed again, and photos.
func (a *app) wantedGet(w http.ResponseWriter, r *http.Request) {
	wanted, err := a.book.Wanted(r.Context(), mostWanted)
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	wanted.Ops, wanted.Photos = orEmpty(wanted.Ops), orEmpty(wanted.Photos)
	a.answerJSON(w, wanted)
}
