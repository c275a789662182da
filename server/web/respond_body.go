package web

import (
	"net/http"
	"strconv"
)

// answer writes a whole response that no cache may keep.
func answer(w http.ResponseWriter, status int, contentType string, body []byte) {
	header := w.Header()
	header.Set("Content-Type", contentType)
	header.Set("Content-Length", strconv.Itoa(len(body)))
	header.Set("Cache-Control", "no-store")
	w.WriteHeader(status)
	_, _ = w.Write(body) // a client that went away has no need of it
}
