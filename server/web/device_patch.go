package web

import (
	"encoding/json"
	"net/http"

	"rimside/store/fault"
)

// devicePatch gives a device another name.
func (a *app) devicePatch(w http.ResponseWriter, r *http.Request) {
	id := pathValue(r, "id")
	body, ok := readJSONBody(w, r, maxSmallBody, "4 KiB: a name.")
	if !ok || !a.isDevice(w, r, id) {
		return
	}
	var members map[string]json.RawMessage
	if err := json.Unmarshal(body, &members); err != nil || members == nil {
		refuse(w, r, fault.New(fault.Invalid, "bad_request", "Send one JSON object with the member label."))
		return
	}
	label, wrong := readLabel(members)
	if wrong != nil {
		refuse(w, r, wrong)
		return
	}
	if err := a.setDevice(r.Context(), id, via(r), "label", label); err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.answerDevice(w, r, id)
}
