package web

import "net/http"

const maxImportBody = 512 << 20 // read line by line, never held as a whole

// importPost takes an exported file in, as if its ops had been pushed.
func (a *app) importPost(w http.ResponseWriter, r *http.Request) {
	if !isPlain(w, r) {
		return
	}
	bySlowLink(w, r)
	pushed, err := a.book.Import(r.Context(), http.MaxBytesReader(w, r.Body, maxImportBody), via(r))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.passOn(r.Context(), pushed)
	a.answerPushed(w, pushed)
}
