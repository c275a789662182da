package web

import "net/http"

// recoverGet answers with the page that frees a phone from a broken copy of the app.
func (a *app) recoverGet(w http.ResponseWriter, r *http.Request) {
	a.sendPart(w, r, "recover/index.html")
}
