package web

import (
	"io"
	"net/http"
	"time"
)

// A weak link delivers late, but it delivers: a deadline counts from the last bytes that came through, not from the first.
const (
	stillPatience = 30 * time.Second // without a byte
	longTime      = 30 * time.Minute // in all, so that nobody holds a connection for good
	pieceBytes    = 16 << 10         // of an answer, written at once
)

// slowBody reads a request's body for as long as bytes keep coming. Only paired devices are given that.
type slowBody struct {
	body    io.Reader
	control *http.ResponseController
	end     time.Time
}

// bySlowLink lifts the usual limits off one request: its body and its answer may take long, standing still may not.
func bySlowLink(w http.ResponseWriter, r *http.Request) {
	slow := &slowBody{body: r.Body, control: http.NewResponseController(w), end: time.Now().Add(longTime)}
	slow.extend()
	r.Body = struct {
		io.Reader
		io.Closer
	}{slow, r.Body}
}

// Read reads on and moves the deadlines along.
func (s *slowBody) Read(into []byte) (int, error) {
	n, err := s.body.Read(into)
	if n > 0 {
		s.extend()
	}
	return n, err
}

func (s *slowBody) extend() {
	until := time.Now().Add(stillPatience)
	if until.After(s.end) {
		until = s.end
	}
	_ = s.control.SetReadDeadline(until)                     // a writer without deadlines needs none moved
	_ = s.control.SetWriteDeadline(until.Add(stillPatience)) // for the answer, which comes after the body
}

// slowWriter writes an answer for as long as the other side takes bytes.
type slowWriter struct {
	http.ResponseWriter
	control *http.ResponseController
	end     time.Time
}

// toSlowLink is a writer whose deadline moves along with the bytes that go out.
func toSlowLink(w http.ResponseWriter) http.ResponseWriter {
	return &slowWriter{w, http.NewResponseController(w), time.Now().Add(longTime)}
}

// Write writes piece by piece.
func (s *slowWriter) Write(body []byte) (written int, err error) {
	for len(body) > 0 && err == nil {
		until := time.Now().Add(stillPatience)
		if until.After(s.end) {
			until = s.end
		}
		_ = s.control.SetWriteDeadline(until) // a writer without deadlines needs none moved
		var n int
		n, err = s.ResponseWriter.Write(body[:min(len(body), pieceBytes)])
		written, body = written+n, body[n:]
	}
	return written, err
}

// Unwrap lets http.ResponseController reach what is underneath.
func (s *slowWriter) Unwrap() http.ResponseWriter { return s.ResponseWriter }
