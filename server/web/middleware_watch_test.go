package web

import (
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"testing"
)

// Half an answer must not look like a whole one.
func TestAPanicInTheMiddleOfAnAnswerCutsTheConnection(t *testing.T) {
	a := &app{log: slog.New(slog.DiscardHandler)}
	server := httptest.NewServer(a.watched(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Length", "10")
		_, _ = io.WriteString(w, "half")
		panic("in the middle")
	})))
	defer server.Close()
	response, err := http.Get(server.URL)
	if err != nil {
		return
	}
	defer response.Body.Close()
	if body, err := io.ReadAll(response.Body); err == nil {
		t.Errorf("the client got %q and no error", body)
	}
}

func TestAnAbortedHandlerStaysAborted(t *testing.T) {
	a := &app{log: slog.New(slog.DiscardHandler)}
	defer func() {
		if recover() != http.ErrAbortHandler {
			t.Error("http.ErrAbortHandler did not reach the server")
		}
	}()
	a.watched(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) })).
		ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, "/", nil))
}
