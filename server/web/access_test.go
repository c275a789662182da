package web_test

import (
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"rimside/server/access"
	"rimside/server/web"
)

// bookPaths are all the ways to the book and to who may read it, with a request that would succeed or at least be read.
var bookPaths = []scenario{
	{method: "GET", path: "/api/book"},
	{method: "HEAD", path: "/api/book"},
	{method: "GET", path: "/api/ops"},
	{method: "POST", path: "/api/ops", body: pushText(bookA)},
	{method: "GET", path: "/api/export"},
	{method: "POST", path: "/api/import", body: `{"rimside":1,"book":"` + bookA + `"}`},
	{method: "POST", path: "/api/pair/code"},
	{method: "GET", path: "/api/devices"},
	{method: "PATCH", path: "/api/devices/" + id(1), body: `{"label":"x"}`},
	{method: "POST", path: "/api/devices/" + id(1) + "/revoke"},
	{method: "POST", path: "/api/blobs/missing", body: `{"sha256":[]}`},
	{method: "GET", path: "/api/blobs/" + strings.Repeat("0", 64)},
	{method: "HEAD", path: "/api/blobs/" + strings.Repeat("0", 64)},
	{method: "PUT", path: "/api/blobs/" + strings.Repeat("0", 64), body: "x"},
	{method: "DELETE", path: "/api/book"},
	{method: "GET", path: "/api/"},
	{method: "GET", path: "/api/no/such/thing"},
}

// refusedEverywhere asks for the book in all ways and wants the same refusal.
func refusedEverywhere(server *running, name, code string, headers map[string]string) []scenario {
	var all []scenario
	for _, s := range bookPaths {
		s.name, s.server, s.headers, s.status = name+": "+s.method+" "+s.path, server, headers, http.StatusUnauthorized
		if s.method != "HEAD" {
			s.json, s.has = true, []string{`"` + code + `"`}
		}
		all = append(all, s)
	}
	return all
}

func TestAGuestGetsTheAppAndNotTheBook(t *testing.T) {
	server := start(t, web.Options{Access: mustPair})
	scenarios := refusedEverywhere(server, "guest", "not_paired", nil)
	for _, s := range []scenario{
		{path: "/", has: []string{shell}},
		{path: "/a/11/main.js", has: []string{script}},
		{path: "/sw.js", has: []string{worker}},
		{path: "/version.json"}, {path: "/app.webmanifest"}, {path: "/recover"},
		{path: "/api/health"}, {path: "/api/calc"},
		{method: "POST", path: "/api/calc/echo", body: "{}"},
	} {
		s.name, s.server, s.status = "guest: "+s.path, server, http.StatusOK
		scenarios = append(scenarios, s)
	}
	play(t, append(scenarios,
		scenario{name: "guest: demo", server: server, path: "/api/demo", status: http.StatusNoContent},
		scenario{name: "guest: pair", server: server, method: "POST", path: "/api/pair", body: "{}", status: 422, json: true},
	))
}

func TestAPairedPhoneGetsTheBook(t *testing.T) {
	server := startLogin(t, web.Options{})
	phone := server.pair(t, "Ana’s phone", "")
	scenarios := []scenario{}
	for _, s := range bookPaths[:8] {
		s.name, s.server, s.headers, s.status = s.method+" "+s.path, server.running, phone.headers(), http.StatusOK
		scenarios = append(scenarios, s)
	}
	play(t, scenarios)
}

func TestWhoeverIsShutOutIsToldAtTheNextRequestAndLosesTheCookie(t *testing.T) {
	server := startLogin(t, web.Options{})
	lost, other := server.pair(t, "lost", ""), server.pair(t, "other", "")
	server.push(t, other, bookA)
	scenario{server: server.running, path: "/api/book", headers: lost.headers(), status: 200}.check(t)
	scenario{server: server.running, method: "POST", path: "/api/devices/" + lost.Device + "/revoke", headers: other.headers(), status: 200, has: []string{`"revoked":true`}}.check(t)
	scenarios := refusedEverywhere(server.running, "shut out", "shut_out", lost.headers())
	for i := range scenarios {
		scenarios[i].wantHeaders = map[string]string{"Set-Cookie": lost.name() + "=; Path=/; Max-Age=0; HttpOnly; SameSite=Lax"}
	}
	scenarios = append(scenarios,
		scenario{name: "the app stays", server: server.running, path: "/", headers: lost.headers(), status: 200, has: []string{shell}},
		scenario{name: "the others stay", server: server.running, path: "/api/book", headers: other.headers(), status: 200})
	play(t, scenarios)
}

