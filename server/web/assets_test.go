package web_test

import (
	"strconv"
	"testing"

	"rimside/server/web"
)

const forGood = "public, max-age=31536000, immutable"

func TestFilesOfTheApp(t *testing.T) {
	takesBoth := map[string]string{"Accept-Encoding": "gzip, deflate, br"}
	play(t, []scenario{
		{name: "shell", path: "/", status: 200, has: []string{shell}, wantHeaders: map[string]string{"Content-Type": "text/html; charset=utf-8", "Cache-Control": "no-cache", "Content-Encoding": "", "Vary": "Accept-Encoding"}},
		{name: "shell with a query", path: "/?source=home", status: 200, has: []string{shell}},
		{name: "shell HEAD", method: "HEAD", path: "/", status: 200, hasNot: []string{shell}, wantHeaders: map[string]string{"Content-Length": strconv.Itoa(len(shell)), "Content-Type": "text/html; charset=utf-8"}},
		{name: "shell br", path: "/", headers: takesBoth, status: 200, has: []string{"br shell"}, wantHeaders: map[string]string{"Content-Encoding": "br", "Content-Length": "8"}},
		{name: "worker", path: "/sw.js", status: 200, has: []string{worker}, wantHeaders: map[string]string{"Content-Type": "text/javascript; charset=utf-8", "Cache-Control": "no-cache"}},
		{name: "worker br", path: "/sw.js", headers: takesBoth, status: 200, has: []string{"br worker"}},
		{name: "worker with no gzip copy", path: "/sw.js", headers: map[string]string{"Accept-Encoding": "gzip"}, status: 200, has: []string{worker}, wantHeaders: map[string]string{"Content-Encoding": "", "Vary": "Accept-Encoding"}},
		{name: "version", path: "/version.json", status: 200, has: []string{"abc123abc123"}, wantHeaders: map[string]string{"Content-Type": "application/json", "Cache-Control": "no-cache"}},
		{name: "manifest", path: "/app.webmanifest", status: 200, wantHeaders: map[string]string{"Content-Type": "application/manifest+json", "Cache-Control": "no-cache"}},
		{name: "recovery", path: "/recover", status: 200, has: []string{"recovery page"}, wantHeaders: map[string]string{"Content-Type": "text/html; charset=utf-8", "Cache-Control": "no-cache"}},
		{name: "recovery with a slash", path: "/recover/", status: 200, has: []string{"recovery page"}},
		{name: "script", path: "/a/11/main.js", status: 200, has: []string{script}, wantHeaders: map[string]string{"Content-Type": "text/javascript; charset=utf-8", "Cache-Control": forGood, "ETag": ""}},
		{name: "style", path: "/a/33/main.css", status: 200, wantHeaders: map[string]string{"Content-Type": "text/css; charset=utf-8", "Cache-Control": forGood}},
		{name: "picture", path: "/a/44/icon.png", headers: takesBoth, status: 200, wantHeaders: map[string]string{"Content-Type": "image/png", "Cache-Control": forGood, "Content-Encoding": ""}},
		{name: "WASM", path: "/a/22/calc.wasm", status: 200, has: []string{wasm}, wantHeaders: map[string]string{"Content-Type": "application/wasm", "Cache-Control": forGood}},
		{name: "WASM without a plain form", path: "/a/77/packed.wasm", headers: takesBoth, status: 200, has: []string{shrunk("packed")}, wantHeaders: map[string]string{"Content-Encoding": "br", "Content-Type": "application/wasm"}},
		{name: "WASM unpacked", path: "/a/77/packed.wasm", status: 200, has: []string{"packed"}, wantHeaders: map[string]string{"Content-Encoding": "", "Content-Length": "6"}},
		{name: "WASM packed anew", path: "/a/77/packed.wasm", headers: map[string]string{"Accept-Encoding": "gzip"}, status: 200, hasNot: []string{"packed"}, wantHeaders: map[string]string{"Content-Encoding": "gzip", "Content-Type": "application/wasm"}},
		{name: "a packed form is no address of its own", path: "/a/77/packed.wasm.gz", status: 404},
		{name: "WASM br HEAD", method: "HEAD", path: "/a/22/calc.wasm", headers: takesBoth, status: 200, wantHeaders: map[string]string{"Content-Type": "application/wasm", "Content-Encoding": "br", "Content-Length": "7"}},
		{name: "gzip only", path: "/a/11/main.js", headers: map[string]string{"Accept-Encoding": "gzip"}, status: 200, has: []string{"gz script"}, wantHeaders: map[string]string{"Content-Encoding": "gzip"}},
		{name: "br refused", path: "/a/11/main.js", headers: map[string]string{"Accept-Encoding": "br;q=0, gzip;q=0.2"}, status: 200, has: []string{"gz script"}},
		{name: "all refused", path: "/a/11/main.js", headers: map[string]string{"Accept-Encoding": "*;q=0"}, status: 200, has: []string{script}, wantHeaders: map[string]string{"Content-Encoding": ""}},
	})
}

