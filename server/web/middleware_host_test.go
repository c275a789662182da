package web_test

import (
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"rimside/server/web"
)

func TestForeignHostsAreTurnedAwayWhateverTheyAsk(t *testing.T) {
	var scenarios []scenario
	for _, method := range []string{"GET", "POST", "HEAD", "OPTIONS", "PUT", "PROPFIND"} {
		s := scenario{name: method + " page", method: method, path: "/", host: "evil.example", status: 421,
			has: []string{"does not answer to that name"}, hasNot: []string{"doctype", "{"}}
		if method == "HEAD" {
			s.has = nil
		}
		scenarios = append(scenarios, s)
		s.name, s.path, s.json = method+" api", "/api/calc/echo", method != "HEAD"
		s.hasNot = []string{"doctype"}
		scenarios = append(scenarios, s)
	}
	for _, host := range []string{
		"127.0.0.1.evil.example", "localhost.evil.example", "localhost.", "-", "localhost:", "localhost:70000", "127.0.0.1:80:80", "[::1", "::1", "[::ffff:127.0.0.1]", "10.1.2.3", "0.0.0.0",
		"2130706433", "rimside.local",
	} {
		scenarios = append(scenarios, scenario{name: "host " + host, path: "/api/health", host: host, status: 421, json: true, hasNot: []string{"abc123"}})
	}
	for _, path := range []string{"/sw.js", "/a/11/main.js", "/api", "/nothing", "/api/demo", "/version.json"} {
		scenarios = append(scenarios, scenario{name: "path " + path, path: path, host: "evil.example", status: 421, hasNot: []string{script, worker}})
	}
	play(t, scenarios)
}

func TestOwnNamesAreAnswered(t *testing.T) {
	var scenarios []scenario
	for _, host := range []string{"localhost", "LOCALHOST", "localhost:7467", "127.0.0.1", "127.8.8.8:1", "[::1]", "[::1]:7467"} {
		scenarios = append(scenarios, scenario{name: host, path: "/", host: host, status: 200, has: []string{shell}})
	}
	play(t, scenarios)
}

func TestWhoListensOnEveryNetworkAnswersToItsOwnAddresses(t *testing.T) {
	open := start(t, web.Options{Listen: &net.TCPAddr{IP: net.IPv4zero, Port: 7467}})
	scenarios := []scenario{
		{name: "foreign", server: open, path: "/", host: "evil.example", status: 421},
		{name: "loopback", server: open, path: "/", host: "localhost:7467", status: 200},
	}
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	for _, address := range addresses {
		ip := address.(*net.IPNet).IP
		if ip.To4() != nil && !ip.IsLoopback() {
			scenarios = append(scenarios,
				scenario{name: "own address", server: open, path: "/", host: net.JoinHostPort(ip.String(), "7467"), status: 200},
				scenario{name: "own address on a loopback listener", path: "/", host: ip.String(), status: 421})
		}
	}
	play(t, scenarios)
}

// These never reach a handler of the usual kind: one has no Host at all, one asks about the whole server.
func TestOddRequestLines(t *testing.T) {
	server := start(t, web.Options{})
	response, _ := exchange(t, server.addr, "GET / HTTP/1.0\r\n\r\n")
	if response.StatusCode != http.StatusMisdirectedRequest {
		t.Errorf("without a Host: status %d, want 421", response.StatusCode)
	}
	checkProtection(t, response)
	for host, want := range map[string]int{"evil.example": 421, "localhost": 404} {
		response, _ = exchange(t, server.addr, "OPTIONS * HTTP/1.1\r\nHost: "+host+"\r\nConnection: close\r\n\r\n")
		if response.StatusCode != want {
			t.Errorf("OPTIONS * of %s: status %d, want %d", host, response.StatusCode, want)
		}
		checkProtection(t, response)
	}
	response, body := exchange(t, server.addr, "GET http://evil.example/ HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
	if response.StatusCode != 421 {
		t.Errorf("a whole address of a foreign host: status %d, body %q, want 421", response.StatusCode, body)
	}
	response, _ = exchange(t, server.addr, "CONNECT localhost:80 HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
	if response.StatusCode < 400 {
		t.Errorf("CONNECT: status %d, want a refusal", response.StatusCode)
	}
	checkProtection(t, response)
}

// Hosts with a user's name in them are turned away by net/http itself, and by us should it ever let them through.
func TestHostsWithAUserAreRefusedTwice(t *testing.T) {
	server := start(t, web.Options{})
	handler, err := web.New(t.Context(), web.Options{Book: onlyBook(t), Dist: builtApp(), Listen: &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1)}, Log: slog.New(slog.DiscardHandler)})
	if err != nil {
		t.Fatal(err)
	}
	for _, host := range []string{"user@localhost", "user:pass@127.0.0.1:7467", "localhost@evil.example"} {
		response, body := exchange(t, server.addr, scenario{path: "/", host: host, server: server}.request())
		if response.StatusCode != http.StatusBadRequest || strings.Contains(body, "doctype") {
			t.Errorf("%s over the wire: status %d, body %q, want 400", host, response.StatusCode, body)
		}
		request := httptest.NewRequest(http.MethodGet, "/", nil)
		request.Host = host
		recorder := httptest.NewRecorder()
		handler.ServeHTTP(recorder, request)
		if recorder.Code != http.StatusMisdirectedRequest {
			t.Errorf("%s at the handler: status %d, want 421", host, recorder.Code)
		}
	}
}

func TestPagesOfOtherSitesCannotSend(t *testing.T) {
	play(t, []scenario{
		{name: "cross-site", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Sec-Fetch-Site": "cross-site"}, body: "{}", status: 403, json: true},
		{name: "same site, other port", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Sec-Fetch-Site": "same-site"}, body: "{}", status: 403, json: true},
		{name: "foreign origin", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Origin": "https://evil.example"}, body: "{}", status: 403, json: true},
		{name: "null origin", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Origin": "null"}, body: "{}", status: 403, json: true},
		{name: "cross-site to a page", method: "POST", path: "/", headers: map[string]string{"Sec-Fetch-Site": "cross-site"}, status: 403, has: []string{"Another site"}, hasNot: []string{"{"}},
		{name: "own page", method: "POST", path: "/api/calc/echo", headers: map[string]string{"Sec-Fetch-Site": "same-origin"}, body: `{"n":1}`, status: 200, has: []string{`{"n":1}`}},
		{name: "a program", method: "POST", path: "/api/calc/echo", body: `{"n":1}`, status: 200},
		{name: "a link from elsewhere", path: "/", headers: map[string]string{"Sec-Fetch-Site": "cross-site"}, status: 200, has: []string{shell}},
	})
}
