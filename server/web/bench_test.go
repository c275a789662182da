package web_test

import (
	"bytes"
	"io"
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

// bothWays is our serving of a file and the standard library's of the same bytes.
func bothWays(b *testing.B) (content []byte, handlers map[string]http.Handler) {
	b.Helper()
	content = make([]byte, 500_000)
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
	return content, map[string]http.Handler{"ours": ours, "ServeContent": standard}
}

// BenchmarkStatic compares what the two cost before the network. Ours hands the bytes over in one piece, so that nothing is
// copied here: bytes in a second say nothing.
func BenchmarkStatic(b *testing.B) {
	content, handlers := bothWays(b)
	for name, handler := range handlers {
		b.Run(name, func(b *testing.B) {
			request := httptest.NewRequest(http.MethodGet, "http://localhost/a/66/big.wasm", nil)
			request.Header.Set("Accept-Encoding", "gzip, deflate, br")
			sink := &discard{header: http.Header{}}
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

// BenchmarkStaticOverTCP compares how fast the bytes arrive at a client on this machine.
func BenchmarkStaticOverTCP(b *testing.B) {
	content, handlers := bothWays(b)
	for name, handler := range handlers {
		b.Run(name, func(b *testing.B) {
			server := httptest.NewServer(handler)
			defer server.Close()
			request, err := http.NewRequestWithContext(b.Context(), http.MethodGet, server.URL+"/a/66/big.wasm", nil)
			if err != nil {
				b.Fatal(err)
			}
			request.Header.Set("Accept-Encoding", "br") // our own choice, so that the client unpacks nothing
			b.SetBytes(int64(len(content)))
			for b.Loop() {
				response, err := server.Client().Do(request)
				if err != nil {
					b.Fatal(err)
				}
				n, err := io.Copy(io.Discard, response.Body)
				if closing := response.Body.Close(); err != nil || closing != nil || n != int64(len(content)) {
					b.Fatalf("%d bytes arrived, want %d: %v %v", n, len(content), err, closing)
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
