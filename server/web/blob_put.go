package web

import (
	"encoding/json"
	"net/http"
	"regexp"

	"rimside/store/blob"
	"rimside/store/fault"
)

// blobPut keeps a file under its SHA-256, once its bytes have been found to have that sum.
func (a *app) blobPut(w http.ResponseWriter, r *http.Request) {
	if !isPlain(w, r) {
		return
	}
	bySlowLink(w, r)
	body := http.MaxBytesReader(w, r.Body, blob.MaxBytes+1)
	if err := a.book.PutBlob(r.Context(), pathValue(r, "sha256"), body); err != nil {
		a.refuseStore(w, r, err)
		return
	}
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(http.StatusNoContent)
}

const (
	maxMissing     = 1000
	maxMissingBody = 256 << 10
)

var sha256Text = regexp.MustCompile(`^[0-9a-f]{64}$`)

// blobsMissing answers which of the named files are not here, so that only those are sent.
func (a *app) blobsMissing(w http.ResponseWriter, r *http.Request) {
	body, ok := readJSONBody(w, r, maxMissingBody, "256 KiB, the most this takes: ask for fewer files at once.")
	if !ok {
		return
	}
	var asked struct {
		Sums []string `json:"sha256"`
	}
	if json.Unmarshal(body, &asked) != nil || asked.Sums == nil || len(asked.Sums) > maxMissing || !areSums(asked.Sums) {
		refuse(w, r, fault.At("sha256", fault.Invalid, "bad_request", "Name at most 1000 files in sha256, each by 64 lowercase hex digits."))
		return
	}
	missing, err := a.blobs.Missing(asked.Sums)
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	a.answerJSON(w, map[string][]string{"missing": orEmpty(missing)})
}

func areSums(texts []string) bool {
	for _, text := range texts {
		if !sha256Text.MatchString(text) {
			return false
		}
	}
	return true
}
