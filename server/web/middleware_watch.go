package web

import (
	"fmt"
	"log/slog"
	"net/http"
	"runtime/debug"
	"time"

	"rimside/store/fault"
)

// watched logs each request and turns a panic into an answer, so that one bad request cannot end the others.
func (a *app) watched(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		seen := &watchedWriter{ResponseWriter: w}
		start := time.Now()
		defer func() {
			if cause := recover(); cause != nil {
				a.answerPanic(seen, r, cause)
			}
			a.log.LogAttrs(r.Context(), slog.LevelDebug, "request", slog.String("method", r.Method),
				slog.String("path", r.URL.Path), slog.Int("status", seen.status), slog.Int64("bytes", seen.bytes),
				slog.Duration("took", time.Since(start)))
		}()
		next.ServeHTTP(seen, r)
	})
}

// answerPanic logs what happened with its stack and tells the client only that it did.
func (a *app) answerPanic(w *watchedWriter, r *http.Request, cause any) {
	if cause == http.ErrAbortHandler {
		panic(cause)
	}
	a.log.Error("a request made the server panic", "method", r.Method, "path", r.URL.Path,
		"cause", fmt.Sprint(cause), "stack", string(debug.Stack()))
	if w.status != 0 {
		panic(http.ErrAbortHandler) // half an answer is out; cutting the connection is the only way to say so
	}
	for _, name := range []string{"Content-Encoding", "ETag", "Vary", "Allow"} {
		w.Header().Del(name)
	}
	refuse(w, r, fault.New(fault.Broken, "internal", "Something in the server broke. It has been written to its log; please try again."))
}

// watchedWriter remembers what was answered.
type watchedWriter struct {
	http.ResponseWriter
	status int
	bytes  int64
}

// WriteHeader remembers the status.
func (w *watchedWriter) WriteHeader(status int) {
	if w.status == 0 {
		w.status = status
	}
	w.ResponseWriter.WriteHeader(status)
}

// Write counts the bytes.
func (w *watchedWriter) Write(body []byte) (int, error) {
	if w.status == 0 {
		w.status = http.StatusOK
	}
	n, err := w.ResponseWriter.Write(body)
	w.bytes += int64(n)
	return n, err
}

// Unwrap lets http.ResponseController reach what is underneath.
func (w *watchedWriter) Unwrap() http.ResponseWriter {
	return w.ResponseWriter
}
