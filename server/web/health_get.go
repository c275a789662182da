package web

import "net/http"

// healthGet says whether the server can do its work: a read and a write of the book are tried. Whatever is wrong, the
// question has been answered, so the status is 200.
func (a *app) healthGet(w http.ResponseWriter, r *http.Request) {
	now := a.book.Health(r.Context())
	a.answerJSON(w, struct {
		OK        bool   `json:"ok"`
		Version   string `json:"version"`
		State     string `json:"state"` // ok, or the code that refusals carry: damaged, full, read_only, busy, internal
		Read      bool   `json:"read"`
		Write     bool   `json:"write"`
		Free      int64  `json:"free_bytes"`  // -1 when nobody knows
		CheckedAt int64  `json:"checked_at"`  // ms since 1970; 0 when not everything has been checked yet
		Damaged   int64  `json:"damaged_ops"` // taken out of the log, until a phone brings them back
	}{now.OK(), a.version, now.State, now.Read, now.Write, now.Free, now.CheckedAt, now.Damaged})
}
