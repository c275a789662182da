package web

import (
	"encoding/json"
	"net/http"
)

// demoGet answers with the weather and the ground of the invented event and the bike to open, or with nothing on a
// server for real use.
func (a *app) demoGet(w http.ResponseWriter, _ *http.Request) {
	if !a.demo {
		w.Header().Set("Cache-Control", "no-store")
		w.WriteHeader(http.StatusNoContent)
		return
	}
	d := readDemo()
	a.answerJSON(w, map[string]json.RawMessage{"draft": d.Draft, "bike": json.RawMessage(`"` + d.Bike + `"`)})
}
