package access

import (
	"net"
	"slices"
	"testing"
	"time"
)

func TestLoopbackListenerAllowsOnlyLoopbackNames(t *testing.T) {
	hosts := ForListener(&net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 7467}, "")
	for _, allowed := range []string{
		"localhost", "localhost:7467", "LOCALHOST", "LocalHost:1", "127.0.0.1", "127.0.0.1:7467", "127.9.8.7:80",
		"[::1]", "[::1]:7467", "[0:0:0:0:0:0:0:1]:7467", "localhost:0", "localhost:65535",
	} {
		if !hosts.Allows(allowed) {
			t.Errorf("%q is refused", allowed)
		}
	}
	refused := []string{
		"", " ", ":", ":7467", "rimside.example", "127.0.0.1.evil.example", "localhost.evil.example", "localhost.",
		"evil.example:7467", "user@localhost", "user:pass@localhost", "localhost:", "localhost:x", "localhost:65536",
		"localhost:-1", "localhost:+1", "localhost:7467:7467", "::1", "[::1", "[::1]x", "[::1]:", "[::1]:x", "[127.0.0.1]",
		"[::ffff:127.0.0.1]", "[fe80::1%25lo]", "[::2]", "128.0.0.1", "127.0.0.01", "127.1", "0x7f000001", "2130706433",
		"0.0.0.0", "localhost/", "localhost\\", "localhost#", "localhost\x00", "lоcalhost", "10.0.0.1",
	}
	for _, name := range refused {
		if hosts.Allows(name) {
			t.Errorf("%q is allowed", name)
		}
	}
	for _, name := range MachineNames() {
		if !isLoopback(name) && hosts.Allows(name) {
			t.Errorf("%q, a name for other machines to use, is allowed", name)
		}
	}
}

func TestListenerThatOthersReachAllowsThisMachinesNames(t *testing.T) {
	now, asked := time.Unix(0, 0), 0
	names := []string{"van", "van.local", "192.0.2.7", "2001:db8::7"}
	hosts := ForListener(&net.TCPAddr{IP: net.IPv6unspecified, Port: 7467}, "")
	hosts.now = func() time.Time { return now }
	hosts.names = func() []string { asked++; return names }
	for host, want := range map[string]bool{
		"localhost:7467": true, "127.0.0.1": true, "[::1]:7467": true,
		"van": true, "VAN.local:7467": true, "192.0.2.7:7467": true, "[2001:db8::7]": true, "[2001:DB8:0::7]:1": true,
		"van.evil.example": false, "192.0.2.8": false, "[2001:db8::8]": false, "": false,
	} {
		if got := hosts.Allows(host); got != want {
			t.Errorf("%q: allowed %v, want %v", host, got, want)
		}
	}
	if asked != 1 {
		t.Errorf("the machine was asked for its names %d times within a minute, want once", asked)
	}
	names = append(names, "192.0.2.8")
	now = now.Add(59 * time.Second)
	if hosts.Allows("192.0.2.8") {
		t.Error("names were read again within a minute")
	}
	now = now.Add(time.Second)
	if !hosts.Allows("192.0.2.8") || asked != 2 {
		t.Errorf("after a minute the new address is still refused (asked %d times)", asked)
	}
}

func TestMachineNamesHoldItsAddresses(t *testing.T) {
	if names := MachineNames(); !slices.ContainsFunc(names, isLoopback) {
		t.Errorf("no loopback address among %v", names)
	}
}

func TestAnUnknownKindOfListenerIsTreatedAsLoopback(t *testing.T) {
	hosts := ForListener(&net.UnixAddr{Name: "x", Net: "unix"}, "")
	hosts.names = func() []string { return []string{"van"} }
	if hosts.Allows("van") || !hosts.Allows("localhost") {
		t.Error("want the loopback names only")
	}
}
