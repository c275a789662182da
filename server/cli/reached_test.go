package cli_test

import (
	"bytes"
	"context"
	"crypto/tls"
	"crypto/x509"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
)

// carName is the name that the servers of these tests have; the clients find it on this machine.
const carName = "car.example"

// reached is a running server as somebody meets it over the network: what it said, and a client that finds carName.
type reached struct {
	said   *saying
	port   int
	client *http.Client
	origin string
}

// saying collects what the program says while it runs.
type saying struct {
	mutex sync.Mutex
	text  bytes.Buffer
}

func (s *saying) Write(p []byte) (int, error) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return s.text.Write(p)
}

func (s *saying) String() string {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	return s.text.String()
}

// freePort finds a port that is free together with the one two above it, below those that the system hands out by itself.
func freePort(t *testing.T) int {
	t.Helper()
	for range 100 {
		port := 15000 + rand.IntN(5000)
		first, err := net.Listen("tcp", fmt.Sprint(":", port))
		if err != nil {
			continue
		}
		second, err := net.Listen("tcp", fmt.Sprint(":", port+2))
		first.Close()
		if err == nil {
			second.Close()
			return port
		}
	}
	t.Fatal("no free port found")
	return 0
}

// reach starts the program and waits until it is ready.
func reach(t *testing.T, command *exec.Cmd, scheme string, port int) *reached {
	t.Helper()
	r := &reached{said: new(saying), port: port, origin: fmt.Sprintf("%s://%s:%d", scheme, carName, port)}
	command.Stdout, command.Stderr = r.said, r.said
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { stop(command) })
	r.hears(t, "Rimside is at ")
	r.client = &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	r.trusts(t, nil)
	return r
}

func stop(command *exec.Cmd) {
	if command.ProcessState == nil {
		_ = command.Process.Kill()
		_ = command.Wait()
	}
}

// trusts has the client trust an authority, and no other.
func (r *reached) trusts(t *testing.T, der []byte) {
	t.Helper()
	roots := x509.NewCertPool()
	if der != nil {
		authority, err := x509.ParseCertificate(der)
		if err != nil {
			t.Fatal(err)
		}
		roots.AddCert(authority)
	}
	transport := &http.Transport{TLSClientConfig: &tls.Config{RootCAs: roots}, DialContext: func(ctx context.Context, network, address string) (net.Conn, error) {
		_, port, err := net.SplitHostPort(address)
		if err != nil {
			return nil, err
		}
		return new(net.Dialer).DialContext(ctx, network, "127.0.0.1:"+port)
	}}
	t.Cleanup(transport.CloseIdleConnections)
	r.client.Transport = transport
}

// hears waits until the program has said something, and returns the rest of that line.
func (r *reached) hears(t *testing.T, what string) string {
	t.Helper()
	for range 400 {
		if _, after, found := strings.Cut(r.said.String(), what); found && strings.Contains(after, "\n") {
			line, _, _ := strings.Cut(after, "\n")
			return line
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatalf("it never said %q: %s", what, r.said)
	return ""
}

// ask sends a request to the server's own name. A Host among the headers takes the place of the name.
func (r *reached) ask(t *testing.T, method, path, body string, headers ...string) (*http.Response, string) {
	t.Helper()
	request, err := http.NewRequest(method, r.origin+path, strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	if body != "" {
		request.Header.Set("Content-Type", "application/json")
	}
	for i := 0; i < len(headers); i += 2 {
		if headers[i] == "Host" {
			request.Host = headers[i+1]
		}
		request.Header.Set(headers[i], headers[i+1])
	}
	response, err := r.client.Do(request)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	if err != nil {
		t.Fatal(err)
	}
	return response, string(text)
}

// status asks for the book with a cookie and tells how that went.
func (r *reached) status(t *testing.T, cookie string) int {
	t.Helper()
	response, _ := r.ask(t, "GET", "/api/book", "", "Cookie", cookie)
	return response.StatusCode
}

var codeForm = regexp.MustCompile(`(\d{3} \d{3}), good for one phone until \d\d:\d\d`)

// codeIn is the pairing code in what the program said.
func codeIn(t *testing.T, said string) string {
	t.Helper()
	found := codeForm.FindStringSubmatch(said)
	if found == nil {
		t.Fatalf("no code in %q", said)
	}
	return found[1]
}

// pair lets a phone in and returns its cookie.
func (r *reached) pair(t *testing.T, code string) (cookie string, whole *http.Cookie) {
	t.Helper()
	body, err := json.Marshal(map[string]string{"code": code, "label": "phone"})
	if err != nil {
		t.Fatal(err)
	}
	response, text := r.ask(t, "POST", "/api/pair", string(body))
	if response.StatusCode != 200 || len(response.Cookies()) != 1 {
		t.Fatalf("pairing: status %d, %s", response.StatusCode, text)
	}
	whole = response.Cookies()[0]
	return whole.Name + "=" + whole.Value, whole
}

// authority is what the trust page hands out.
func (r *reached) authority(t *testing.T) []byte {
	t.Helper()
	status, der := get(t, fmt.Sprintf("http://127.0.0.1:%d/rimside-authority.crt", r.port+2))
	if status != 200 {
		t.Fatalf("the trust page: status %d", status)
	}
	return []byte(der)
}
