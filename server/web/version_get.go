package web

import "net/http"

// versionGet answers with the version of the app that this server hands out.
func (a *app) versionGet(w http.ResponseWriter, r *http.Request) {
	a.sendPart(w, r, "version.json")
}
