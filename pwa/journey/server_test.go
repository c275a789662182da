package journey

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"net"
	"net/http"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"
)

// Server is the real binary on one port with its own data folder. It can be stopped and started again.
type Server struct {
	t       testing.TB
	binary  string
	data    string
	addr    string
	process *os.Process
	ended   chan struct{}
	said    *output
}

// output collects what the binary says; it is read while the binary still writes.
type output struct {
	mutex sync.Mutex
	text  bytes.Buffer
}

func (o *output) Write(piece []byte) (int, error) {
	o.mutex.Lock()
	defer o.mutex.Unlock()
	return o.text.Write(piece)
}

func (o *output) String() string {
	o.mutex.Lock()
	defer o.mutex.Unlock()
	return o.text.String()
}

// StartServer starts the binary on a free port of this computer and waits until it answers.
func StartServer(t testing.TB, flags ...string) *Server {
	t.Helper()
	s := &Server{t: t, binary: binary(t), data: t.TempDir(), addr: freeAddress(t)}
	s.Start(flags...)
	t.Cleanup(s.Stop)
	return s
}

// freeAddress finds a port below those that the system hands out by itself: while the server is stopped, nobody else is
// given its port.
func freeAddress(t testing.TB) string {
	t.Helper()
	for range 50 {
		addr := fmt.Sprintf("127.0.0.1:%d", 20000+rand.IntN(12000))
		if listener, err := net.Listen("tcp", addr); err == nil {
			listener.Close()
			return addr
		}
	}
	t.Fatal("no free port found")
	return ""
}

// URL is the address of the app.
func (s *Server) URL() string { return "http://" + s.addr + "/" }

// Start starts the binary again, on the same port and data.
func (s *Server) Start(flags ...string) {
	s.t.Helper()
	s.said = new(output)
	command := exec.Command(s.binary, append([]string{"serve", "-addr", s.addr, "-data", s.data}, flags...)...)
	command.Stdout, command.Stderr = s.said, s.said
	if err := command.Start(); err != nil {
		s.t.Fatal(err)
	}
	s.process, s.ended = command.Process, make(chan struct{})
	go func(ended chan struct{}) {
		_ = command.Wait()
		close(ended)
	}(s.ended)
	deadline := time.Now().Add(patience)
	for !s.healthy() {
		if time.Now().After(deadline) {
			s.Stop()
			s.t.Fatalf("the server did not answer in time; it said: %s", s.said)
		}
		time.Sleep(interval)
	}
}

// healthy tells whether this very process answers; one that ended fails the test.
func (s *Server) healthy() bool {
	s.t.Helper()
	answer, err := http.Get(s.URL() + "api/health")
	if err == nil {
		answer.Body.Close()
	}
	select {
	case <-s.ended:
		s.process = nil
		s.t.Fatalf("the server ended by itself; it said: %s", s.said)
	default:
	}
	return err == nil && answer.StatusCode == http.StatusOK
}

// Stop ends the binary and waits until it is gone. Stopping twice is harmless.
func (s *Server) Stop() {
	if s.process == nil {
		return
	}
	select {
	case <-s.ended:
		s.process = nil
		s.t.Errorf("the server ended by itself; it said: %s", s.said)
		return
	default:
	}
	if err := s.process.Signal(os.Interrupt); err != nil {
		_ = s.process.Kill() // Windows knows no interrupt
	}
	select {
	case <-s.ended:
	case <-time.After(patience):
		_ = s.process.Kill()
		<-s.ended
		s.t.Errorf("the server did not stop when asked to; it said: %s", s.said)
	}
	s.process = nil
}

// Replace puts another binary in the place of this one, on the same port and data.
func (s *Server) Replace(binary string) {
	s.t.Helper()
	s.Stop()
	s.binary = binary
	s.Start()
}
