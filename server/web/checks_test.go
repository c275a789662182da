package web_test

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strings"
	"sync"
	"testing"
)

// checkProtection wants the protecting headers, spelled out here once more, on whatever kind of response it is.
func checkProtection(t *testing.T, response *http.Response) {
	t.Helper()
	for name, want := range map[string]string{
		"Content-Security-Policy": "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
			"img-src 'self' blob: data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; " +
			"form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; trusted-types rimside",
		"X-Content-Type-Options":       "nosniff",
		"Referrer-Policy":              "no-referrer",
		"Cross-Origin-Opener-Policy":   "same-origin",
		"Cross-Origin-Resource-Policy": "same-origin",
	} {
		if got := response.Header.Values(name); len(got) != 1 || got[0] != want {
			t.Errorf("header %s is %q, want just %q", name, got, want)
		}
	}
	permissions := response.Header.Get("Permissions-Policy")
	for _, want := range []string{"geolocation=(self)", "accelerometer=(self)", "gyroscope=(self)", "camera=(self)", "microphone=(self)", "screen-wake-lock=(self)", "usb=()"} {
		if !strings.Contains(permissions, want) {
			t.Errorf("Permissions-Policy %q lacks %s", permissions, want)
		}
	}
	if strings.Count(permissions, "(self)") != 6 {
		t.Errorf("Permissions-Policy %q allows more than the five sensors and a screen that stays on", permissions)
	}
	if response.StatusCode != http.StatusNotModified && response.StatusCode != http.StatusNoContent && response.Header.Get("Content-Type") == "" {
		t.Error("no Content-Type: browsers would guess one")
	}
	if response.StatusCode >= 400 && response.Header.Get("Cache-Control") != "no-store" {
		t.Errorf("an error may be cached: Cache-Control %q", response.Header.Get("Cache-Control"))
	}
}

// checkErrorShape wants exactly {"error":{"code","field","message"}} with a code and a message.
func checkErrorShape(t *testing.T, response *http.Response, body string) {
	t.Helper()
	if got := response.Header.Get("Content-Type"); got != "application/json" {
		t.Errorf("Content-Type %q, want application/json", got)
	}
	var shape map[string]json.RawMessage
	if err := json.Unmarshal([]byte(body), &shape); err != nil {
		t.Fatalf("not an error in JSON: %v: %q", err, body)
	}
	var first map[string]string
	if err := json.Unmarshal(shape["error"], &first); err != nil {
		t.Fatalf("not an error in JSON: %v: %q", err, body)
	}
	delete(shape, "error")
	delete(shape, "errors") // all of them, of a calculation's input
	if _, field := first["field"]; len(shape) != 0 || len(first) != 3 || !field || first["code"] == "" || first["message"] == "" {
		t.Errorf("not the one shape of errors: %s", body)
	}
}

// lockedBuffer collects a server's log from its goroutines.
type lockedBuffer struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (b *lockedBuffer) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.text.Write(p)
}

func (b *lockedBuffer) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.text.String()
}
