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
	held, err := a.book.Held(r.Context(), via(r))
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
		// What this server can beyond the first: a phone asks for it only where it is named.
		Can []string `json:"can"`
		// Erasures that wait until a second phone, or the computer itself, agrees.
		Held []heldLine `json:"held"`
	}{about.Book, about.Log, about.Server, a.name, about.Count, about.Digest, a.version, a.nowMS(), can, heldLines(held)})
}

// can names what was added to the calls, so that phones of today work with servers of before and the other way round:
// health: GET /api/health tells state, read, write, free_bytes, checked_at, damaged_ops;
// page_hash: a page of GET /api/ops carries hash, the SHA-256 of the SHA-256 of each of its ops' bytes in a row;
// wanted: GET /api/wanted lists ops and photos that are to be sent again;
// erasures: GET /api/erasures tells which erasures wait, held tells whose and how many; an entry of kind agreement names them;
// access: GET /api/access lists who came to the door lately;
// parts: GET and PATCH /api/blobs/{sha256}/part take a photo in parts.
var can = []string{"health", "page_hash", "wanted", "parts", "erasures", "access"}

// answerJSON writes what always marshals: plain structs of texts and numbers.
func (a *app) answerJSON(w http.ResponseWriter, what any) {
	body, err := json.Marshal(what)
	if err != nil {
		panic(err)
	}
	answer(w, http.StatusOK, "application/json", body)
}

func (a *app) nowMS() int64 { return a.now().UnixMilli() }
