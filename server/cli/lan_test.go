package cli_test

import (
	"crypto/sha256"
	"crypto/x509"
	"encoding/pem"
	"fmt"
	"io/fs"
	"net"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func lan(t *testing.T, data string, port int, more ...string) *reached {
	t.Helper()
	args := append([]string{"serve", "-lan", "-name", carName, "-addr", fmt.Sprint("127.0.0.1:", port), "-data", data}, more...)
	return reach(t, program(t, nil, args...), "https", port)
}

func TestLanSpeaksHTTPSByItsOwnAuthority(t *testing.T) {
	server := lan(t, t.TempDir(), freePort(t))
	if got := server.hears(t, "Rimside is at "); got != server.origin {
		t.Errorf("it is said to be at %s, want %s", got, server.origin)
	}
	if got, want := server.hears(t, "Phones learn to trust it at "), fmt.Sprintf("http://%s:%d/", carName, server.port+2); got != want {
		t.Errorf("phones are sent to %s, want %s", got, want)
	}
	der := server.authority(t)
	sum := fmt.Sprintf("% X", sha256.Sum256(der))
	if got := server.hears(t, "The fingerprint they must see there: "); got != strings.ReplaceAll(sum, " ", ":") {
		t.Errorf("the fingerprint is %s, of what is handed out it is %s", got, sum)
	}
	if _, err := server.client.Get(server.origin + "/api/health"); err == nil || !strings.Contains(err.Error(), "unknown authority") {
		t.Errorf("whoever does not trust it yet: %v", err)
	}
	server.trusts(t, der)
	if response, _ := server.ask(t, "GET", "/api/health", ""); response.StatusCode != 200 || response.TLS == nil || response.TLS.PeerCertificates[0].IsCA {
		t.Errorf("health: status %d", response.StatusCode)
	}
	if got := server.status(t, ""); got != 401 {
		t.Errorf("nobody paired: status %d, want 401", got)
	}
	cookie, whole := server.pair(t, codeIn(t, server.hears(t, "Pairing code: ")))
	if got := server.status(t, cookie); got != 200 || !whole.Secure || !whole.HttpOnly {
		t.Errorf("paired: status %d, cookie %+v", got, whole)
	}
}

func TestOtherNamesAreLedToTheOne(t *testing.T) {
	port := freePort(t)
	server := reach(t, program(t, nil, "-lan", "-name", carName, "-addr", fmt.Sprint("0.0.0.0:", port), "-data", t.TempDir()), "https", port)
	server.trusts(t, server.authority(t))
	others := []string{carName, fmt.Sprint(carName, ":80")}
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	for _, address := range addresses {
		if ip := address.(*net.IPNet).IP; ip.To4() != nil && !ip.IsLoopback() {
			others = append(others, fmt.Sprint(ip, ":", port))
		}
	}
	for _, name := range others {
		if response, _ := server.ask(t, "GET", "/", "", "Host", name); response.StatusCode != 302 || response.Header.Get("Location") != server.origin+"/" {
			t.Errorf("%s: status %d, to %q", name, response.StatusCode, response.Header.Get("Location"))
		}
	}
	if response, _ := server.ask(t, "GET", "/", "", "Host", "evil.example"); response.StatusCode != 421 {
		t.Errorf("a foreign name: status %d", response.StatusCode)
	}
	if response, _ := server.ask(t, "GET", "/api/book", "", "Host", fmt.Sprint("127.0.0.1:", port)); response.StatusCode != 401 {
		t.Errorf("from this machine, unpaired: status %d, want 401", response.StatusCode)
	}
}

func TestWithoutANameOthersAreLedToTheMachinesOwn(t *testing.T) {
	host, err := os.Hostname()
	if err != nil {
		t.Fatal(err)
	}
	short, _, _ := strings.Cut(strings.ToLower(host), ".")
	port := freePort(t)
	server := reach(t, program(t, nil, "-addr", fmt.Sprint("0.0.0.0:", port), "-data", t.TempDir()), "http", port)
	if got, want := server.hears(t, "Rimside is at "), fmt.Sprintf("http://%s.local:%d", short, port); got != want {
		t.Errorf("it is at %s, want %s", got, want)
	}
	server.hears(t, "Pairing code: ")
	server.hears(t, "without https")
}

// A certificate of its own also counts on this machine alone.
func TestACertificateFromFiles(t *testing.T) {
	lender := httptest.NewTLSServer(nil)
	defer lender.Close()
	lent := lender.TLS.Certificates[0]
	key, err := x509.MarshalPKCS8PrivateKey(lent.PrivateKey)
	if err != nil {
		t.Fatal(err)
	}
	dir, port := t.TempDir(), freePort(t)
	for name, block := range map[string]*pem.Block{"cert.pem": {Type: "CERTIFICATE", Bytes: lent.Certificate[0]}, "key.pem": {Type: "PRIVATE KEY", Bytes: key}} {
		if err := os.WriteFile(filepath.Join(dir, name), pem.EncodeToMemory(block), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	server := reach(t, program(t, nil, "-cert", filepath.Join(dir, "cert.pem"), "-key", filepath.Join(dir, "key.pem"), "-addr", fmt.Sprint("127.0.0.1:", port), "-data", t.TempDir()), "https", port)
	server.trusts(t, lent.Certificate[0])
	server.origin = fmt.Sprint("https://127.0.0.1:", port)
	if response, body := server.ask(t, "GET", "/api/book", ""); response.StatusCode != 200 || response.TLS == nil {
		t.Errorf("status %d, %s", response.StatusCode, body)
	}
	if got := server.hears(t, "Rimside is at "); got != server.origin {
		t.Errorf("it is said to be at %s", got)
	}
}

// private wants that nobody but their owner reads the files below a folder.
func private(t *testing.T, root string) {
	t.Helper()
	if runtime.GOOS == "windows" {
		return // these permissions do not exist there
	}
	files := 0
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		facts, err := entry.Info()
		if err == nil && !entry.IsDir() {
			files++
			if facts.Mode().Perm()&0o077 != 0 {
				t.Errorf("%s may be read by others: %s", name, facts.Mode())
			}
		}
		return err
	})
	if err != nil || files == 0 {
		t.Errorf("%d files, %v", files, err)
	}
}
