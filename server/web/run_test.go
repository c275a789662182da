package web_test

import (
	"bufio"
	"context"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"

	"rimside/server/web"
)

// A request under way when the server is asked to stop gets its answer; one that comes later gets no connection.
func TestStoppingLetsRequestsFinishAndTakesNoNewOnes(t *testing.T) {
	begun, release := make(chan struct{}), make(chan struct{})
	slow := web.Calculations{Contracts: calculations.Contracts, Call: func(string, []byte) ([]byte, error) {
		close(begun)
		<-release
		return []byte(`{"finished":true}`), nil
	}}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	log := slog.New(slog.DiscardHandler)
	handler, err := web.New(t.Context(), web.Options{Book: onlyBook(t), Dist: builtApp(), Calculations: slow, Listen: listener.Addr(), Log: log})
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- web.Run(ctx, listener, handler, log) }()

	connection, err := net.Dial("tcp", listener.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer connection.Close()
	if _, err := io.WriteString(connection, "POST /api/calc/slow HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\n\r\n{}"); err != nil {
		t.Fatal(err)
	}
	<-begun
	stop()
	waitUntilRefused(t, listener.Addr().String())
	select {
	case err := <-ended:
		t.Fatalf("the server ended (%v) with a request under way", err)
	default:
	}
	close(release)
	response, err := http.ReadResponse(bufio.NewReader(connection), nil)
	if err != nil {
		t.Fatalf("the request under way got no answer: %v", err)
	}
	body, err := io.ReadAll(response.Body)
	if err != nil || !strings.Contains(string(body), "finished") {
		t.Errorf("the request under way got %q, %v", body, err)
	}
	if err := <-ended; err != nil {
		t.Errorf("the server ended with %v", err)
	}
}

// waitUntilRefused dials until the port is closed.
func waitUntilRefused(t *testing.T, addr string) {
	t.Helper()
	for deadline := time.Now().Add(5 * time.Second); time.Now().Before(deadline); time.Sleep(5 * time.Millisecond) {
		connection, err := net.Dial("tcp", addr)
		if err != nil {
			return
		}
		connection.Close()
	}
	t.Fatal("new connections are still taken 5 s after the server was asked to stop")
}

func TestRunReportsAListenerThatFails(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	listener.Close()
	if err := web.Run(context.Background(), listener, http.NotFoundHandler(), slog.New(slog.DiscardHandler)); err == nil {
		t.Error("no error from a closed listener")
	}
}

func TestHeadersBeyondTheLimitAreRefused(t *testing.T) {
	server := start(t, web.Options{})
	response, _ := exchange(t, server.addr, "GET / HTTP/1.1\r\nHost: localhost\r\nX-Long: "+strings.Repeat("x", 64<<10)+"\r\n\r\n")
	if response.StatusCode != http.StatusRequestHeaderFieldsTooLarge {
		t.Errorf("status %d, want 431", response.StatusCode)
	}
}
