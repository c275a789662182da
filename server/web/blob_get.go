package web

import (
	"io"
	"net/http"
	"strconv"

	"rimside/store/blob"
)

// blobGet answers with a file by its SHA-256. No cache keeps it: what a hash names never changes, but it may be erased.
func (a *app) blobGet(w http.ResponseWriter, r *http.Request) {
	if err := a.book.CheckBlob(pathValue(r, "sha256")); err != nil {
		a.refuseStore(w, r, err)
		return
	}
	file, err := a.blobs.Get(pathValue(r, "sha256"))
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	defer file.Close()
	// A photo has 4 MiB at most, and holding it makes its length and its type one read.
	body, err := io.ReadAll(file)
	if err != nil {
		a.refuseStore(w, r, err)
		return
	}
	header := w.Header()
	header.Set("Content-Type", blob.TypeOf(body))
	header.Set("Content-Length", strconv.Itoa(len(body)))
	header.Set("Cache-Control", "no-store")
	_, _ = toSlowLink(w).Write(body) // a client that went away has no need of it
}
