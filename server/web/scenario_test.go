package web_test

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"log/slog"
	"maps"
	"net"
	"net/http"
	"slices"
	"strings"
	"testing"
	"time"

	"rimside/server/web"
	"rimside/store/blob"
	"rimside/store/sqlite"
)

// scenario is one request as it goes over the wire, and what must come back.
type scenario struct {
	name    string
	method  string            // GET if empty
	path    string            // exactly as sent
	host    string            // the server's own address if empty; "-" sends an empty one
	headers map[string]string // in addition to Host
	body    string
	server  *running // the usual one if nil

	status      int
	wantHeaders map[string]string // "" means that the header must be absent
	has, hasNot []string          // texts in the body
	json        bool              // the body is an error in JSON
}

// running is a server under test at a real port.
type running struct {
	addr string
	logs *lockedBuffer
}

// start runs a server over the options, filling in what they leave out, until the test ends.
func start(t testing.TB, options web.Options) *running {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	logs := &lockedBuffer{}
	if options.Dist == nil {
		options.Dist = builtApp()
	}
	if options.Calculations.Call == nil {
		options.Calculations = calculations
	}
	if options.Listen == nil {
		options.Listen = listener.Addr()
	}
	if options.Book == nil {
		options.Book, options.Blobs = newBook(t, t.TempDir())
	}
	options.Log = slog.New(slog.NewTextHandler(logs, &slog.HandlerOptions{Level: slog.LevelDebug}))
	handler, err := web.New(t.Context(), options)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- web.Run(ctx, listener, handler, options.Log) }()
	t.Cleanup(func() {
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("the server ended with %v", err)
		}
	})
	return &running{addr: listener.Addr().String(), logs: logs}
}

// newBook opens a book in a folder until the test ends.
func newBook(t testing.TB, dir string) (*sqlite.Book, *blob.Store) {
	t.Helper()
	book, err := sqlite.Open(dir, sqlite.Options{Blobs: blob.In})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	})
	return book, blob.Open(dir)
}

// play sends each scenario's request and compares the response.
func play(t *testing.T, scenarios []scenario) {
	t.Helper()
	usual := start(t, web.Options{})
	for _, s := range scenarios {
		if s.server == nil {
			s.server = usual
		}
		t.Run(s.name, s.check)
	}
}

func (s scenario) check(t *testing.T) {
	response, body := exchange(t, s.server.addr, s.request())
	if response.StatusCode != s.status {
		t.Errorf("status %d, want %d; body %.200q", response.StatusCode, s.status, body)
	}
	checkProtection(t, response)
	for name, want := range s.wantHeaders {
		if got := response.Header.Get(name); got != want {
			t.Errorf("header %s is %q, want %q", name, got, want)
		}
	}
	for _, text := range s.has {
		if !strings.Contains(body, text) {
			t.Errorf("the body lacks %q: %.300q", text, body)
		}
	}
	for _, text := range append(s.hasNot, "goroutine", "secret") {
		if strings.Contains(body, text) {
			t.Errorf("the body holds %q: %.300q", text, body)
		}
	}
	if s.json {
		checkErrorShape(t, response, body)
	}
}

// request writes the request out, so that nothing on the way can tidy it up.
func (s scenario) request() string {
	method, host := s.method, s.host
	if method == "" {
		method = http.MethodGet
	}
	switch host {
	case "":
		host = s.server.addr
	case "-":
		host = ""
	}
	var text strings.Builder
	fmt.Fprintf(&text, "%s %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n", method, s.path, host)
	for _, name := range slices.Sorted(maps.Keys(s.headers)) {
		fmt.Fprintf(&text, "%s: %s\r\n", name, s.headers[name])
	}
	if method == http.MethodPost || s.body != "" {
		fmt.Fprintf(&text, "Content-Length: %d\r\n", len(s.body))
	}
	return text.String() + "\r\n" + s.body
}

// exchange sends the text and returns the response to it, its body read.
func exchange(t *testing.T, addr, request string) (*http.Response, string) {
	t.Helper()
	connection, err := net.Dial("tcp", addr)
	if err != nil {
		t.Fatal(err)
	}
	defer connection.Close()
	if err := connection.SetDeadline(time.Now().Add(20 * time.Second)); err != nil {
		t.Fatal(err)
	}
	go func() { _, _ = io.WriteString(connection, request) }() // a refused body may be left unread
	method, _, _ := strings.Cut(request, " ")
	response, err := http.ReadResponse(bufio.NewReader(connection), &http.Request{Method: method})
	if err != nil {
		t.Fatalf("no response: %v", err)
	}
	defer response.Body.Close()
	var body bytes.Buffer
	if _, err := body.ReadFrom(response.Body); err != nil {
		t.Fatalf("the body ended early: %v", err)
	}
	return response, body.String()
}

// onlyBook is a book for servers that are asked for other things.
func onlyBook(t testing.TB) *sqlite.Book {
	t.Helper()
	book, _ := newBook(t, t.TempDir())
	return book
}
