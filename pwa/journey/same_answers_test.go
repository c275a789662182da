package journey

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// The same request bytes go to the browser's WASM, by the app's own worker and protocol, and to the server; the answers
// agree within 1e-9. (The last bits may differ: the same code rounds otherwise in WASM.)
func TestWASMAndServerAnswerAlike(t *testing.T) {
	server := StartServer(t)
	browser := OpenBrowser(t)
	worker, wasm := builtFiles(t, browser, server)
	p := browser.Open(barePage(t, server))
	for _, name := range registry.Names() {
		for _, body := range []string{registry.Example(name), `{"kpa":1}`, `{"a":1,"a":2}`, ``, `{}x`, `{"rider_kg":1e400}`} {
			own := Eval[wasmAnswer](p, fmt.Sprintf(askWorker, worker, wasm, name, body))
			status, sent := post(t, server.URL()+"api/calc/"+name, body)
			if own.Status != status {
				t.Errorf("%s %s: WASM answers %d, the server %d", name, body, own.Status, status)
			}
			var here, there any
			if err := json.Unmarshal([]byte(own.Body), &here); err != nil {
				t.Fatalf("%s: %v in %q", name, err, own.Body)
			}
			if err := json.Unmarshal(sent, &there); err != nil {
				t.Fatalf("%s: %v in %q", name, err, sent)
			}
			alike(t, name, here, wordless(t, name+" "+body, there))
		}
	}
}

// wordless takes off the sentences that the server makes for programs; it makes one for every error.
func wordless(t *testing.T, about string, sent any) any {
	t.Helper()
	members, _ := sent.(map[string]any)
	errors, _ := members["errors"].([]any)
	if errors == nil {
		return sent // an answer
	}
	first, _ := members["error"].(map[string]any)
	first["values"] = errors[0].(map[string]any)["values"] // the first is told once with them and once without
	for _, each := range append(errors, first) {
		if text, _ := each.(map[string]any)["message"].(string); text == "" {
			t.Errorf("%s: the server says nothing of %v", about, each)
		}
		delete(each.(map[string]any), "message")
	}
	return sent
}

// builtFiles are the paths of the built worker and its WASM, as the installed app keeps them.
func builtFiles(t *testing.T, browser *Browser, server *Server) (worker, wasm string) {
	t.Helper()
	p := browser.Open(server.URL())
	p.installed()
	for _, path := range Eval[[]string](p, `caches.keys().then((names) => caches.open(names[0])).then((cache) => cache.keys())
		.then((kept) => kept.map((each) => new URL(each.url).pathname))`) {
		switch {
		case strings.HasSuffix(path, "/calc-worker.js"):
			worker = path
		case strings.HasSuffix(path, "/calc.wasm"):
			wasm = path
		}
	}
	return worker, wasm
}

// barePage serves an empty page with the real server's built files beside it: the app's own page lets nobody else start
// its worker.
func barePage(t *testing.T, server *Server) string {
	t.Helper()
	target, err := url.Parse(server.URL())
	if err != nil {
		t.Fatal(err)
	}
	files := &httputil.ReverseProxy{Rewrite: func(r *httputil.ProxyRequest) { r.SetURL(target) }}
	page := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, "/a/") {
			files.ServeHTTP(w, r)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprint(w, `<!doctype html><html lang="en"><head><link rel="icon" href="data:,"></head><body></body></html>`)
	}))
	t.Cleanup(page.Close)
	return page.URL
}

type wasmAnswer struct {
	Status int    `json:"status"`
	Body   string `json:"body"`
}

// askWorker starts the app's calculator worker anew and asks it one question.
const askWorker = `(async () => {
	const worker = new Worker(%q);
	const next = () => new Promise((resolve, reject) => { worker.onmessage = (event) => resolve(event.data); worker.onerror = reject; });
	worker.postMessage({kind: "start", wasm: new URL(%q, location.href).href});
	const ready = await next();
	if (ready.kind !== "ready") return {status: 0, body: JSON.stringify(ready)};
	worker.postMessage({kind: "ask", id: 1, name: %q, body: %q});
	const answer = await next();
	worker.terminate();
	return {status: answer.status, body: answer.body};
})()`

func post(t *testing.T, url, body string) (int, []byte) {
	t.Helper()
	answer, err := http.Post(url, "application/json", bytes.NewReader([]byte(body)))
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	raw, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, raw
}

// alike compares two JSON values, numbers within 1e-9 of their size.
func alike(t *testing.T, path string, a, b any) {
	t.Helper()
	switch x := a.(type) {
	case float64:
		y, ok := b.(float64)
		if !ok || math.Abs(x-y) > 1e-9*math.Max(1, math.Abs(y)) {
			t.Errorf("%s: %v in WASM, %v on the server", path, a, b)
		}
	case map[string]any:
		y, ok := b.(map[string]any)
		if !ok || len(x) != len(y) {
			t.Errorf("%s: %v in WASM, %v on the server", path, a, b)
			return
		}
		for name, value := range x {
			alike(t, path+"."+name, value, y[name])
		}
	case []any:
		y, ok := b.([]any)
		if !ok || len(x) != len(y) {
			t.Errorf("%s: lengths differ", path)
			return
		}
		for i, value := range x {
			alike(t, fmt.Sprintf("%s.%d", path, i), value, y[i])
		}
	default:
		if a != b {
			t.Errorf("%s: %v in WASM, %v on the server", path, a, b)
		}
	}
}
