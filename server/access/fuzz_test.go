package access

import (
	"net"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"strings"
	"testing"
)

// FuzzHostname wants that whatever is allowed is a loopback name in its one spelling, and never a panic.
func FuzzHostname(f *testing.F) {
	for _, host := range []string{"localhost", "127.0.0.1:7467", "[::1]:1", "[", "[::1", "localhost:", "a@b", "LOCALHOST.", "[::ffff:127.0.0.1]", "\x00", "127.1"} {
		f.Add(host)
	}
	hosts := ForListener(&net.TCPAddr{IP: net.IPv4(127, 0, 0, 1)}, "car.local")
	f.Fuzz(func(t *testing.T, host string) {
		name, fine := hostname(host)
		if fine && (name == "" || strings.ContainsAny(name, "/@%\\ \x00[]") || name != strings.ToLower(name)) {
			t.Errorf("%q is read as %q", host, name)
		}
		if !hosts.Allows(host) {
			return
		}
		address, err := netip.ParseAddr(name)
		if name != "localhost" && name != "car.local" && (err != nil || !address.IsLoopback()) {
			t.Errorf("%q is allowed as %q", host, name)
		}
	})
}

// FuzzCookie wants that no Cookie header lets anybody in but the one that was handed out.
func FuzzCookie(f *testing.F) {
	door := doorOf(f, newFake(), "s", Policy{Login: true})
	good := cookieOf(f, door, "phone")
	_, value, _ := strings.Cut(good, "=")
	for _, header := range []string{good, "", "rs-s=", "rs-s=x", "rs-s=" + value[:len(value)-1], "rs-x=" + value, "rs-s=" + strings.ToUpper(value), "rs-s=\"\x00\"; rs-s=y", ";;;=;"} {
		f.Add(header)
	}
	f.Fuzz(func(t *testing.T, header string) {
		request := httptest.NewRequest(http.MethodGet, "/", nil)
		request.Header["Cookie"] = []string{header}
		entry, err := door.Enter(httptest.NewRecorder(), request)
		if err != nil {
			t.Fatal(err)
		}
		if entry.In != (entry.Device == "phone") || entry.In && !strings.Contains(header, value[:len(value)-4]) {
			t.Errorf("%q lets in: %+v", header, entry)
		}
	})
}

// FuzzForwarded wants that nothing that a proxy's headers may hold makes the peer unreadable or opens the door.
func FuzzForwarded(f *testing.F) {
	for _, noted := range []string{"127.0.0.1", "1.1.1.1, 127.0.0.1", "", ",", "::1", "localhost", "127.0.0.1:80", "\x00"} {
		f.Add(noted)
	}
	door := doorOf(f, newFake(), "s", Policy{BehindProxy: true})
	f.Fuzz(func(t *testing.T, noted string) {
		request := httptest.NewRequest(http.MethodGet, "http://localhost/", nil)
		request.RemoteAddr = "127.0.0.1:1"
		request.Header["X-Forwarded-For"] = []string{noted}
		if entry, err := door.Enter(httptest.NewRecorder(), request); err != nil || entry.In || !door.Peer(request).IsValid() {
			t.Errorf("%q: %+v %v", noted, entry, err)
		}
	})
}
