package web_test

import (
	"errors"
	"strings"
	"testing"

	"rimside/server/web"
)

func TestCalculations(t *testing.T) {
	const limit = 256 << 10
	fits := `"` + strings.Repeat("x", limit-2) + `"`
	play(t, []scenario{
		{name: "list", path: "/api/calc", status: 200, has: []string{`[{"name":"echo","sentence":"","fields":[],"example":{},"sources":[]}]`}, wantHeaders: map[string]string{"Content-Type": "application/json", "Cache-Control": "no-store"}},
		{name: "list HEAD", method: "HEAD", path: "/api/calc", status: 200, hasNot: []string{"echo"}},
		{name: "run", method: "POST", path: "/api/calc/echo", body: `{"n":1}`, status: 200, has: []string{`{"n":1}`}, wantHeaders: map[string]string{"Content-Type": "application/json", "Cache-Control": "no-store"}},
		{name: "run as JSON", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Content-Type": "application/json; charset=utf-8"}, body: `{"n":1}`, status: 200},
		{name: "run as a form", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Content-Type": "application/x-www-form-urlencoded"}, body: "{}", status: 415, json: true, has: []string{"application/json"}},
		{name: "run as text", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Content-Type": "text/plain"}, body: "{}", status: 415, json: true},
		{name: "run as nonsense", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Content-Type": "application/json;;;="}, body: "{}", status: 415, json: true},
		{name: "unknown", method: "POST", path: "/api/calc/nothing", body: "{}", status: 404, json: true, has: []string{`"unknown_calculation"`}},
		{name: "refused", method: "POST", path: "/api/calc/picky", body: "{}", status: 422, json: true, has: []string{`"front.tyre.label_mm"`, "Front width printed on the tyre: from 18 to 70 mm.", `"out_of_bounds"`}},
		{name: "as large as allowed", method: "POST", path: "/api/calc/echo", body: fits, status: 200, has: []string{fits}},
		{name: "one byte too large", method: "POST", path: "/api/calc/echo", body: fits + " ", status: 413, json: true, has: []string{"256 KiB"}},
		{name: "far too large", method: "POST", path: "/api/calc/echo", body: strings.Repeat(" ", 4*limit), status: 413, json: true},
		{name: "broken", method: "POST", path: "/api/calc/broken", body: "{}", status: 500, json: true, has: []string{`"internal"`}, hasNot: []string{"panic", ".go"}},
		{name: "still there", path: "/api/health", status: 200},
	})
}

func TestCalculationsOfTheRegistryAreReached(t *testing.T) {
	real := start(t, web.Options{Calculations: realCalculations})
	play(t, []scenario{
		{name: "list", server: real, path: "/api/calc", status: 200, has: []string{`"pressure"`, `"sentence"`, `"example"`}},
		{name: "empty body", server: real, method: "POST", path: "/api/calc/pressure", status: 422, json: true},
		{name: "not JSON", server: real, method: "POST", path: "/api/calc/pressure", body: "rider_kg=72", status: 422, json: true},
		{name: "trailing data", server: real, method: "POST", path: "/api/calc/air", body: "{} {}", status: 422, json: true},
		{name: "all faults at once", server: real, method: "POST", path: "/api/calc/air", body: `{"kpa":3000,"from":{"c":"x","m":0},"to":{"c":5,"M":0}}`, status: 422, json: true, has: []string{
			`{"error":{"code":"out_of_bounds","field":"kpa","message":"Pressure: from -101 to 2000 kPa."},"errors":[`,
			`{"code":"out_of_bounds","field":"kpa","message":"Pressure: from -101 to 2000 kPa.","values":{"max":2000,"min":-101,"unit":"kPa"}}`,
			`{"code":"wrong_type","field":"from.c","message":"Temperature where it was read: a number C.","values":{"type":"number","unit":"C"}}`,
			`{"code":"unknown_field","field":"to.M","message":"Names are case-sensitive: write m.","values":{"write":"m"}}`, `"field":"to.m"`}},
		{name: "unknown", server: real, method: "POST", path: "/api/calc/nothing", body: "{}", status: 404, json: true},
		{name: "answer", server: real, method: "POST", path: "/api/calc/air", body: `{"kpa":200,"from":{"c":20,"m":0},"to":{"c":5,"m":1100}}`, status: 200, has: []string{`"kpa":`, `"ambient_kpa":`}},
	})
}

func TestServerState(t *testing.T) {
	demo := start(t, web.Options{Demo: true})
	play(t, []scenario{
		{name: "health", path: "/api/health", status: 200, has: []string{`{"ok":true,"version":"abc123abc123","state":"ok","read":true,"write":true,"free_bytes":`, `"checked_at":0,"damaged_ops":0}`}, wantHeaders: map[string]string{"Content-Type": "application/json", "Cache-Control": "no-store"}},
		{name: "health HEAD", method: "HEAD", path: "/api/health", status: 200, hasNot: []string{"ok"}},
		{name: "no demo", path: "/api/demo", status: 204},
		{name: "demo", server: demo, path: "/api/demo", status: 200, has: []string{`"draft"`}, wantHeaders: map[string]string{"Content-Type": "application/json"}},
	})
}

func TestWrongMethodsAreToldTheRightOnes(t *testing.T) {
	var scenarios []scenario
	for _, path := range []string{"/", "/a/11/main.js", "/sw.js", "/recover", "/version.json", "/app.webmanifest"} {
		for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS", "TRACE", "NONSENSE"} {
			scenarios = append(scenarios, scenario{name: method + " " + path, method: method, path: path, status: 405,
				has: []string{"GET, HEAD"}, hasNot: []string{shell, script}, wantHeaders: map[string]string{"Allow": "GET, HEAD"}})
		}
	}
	for path, allow := range map[string]string{"/api/health": "GET, HEAD", "/api/calc": "GET, HEAD", "/api/demo": "GET, HEAD", "/api/calc/echo": "POST"} {
		scenarios = append(scenarios, scenario{name: "DELETE " + path, method: "DELETE", path: path, status: 405, json: true, wantHeaders: map[string]string{"Allow": allow}})
	}
	scenarios = append(scenarios,
		scenario{name: "GET a calculation", path: "/api/calc/echo", status: 405, json: true, wantHeaders: map[string]string{"Allow": "POST"}},
		scenario{name: "HEAD a calculation", method: "HEAD", path: "/api/calc/echo", status: 405, wantHeaders: map[string]string{"Allow": "POST"}})
	play(t, scenarios)
}

func TestBeforeTheFirstBuild(t *testing.T) {
	unbuilt := start(t, web.Options{Dist: unbuiltApp})
	scenarios := []scenario{
		{name: "page", server: unbuilt, path: "/", status: 503, has: []string{"go generate ./..."}, wantHeaders: map[string]string{"Content-Type": "text/html; charset=utf-8"}},
		{name: "health", server: unbuilt, path: "/api/health", status: 200, has: []string{`"version":""`}},
		{name: "calculation", server: unbuilt, method: "POST", path: "/api/calc/echo", body: "{}", status: 200},
		{name: "asset", server: unbuilt, path: "/a/11/main.js", status: 404},
		{name: "keep file", server: unbuilt, path: "/.keep", status: 404},
	}
	for _, path := range []string{"/sw.js", "/version.json", "/app.webmanifest", "/recover"} {
		scenarios = append(scenarios, scenario{name: path, server: unbuilt, path: path, status: 503, has: []string{"go generate ./..."}, hasNot: []string{"doctype"}})
	}
	play(t, scenarios)
}

func TestAPanicIsLoggedWithItsStackAndNotShown(t *testing.T) {
	server := start(t, web.Options{})
	s := scenario{server: server, method: "POST", path: "/api/calc/broken", body: "{}"}
	if _, body := exchange(t, server.addr, s.request()); strings.Contains(body, "secret cause") {
		t.Errorf("the cause is shown: %s", body)
	}
	if log := server.logs.String(); !strings.Contains(log, "secret cause") || !strings.Contains(log, "goroutine") {
		t.Errorf("the log lacks the cause or the stack: %s", log)
	}
}

func TestAnErrorThatIsNotMeantForPeopleStaysInside(t *testing.T) {
	calc := calculations
	calc.Call = func(string, []byte) ([]byte, error) { return nil, errors.New("secret path /var/x") }
	server := start(t, web.Options{Calculations: calc})
	play(t, []scenario{{name: "unforeseen", server: server, method: "POST", path: "/api/calc/x", body: "{}", status: 500, json: true, hasNot: []string{"/var/x"}}})
}

func TestABuildWithAFileOfUnknownKindIsRefused(t *testing.T) {
	odd := builtApp()
	odd["a/55/film.xyz"] = odd["index.html"]
	if _, err := web.New(t.Context(), web.Options{Dist: odd}); err == nil || !strings.Contains(err.Error(), "film.xyz") {
		t.Errorf("error %v, want one that names the file", err)
	}
}
