package web

import (
	"encoding/json"
	"net/http"
)

// bookGet says whose log this is, how much is in it, and what time it is here.
func (a *app) bookGet(w http.ResponseWriter, r *http.Request) {
	about, err := a.book.About(r.Context())
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.answerJSON(w, struct {
		Book    string `json:"book"`
		Log     string `json:"log"`
		Server  string `json:"server"`
		Name    string `json:"name"`
		Count   int64  `json:"count"`
		Digest  string `json:"digest"`
		Version string `json:"version"`
		Now     int64  `json:"now"`
	}{about.Book, about.Log, about.Server, a.name, about.Count, about.Digest, a.version, a.nowMS()})
}

// answerJSON writes what always marshals: plain structs of texts and numbers.
func (a *app) answerJSON(w http.ResponseWriter, what any) {
	body, err := json.Marshal(what)
	if err != nil {
		panic(err)
	}
	answer(w, http.StatusOK, "application/json", body)
}

func (a *app) nowMS() int64 { return a.now().UnixMilli() }
