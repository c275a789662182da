package web

import (
	"bytes"
	"compress/gzip"
	"errors"
	"net/http"
	"sync"
)

// worthPacking is the size in bytes below which packing saves nothing that anybody would notice.
const worthPacking = 1400

var packers = sync.Pool{New: func() any {
	packer, err := gzip.NewWriterLevel(nil, gzip.BestSpeed)
	if err != nil {
		panic(err) // the level is right
	}
	return packer
}}

// answerPacked answers with JSON, compressed where the client takes that: a page of ops is a sixth then, which is what
// counts where a link is weak. Our pages hold no secret beside what another site could make the server write, so that their
// length tells nobody anything.
func answerPacked(w http.ResponseWriter, r *http.Request, body []byte) {
	w = toSlowLink(w)
	w.Header().Add("Vary", "Accept-Encoding")
	isGzip := func(encoding string) bool { return encoding == "gzip" }
	if len(body) < worthPacking || chooseEncoding(r.Header.Get("Accept-Encoding"), isGzip) != "gzip" {
		answer(w, http.StatusOK, "application/json", body)
		return
	}
	out := bytes.NewBuffer(make([]byte, 0, len(body)/3))
	packer := packers.Get().(*gzip.Writer)
	defer packers.Put(packer)
	packer.Reset(out)
	_, err := packer.Write(body)
	if err := errors.Join(err, packer.Close()); err != nil {
		panic(err) // a buffer takes all
	}
	w.Header().Set("Content-Encoding", "gzip")
	answer(w, http.StatusOK, "application/json", out.Bytes())
}
