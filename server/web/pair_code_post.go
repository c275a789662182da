package web

import (
	"net/http"

	"rimside/server/access"
	"rimside/store/sqlite"
)

// MostCodes is how many pairing codes are valid at once.
const MostCodes = 5

// pairCodePost makes a code that lets one more phone in.
func (a *app) pairCodePost(w http.ResponseWriter, r *http.Request) {
	code, expires := access.NewCode(), a.now().Add(sqlite.CodeTime)
	if err := a.book.AddCode(r.Context(), code, expires, MostCodes); err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.answerJSON(w, struct {
		Code      string `json:"code"`
		ExpiresAt int64  `json:"expires_at"`
	}{code, expires.UnixMilli()})
}
