package cli

import (
	"net"
	"path/filepath"
	"strings"
	"testing"
)

func TestDataFolderOfEachSystem(t *testing.T) {
	home := t.TempDir() // an absolute path of this system
	for _, test := range []struct {
		system string
		env    map[string]string
		want   string
	}{
		{"linux", map[string]string{"HOME": home}, filepath.Join(home, ".local", "share", "rimside")},
		{"linux", map[string]string{"HOME": "/h", "XDG_DATA_HOME": home}, filepath.Join(home, "rimside")},
		{"linux", map[string]string{"HOME": home, "XDG_DATA_HOME": "not/absolute"}, filepath.Join(home, ".local", "share", "rimside")},
		{"linux", nil, ""},
		{"darwin", map[string]string{"HOME": home}, filepath.Join(home, "Library", "Application Support", "Rimside")},
		{"windows", map[string]string{"LocalAppData": home}, filepath.Join(home, "Rimside")},
		{"windows", map[string]string{"HOME": home}, ""},
	} {
		got, err := dataDirOn(test.system, func(name string) (string, bool) { value, found := test.env[name]; return value, found })
		if got != test.want || (err != nil) != (test.want == "") {
			t.Errorf("%s with %v: %q, %v, want %q", test.system, test.env, got, err, test.want)
		}
		if err != nil && !strings.Contains(err.Error(), "-data") {
			t.Errorf("the error does not say what to do: %v", err)
		}
	}
}

func TestAddressToOpen(t *testing.T) {
	for want, at := range map[string]*net.TCPAddr{
		"http://127.0.0.1:7467": {IP: net.IPv4(127, 0, 0, 1), Port: 7467},
		"http://[::1]:7467":     {IP: net.IPv6loopback, Port: 7467},
		"http://192.0.2.7:80":   {IP: net.IPv4(192, 0, 2, 7), Port: 80},
	} {
		if got := openAt(at, false); got != want {
			t.Errorf("%v: %s, want %s", at, got, want)
		}
	}
	if got := openAt(&net.TCPAddr{IP: net.IPv6unspecified, Port: 7467}, false); strings.Contains(got, "[::]") || !strings.HasSuffix(got, ":7467") {
		t.Errorf("on every network: %s, which no browser can open", got)
	}
}
