package web

import "net/http"

// manifestGet answers with what a phone needs to install the app.
func (a *app) manifestGet(w http.ResponseWriter, r *http.Request) {
	a.sendPart(w, r, "app.webmanifest")
}
