package journey

import (
	"encoding/pem"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// carName is the name that the server of these tests has. Browsers are told that it is this computer.
const carName = "car.example"

// lanServer is the real binary in a network, as phones meet it: over https by its own authority.
type lanServer struct {
	*Server
	origin, trust string // where the app is, and where phones learn to trust it
}

// startLan starts the binary on all of this computer's networks, under a name.
func startLan(t *testing.T, name string) *lanServer {
	t.Helper()
	port := freePair(t)
	s := &lanServer{
		Server: &Server{t: t, binary: binary(t), data: t.TempDir(), addr: fmt.Sprint("0.0.0.0:", port)},
		origin: fmt.Sprintf("https://%s:%d", name, port), trust: fmt.Sprintf("http://127.0.0.1:%d/", port+2),
	}
	s.said = new(output)
	command := exec.Command(s.binary, "serve", "-lan", "-name", name, "-addr", s.addr, "-data", s.data)
	command.Stdout, command.Stderr = s.said, s.said
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	s.process, s.ended = command.Process, make(chan struct{})
	go func() {
		_ = command.Wait()
		close(s.ended)
	}()
	t.Cleanup(s.Stop)
	for deadline := time.Now().Add(patience); !strings.Contains(s.said.String(), "Pairing code"); time.Sleep(interval) {
		if time.Now().After(deadline) {
			t.Fatalf("the server did not start; it said: %s", s.said)
		}
	}
	return s
}

// freePair finds a port that is free together with the one two above it, where phones learn to trust the server.
func freePair(t *testing.T) int {
	t.Helper()
	for range 50 {
		var port int
		if _, err := fmt.Sscanf(freeAddress(t), "127.0.0.1:%d", &port); err != nil {
			t.Fatal(err)
		}
		if listener, err := net.Listen("tcp", fmt.Sprint(":", port+2)); err == nil {
			listener.Close()
			return port
		}
	}
	t.Fatal("no two free ports found")
	return 0
}

// homeThatTrusts makes a home folder whose browser trusts an authority, or none.
func homeThatTrusts(t *testing.T, authority []byte) (home string) {
	t.Helper()
	home = t.TempDir()
	if authority == nil {
		return home
	}
	store, file := filepath.Join(home, ".pki", "nssdb"), filepath.Join(home, "authority.pem")
	if err := os.MkdirAll(store, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: authority}), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, arguments := range [][]string{{"-N", "--empty-password"}, {"-A", "-t", "C,,", "-n", "rimside", "-i", file}} {
		if said, err := exec.Command("certutil", append([]string{"-d", "sql:" + store}, arguments...)...).CombinedOutput(); err != nil {
			t.Fatalf("certutil %v: %v: %s", arguments, err, said)
		}
	}
	return home
}

// browserIn opens a browser whose home is that folder, and which finds these names on this computer.
func browserIn(t *testing.T, home string, more ...chromedp.ExecAllocatorOption) *Browser {
	t.Helper()
	rules := fmt.Sprintf("MAP %s 127.0.0.1, MAP %s 127.0.0.1", carName, hostDotLocal(t))
	return OpenBrowser(t, append(more, chromedp.Env("HOME="+home, "XDG_DATA_HOME="), chromedp.Flag("host-resolver-rules", rules))...)
}

func hostDotLocal(t *testing.T) string {
	t.Helper()
	name, err := os.Hostname()
	if err != nil {
		t.Fatal(err)
	}
	short, _, _ := strings.Cut(strings.ToLower(name), ".")
	return short + ".local"
}

func needsCertutil(t *testing.T) {
	t.Helper()
	if runtime.GOOS != "linux" {
		t.Skip("only on Linux is it known where this browser keeps the authorities that it trusts")
	}
	if _, err := exec.LookPath("certutil"); err != nil {
		missing(t, "certutil is not installed (Debian: libnss3-tools): no browser can be told to trust the server's authority")
	}
}