func TestCookiesThatAreNotOursLetNobodyIn(t *testing.T) {
	server, elsewhere := startLogin(t, web.Options{}), startLogin(t, web.Options{})
	ours, theirs := server.pair(t, "ours", ""), elsewhere.pair(t, "theirs", "")
	name, value, _ := strings.Cut(ours.cookie, "=")
	_, foreign, _ := strings.Cut(theirs.cookie, "=")
	bent := []byte(value)
	bent[len(bent)/2] ^= 1
	var scenarios []scenario
	for what, cookie := range map[string]string{
		"of another server":              theirs.cookie,
		"of another server, by our name": name + "=" + foreign,
		"ours by another name":           "rs=" + value,
		"bent":                           name + "=" + string(bent),
		"cut":                            name + "=" + value[:len(value)/2],
		"empty":                          name + "=",
		"nonsense":                       name + "=admin",
		"the device itself":              name + "=" + ours.Device,
		"long":                           name + "=" + strings.Repeat("A", 9000),
		"ours after a wrong one":         name + "=x; " + ours.cookie,
		"JSON":                           name + `={"device":"` + ours.Device + `"}`,
	} {
		scenarios = append(scenarios, scenario{name: what, server: server.running, path: "/api/book", headers: map[string]string{"Cookie": cookie}, status: 401, json: true, has: []string{`"not_paired"`}})
	}
	play(t, append(scenarios, scenario{name: "ours", server: server.running, path: "/api/book", headers: ours.headers(), status: 200}))
}

// Each row takes one condition away from a request that needs no pairing: then it needs it.
func TestOnlyWhoSitsAtThisMachineNeedsNoPairing(t *testing.T) {
	loopback, everywhere := &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 7467}, &net.TCPAddr{IP: net.IPv4zero, Port: 7467}
	named := web.Access{Host: "car.local", Origin: "http://car.local:7467"}
	for _, test := range []struct {
		name               string
		listen             net.Addr
		access             web.Access
		peer, host, header string
		status             int
	}{
		{name: "this machine", status: 200},
		{name: "this machine by IPv6", peer: "[::1]:5000", host: "[::1]:7467", status: 200},
		{name: "this machine, IPv4 within IPv6", peer: "[::ffff:127.0.0.1]:5000", status: 200},
		{name: "listens on every network", listen: everywhere, status: 401},
		{name: "a peer in the network", peer: "192.168.1.9:5000", status: 401},
		{name: "a peer that cannot be read", peer: "@", status: 401},
		{name: "by the name it was given", access: named, host: "car.local:7467", status: 401},
		{name: "by a loopback name, with a name given", access: named, status: 200},
		{name: "login", access: web.Access{Policy: access.Policy{Login: true}}, status: 401},
		{name: "behind a proxy", access: web.Access{Policy: access.Policy{BehindProxy: true}}, status: 401},
		{name: "behind a proxy that notes loopback", access: web.Access{Policy: access.Policy{BehindProxy: true}}, header: "X-Forwarded-For: 127.0.0.1", status: 401},
		{name: "forwarded", header: "Forwarded: for=127.0.0.1", status: 401},
		{name: "forwarded for", header: "X-Forwarded-For: 127.0.0.1", status: 401},
		{name: "forwarded, empty", header: "X-Forwarded-For: ", status: 401},
		{name: "forwarded proto", header: "x-forwarded-proto: https", status: 401},
		{name: "forwarded host", header: "X-Forwarded-Host: localhost", status: 401},
		{name: "forwarded by a kind not thought of", header: "X-Forwarded-Client-Cert: x", status: 401},
		{name: "via", header: "Via: 1.1 proxy", status: 401},
		{name: "real address", header: "X-Real-IP: 127.0.0.1", status: 401},
		{name: "rebinding", host: "evil.example:7467", status: 421},
	} {
		t.Run(test.name, func(t *testing.T) {
			options := web.Options{Listen: loopback, Access: test.access}
			if test.listen != nil {
				options.Listen = test.listen
			}
			request := httptest.NewRequest(http.MethodGet, "/api/book", nil)
			request.Host, request.RemoteAddr = "localhost:7467", "127.0.0.1:5000"
			if test.host != "" {
				request.Host = test.host
			}
			if test.peer != "" {
				request.RemoteAddr = test.peer
			}
			if name, value, given := strings.Cut(test.header, ": "); given {
				request.Header.Set(name, value)
			}
			recorder := httptest.NewRecorder()
			handlerOf(t, options).ServeHTTP(recorder, request)
			if recorder.Code != test.status {
				t.Errorf("status %d, want %d: %s", recorder.Code, test.status, recorder.Body)
			}
		})
	}
}

func TestASpellingIsNoWayRoundTheDoor(t *testing.T) {
	server := start(t, web.Options{Access: mustPair})
	server.refusesSpellings(t, []string{
		"/api/book", "//api/book", "/api//book", "/api/book/", "/API/book", "/api/../api/book", "/a/../api/book", "/./api/book", "/%61pi/book", "/api%2fbook", "/api/%62ook",
		"/%2e/api/book", "/api/calc/../book", "/api/calc/%2e%2e/book", "/api/calc/..%2fbook", "/api/pair/../book", "/api/health/../book", "/api/book?x=/api/calc/", "/api/book;x",
		"/api/book%00", "/api/book%20", "/api\\book", "/api/calc/..\\book", "http://localhost/api/book", "http://localhost//api/book", "/api/pair/code/", "/recover/../api/book", "/api/ｂook",
	})
}

// refusesSpellings wants that none of the paths leads to the book.
func (r *running) refusesSpellings(t *testing.T, paths []string) {
	t.Helper()
	for _, path := range paths {
		response, body := exchange(t, r.addr, scenario{server: r, path: path}.request())
		if response.StatusCode < 400 || strings.Contains(body, "digest") {
			t.Errorf("%q: status %d, %.200s", path, response.StatusCode, body)
		}
	}
}
