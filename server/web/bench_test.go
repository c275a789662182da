package web_test

import (
	"bytes"
	"log/slog"
	"math/rand/v2"
	"net"
	"net/http"
	"net/http/httptest"
	"testing"
	"testing/fstest"
	"time"

	"rimside/server/web"
)

// BenchmarkStatic compares our serving of a file with the standard library's of the same bytes.
func BenchmarkStatic(b *testing.B) {
	content := make([]byte, 500_000)
	source := rand.NewChaCha8([32]byte{})
	if _, err := source.Read(content); err != nil {
		b.Fatal(err)
	}
	dist := builtApp()
	dist["a/66/big.wasm"] = &fstest.MapFile{Data: content}
	dist["a/66/big.wasm.br"] = &fstest.MapFile{Data: content}
	ours, err := web.New(b.Context(), web.Options{Book: onlyBook(b), Dist: dist, Listen: &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1)}, Log: slog.New(slog.DiscardHandler)})
	if err != nil {
		b.Fatal(err)
	}
	standard := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/wasm")
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(content))
	})
	for name, handler := range map[string]http.Handler{"ours": ours, "ServeContent": standard} {
		b.Run(name, func(b *testing.B) {
			request := httptest.NewRequest(http.MethodGet, "http://localhost/a/66/big.wasm", nil)
			request.Header.Set("Accept-Encoding", "gzip, deflate, br")
			sink := &discard{header: http.Header{}}
			b.SetBytes(int64(len(content)))
			b.ReportAllocs()
			for b.Loop() {
				clear(sink.header)
				sink.written = 0
				handler.ServeHTTP(sink, request)
				if sink.written != len(content) {
					b.Fatalf("%d bytes sent, want %d", sink.written, len(content))
				}
			}
		})
	}
}

type discard struct {
	header  http.Header
	written int
}

func (d *discard) Header() http.Header { return d.header }
func (d *discard) WriteHeader(int)     {}
func (d *discard) Write(p []byte) (int, error) {
	d.written += len(p)
	return len(p), nil
}