func (s *lanServer) authority() []byte {
	s.t.Helper()
	answer, err := http.Get(s.trust + "rimside-authority.crt")
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	der, err := io.ReadAll(answer.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	return der
}

func TestAPhoneThatTrustsTheServerInstallsPairsAndGoesOnWithoutIt(t *testing.T) {
	needsCertutil(t)
	server, in := startLan(t, carName), words(t)
	browser := browserIn(t, homeThatTrusts(t, server.authority()))
	p := browser.Open(server.origin + "/#/settings/phones")
	p.Allow("status of 401")
	if !Eval[bool](p, "isSecureContext") {
		t.Error("the browser does not take the connection for a safe one")
	}
	p.installed()
	p.See(strings.ReplaceAll(in["trust.by.https"], "{host}", strings.TrimPrefix(server.origin, "https://")))
	p.pairAs(server.pairingCode(), "Ana’s phone")
	p.lists("Ana’s phone: this phone")
	if cookie := p.cookie(); cookie == nil || !cookie.Secure || !cookie.HTTPOnly || cookie.Domain != carName {
		t.Errorf("the cookie is %+v", cookie)
	}
	p.Allow(offline)
	server.Stop()
	browser.Restart()
	p = browser.Open(server.origin + "/")
	p.Allow(offline)
	p.at("pressure")
}

// Where no name is found, an address takes its place.
func TestAServerThatIsCalledByItsAddressIsTrusted(t *testing.T) {
	needsCertutil(t)
	server := startLan(t, "127.0.0.1")
	p := browserIn(t, homeThatTrusts(t, server.authority())).Open(server.origin + "/")
	p.Allow("status of 401")
	p.at("pressure")
	if origin := Eval[string](p, "location.origin"); origin != server.origin {
		t.Errorf("the app is at %s, want %s", origin, server.origin)
	}
}

func TestAPhoneThatDoesNotTrustTheServerIsStopped(t *testing.T) {
	needsCertutil(t)
	server := startLan(t, carName)
	p := browserIn(t, homeThatTrusts(t, nil)).Open("about:blank")
	p.Allow("ERR_CERT_AUTHORITY_INVALID")
	err := chromedp.Do(p.ctx, chromedp.Navigate(server.origin+"/"))
	if err == nil || !strings.Contains(err.Error(), "ERR_CERT_AUTHORITY_INVALID") {
		t.Errorf("it was opened: %v", err)
	}
}

// The browser is told not to mind the certificate: this computer's addresses may be public ones, which it does not hold.
func TestTheServersOtherNamesLeadToTheOneOrigin(t *testing.T) {
	server := startLan(t, carName)
	browser := browserIn(t, t.TempDir(), chromedp.Flag("ignore-certificate-errors", true))
	_, port, _ := strings.Cut(server.addr, ":")
	others := []string{hostDotLocal(t)}
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		t.Fatal(err)
	}
	for _, each := range addresses {
		if ip := each.(*net.IPNet).IP; ip.To4() != nil && !ip.IsLoopback() {
			others = append(others, ip.String())
		}
	}
	for _, name := range others {
		p := browser.Open("https://" + net.JoinHostPort(name, port) + "/")
		p.Allow("status of 401", "SSL certificate error")
		p.at("pressure")
		if origin := Eval[string](p, "location.origin"); origin != server.origin {
			t.Errorf("by %s the app is at %s, want %s", name, origin, server.origin)
		}
		p.Close()
	}
}

func TestThePageOnWhichPhonesLearnToTrust(t *testing.T) {
	server := startLan(t, carName)
	p := browserIn(t, t.TempDir()).Open(server.trust)
	_, line, _ := strings.Cut(server.said.String(), "The fingerprint they must see there: ")
	fingerprint, _, _ := strings.Cut(line, "\n")
	p.Eventually("the fingerprint that the server says", func() bool {
		return strings.Contains(strings.ReplaceAll(p.Text(), " ", ":"), fingerprint)
	})
	p.See(server.origin)
	p.EachLook(func(size Size, _ string) {
		p.Axe()
		p.wide("the trust page at " + size.Name)
		if drawn := Eval[bool](p, "document.querySelector('.qr').naturalWidth > 0"); !drawn {
			t.Error("the code to scan is not drawn")
		}
	})
	p.Shot("trust-page")
}