func TestUnknownPathsAreNeverTheShell(t *testing.T) {
	never := []string{shell, script, worker, "doctype"}
	var scenarios []scenario
	for _, path := range []string{
		"/nothing", "/index.html", "/index.html.br", "/.keep", "/sw.js.br", "/a", "/a/", "/a/11", "/a/11/", "/a/11/main.js.br", "/a/11/missing.js",
		"/a/99/main.js", "/a/../sw.js", "/a/../../sw.js", "/a/11/../../sw.js", "/a/%2e%2e/sw.js", "/a/..%2fsw.js", "/a/x/..%2f..%2fsw.js",
		"/a/..%5csw.js", "//", "//sw.js", "/./sw.js", "/sw.js/", "/recover/index.html", "/recover/x", "/%00", "/a/11/%00",
		"/apiary", "/API/health", "/favicon.ico", "/.git/config", "/etc/passwd",
	} {
		scenarios = append(scenarios, scenario{name: path, path: path, status: 404, has: []string{"nothing at this address"}, hasNot: never,
			wantHeaders: map[string]string{"Content-Type": "text/plain; charset=utf-8"}})
	}
	for _, path := range []string{"/api", "/api/", "/api/nothing", "/api/calc/", "/api/calc/a/b", "/api/../sw.js", "/api/health/"} {
		scenarios = append(scenarios, scenario{name: path, path: path, status: 404, json: true, hasNot: never})
	}
	play(t, scenarios)
}

func TestAKnownFileIsNotSentAgain(t *testing.T) {
	server := start(t, web.Options{})
	ask := func(path, encoding, tag string) (int, string) {
		s := scenario{path: path, server: server, headers: map[string]string{"Accept-Encoding": encoding, "If-None-Match": tag}}
		response, body := exchange(t, server.addr, s.request())
		checkProtection(t, response)
		if response.StatusCode == 304 && (body != "" || response.Header.Get("Vary") == "" || response.Header.Get("Cache-Control") != "no-cache") {
			t.Errorf("304 for %s: body %q, headers %v", path, body, response.Header)
		}
		return response.StatusCode, response.Header.Get("ETag")
	}
	for _, path := range []string{"/", "/sw.js", "/version.json", "/app.webmanifest", "/recover"} {
		status, tag := ask(path, "br", "")
		if status != 200 || tag == "" {
			t.Fatalf("%s: status %d, ETag %q", path, status, tag)
		}
		for _, names := range []string{tag, "W/" + tag, `"other", ` + tag, "*"} {
			if status, again := ask(path, "br", names); status != 304 || again != tag {
				t.Errorf("%s with If-None-Match %s: status %d, ETag %q, want 304 and %q", path, names, status, again, tag)
			}
		}
		if status, _ := ask(path, "br", `"other"`); status != 200 {
			t.Errorf("%s: a foreign tag brought status %d", path, status)
		}
	}
	_, compressed := ask("/", "br", "")
	if status, plain := ask("/", "identity", compressed); status != 200 || plain == compressed {
		t.Errorf("the plain shell has the tag of the compressed one (%s), or is taken for it (status %d)", plain, status)
	}
}
