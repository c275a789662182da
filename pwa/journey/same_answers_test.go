package journey

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"net/http"
	"testing"

	"rimside/calc/registry"
)

// The same request bytes go to the browser's WASM, by the app's own worker and protocol, and to the server; the answers
// agree within 1e-9. (The last bits may differ: the same code rounds otherwise in WASM.)
func TestWASMAndServerAnswerAlike(t *testing.T) {
	p, server := Visit(t)
	p.installed()
	for _, name := range registry.Names() {
		for _, body := range []string{registry.Example(name), `{"kpa":1}`, `{"a":1,"a":2}`, ``, `{}x`, `{"rider_kg":1e400}`} {
			own := Eval[wasmAnswer](p, fmt.Sprintf(askWorker, name, body))
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
			alike(t, name, here, there)
		}
	}
}

type wasmAnswer struct {
	Status int    `json:"status"`
	Body   string `json:"body"`
}

// askWorker starts the app's calculator worker anew and asks it one question.
const askWorker = `(async () => {
	const files = await caches.keys().then((names) => caches.open(names[0])).then((cache) => cache.keys());
	const url = (end) => files.map((each) => each.url).find((each) => each.endsWith(end));
	const worker = new Worker(trustedWorker(url("calc-worker.js")));
	function trustedWorker(address) { return globalThis.testPolicy?.createScriptURL(address) ?? address; }
	const next = () => new Promise((resolve, reject) => { worker.onmessage = (event) => resolve(event.data); worker.onerror = reject; });
	worker.postMessage({kind: "start", wasm: url("calc.wasm")});
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
