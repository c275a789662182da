package web_test

import (
	"net"
	"testing"

	"rimside/server/access"
	"rimside/server/web"
)

func TestOtherNamesOfTheServerLeadToTheOneItLivesAt(t *testing.T) {
	server := start(t, web.Options{Listen: &net.TCPAddr{IP: net.IPv4zero, Port: 7467},
		Access: web.Access{Secure: true, Host: "car.local", Origin: "https://car.local:7467"}})
	there := map[string]string{"Location": "https://car.local:7467/", "Cache-Control": "no-store"}
	stay := map[string]string{"Location": ""}
	scenarios := []scenario{
		{name: "its own", path: "/", host: "car.local:7467", status: 200, has: []string{shell}, wantHeaders: stay},
		{name: "its own, in capitals", path: "/", host: "CAR.local:7467", status: 200, wantHeaders: stay},
		{name: "its own, other port", path: "/", host: "car.local", status: 302, wantHeaders: there},
		{name: "its own, other port, HEAD", method: "HEAD", path: "/", host: "car.local", status: 302, wantHeaders: there},
		{name: "with a query", path: "/?to=//evil.example", host: "car.local", status: 302, wantHeaders: there},
		{name: "this machine", path: "/", host: "localhost:7467", status: 200, wantHeaders: stay},
		{name: "a page below", path: "/recover", host: "car.local", status: 200, wantHeaders: stay},
		{name: "its worker", path: "/sw.js", host: "car.local", status: 200, wantHeaders: stay},
		{name: "sending", method: "POST", path: "/", host: "car.local", status: 405, wantHeaders: stay},
		{name: "foreign", path: "/", host: "evil.example", status: 421, wantHeaders: stay},
		{name: "one that ends like it", path: "/", host: "notcar.local", status: 421},
		{name: "one below it", path: "/", host: "x.car.local:7467", status: 421},
		{name: "one that only looks like it", path: "/", host: "car.local.evil.example", status: 421, wantHeaders: stay},
	}
	for _, address := range machineAddresses(t) {
		scenarios = append(scenarios, scenario{name: "by its address " + address, path: "/", host: net.JoinHostPort(address, "7467"), status: 302, wantHeaders: there})
	}
	for i := range scenarios {
		scenarios[i].server = server
	}
	play(t, scenarios)
}

// machineAddresses are this machine's addresses that others could use.
func machineAddresses(t *testing.T) (found []string) {
	t.Helper()
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	for _, address := range addresses {
		if ip := address.(*net.IPNet).IP; ip.To4() != nil && !ip.IsLoopback() {
			found = append(found, ip.String())
		}
	}
	return found
}

func TestBehindAProxyItsWordCountsAboutTheHost(t *testing.T) {
	server := start(t, web.Options{Access: web.Access{Policy: access.Policy{Login: true, BehindProxy: true}, Secure: true, Host: "wheels.example", Origin: "https://wheels.example"}})
	try := func(name, host, forwarded string, status int) scenario {
		s := scenario{name: name, server: server, path: "/api/health", host: host, status: status, headers: map[string]string{}}
		if forwarded != "" {
			s.headers["X-Forwarded-Host"] = forwarded
		}
		return s
	}
	play(t, []scenario{
		try("passed on", "wheels.example", "", 200),
		try("said", "127.0.0.1:7467", "wheels.example", 200),
		try("said, after what was invented", "127.0.0.1:7467", "evil.example, wheels.example", 200),
		try("invented only", "wheels.example", "evil.example", 421),
		try("invented last", "wheels.example", "wheels.example, evil.example", 421),
		try("nothing said", "evil.example", "", 421),
		{name: "own page", server: server, method: "POST", path: "/api/calc/echo", host: "127.0.0.1:7467", headers: map[string]string{"X-Forwarded-Host": "wheels.example", "Origin": "https://wheels.example"}, body: "{}", status: 200},
		{name: "another site’s page", server: server, method: "POST", path: "/api/calc/echo", host: "127.0.0.1:7467", headers: map[string]string{"X-Forwarded-Host": "wheels.example", "Origin": "https://evil.example"}, body: "{}", status: 403, json: true},
	})
}

func TestWithoutAProxyNobodyIsBelievedAboutTheHost(t *testing.T) {
	play(t, []scenario{
		{name: "good said, bad sent", path: "/api/health", host: "evil.example", headers: map[string]string{"X-Forwarded-Host": "localhost"}, status: 421},
		{name: "bad said, good sent", path: "/api/health", headers: map[string]string{"X-Forwarded-Host": "evil.example"}, status: 200},
	})
}
