package web

import "net/http"

// demoGet answers with the invented event to try the app with, or with nothing on a server for real use.
func (a *app) demoGet(w http.ResponseWriter, _ *http.Request) {
	if !a.demo {
		w.Header().Set("Cache-Control", "no-store")
		w.WriteHeader(http.StatusNoContent)
		return
	}
	answer(w, http.StatusOK, "application/json", inventedEvent)
}
