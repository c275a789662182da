package journey

import (
	"bytes"
	"net"
	"net/http"
	"os"
	"os/exec"
	"testing"
	"time"
)

// Server is the real binary on one port with its own data folder. It can be stopped and started again.
type Server struct {
	t       testing.TB
	binary  string
	data    string
	addr    string
	command *exec.Cmd
	output  *bytes.Buffer
}

// StartServer starts the binary on a free port of this computer and waits until it answers.
func StartServer(t testing.TB, flags ...string) *Server {
	t.Helper()
	s := &Server{t: t, binary: binary(t), data: t.TempDir(), addr: freeAddress(t)}
	s.Start(flags...)
	t.Cleanup(s.Stop)
	return s
}

func freeAddress(t testing.TB) string {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer listener.Close()
	return listener.Addr().String()
}

// URL is the address of the app.
func (s *Server) URL() string { return "http://" + s.addr + "/" }

// Start starts the binary again, on the same port and data.
func (s *Server) Start(flags ...string) {
	s.t.Helper()
	s.output = new(bytes.Buffer)
	s.command = exec.Command(s.binary, append([]string{"serve", "-addr", s.addr, "-data", s.data}, flags...)...)
	s.command.Stdout, s.command.Stderr = s.output, s.output
	if err := s.command.Start(); err != nil {
		s.t.Fatal(err)
	}
	deadline := time.Now().Add(10 * time.Second)
	for time.Now().Before(deadline) {
		if answer, err := http.Get(s.URL() + "api/health"); err == nil {
			answer.Body.Close()
			if answer.StatusCode == http.StatusOK {
				return
			}
		}
		time.Sleep(20 * time.Millisecond)
	}
	s.Stop()
	s.t.Fatalf("the server did not answer in time; it said: %s", s.output)
}

// Stop ends the binary and waits until it is gone. Stopping twice is harmless.
func (s *Server) Stop() {
	if s.command == nil {
		return
	}
	ended := make(chan error, 1)
	go func() { ended <- s.command.Wait() }()
	if err := s.command.Process.Signal(os.Interrupt); err != nil {
		_ = s.command.Process.Kill() // Windows knows no interrupt
	}
	select {
	case <-ended:
	case <-time.After(10 * time.Second):
		_ = s.command.Process.Kill()
		<-ended
		s.t.Errorf("the server did not stop when asked to; it said: %s", s.output)
	}
	s.command = nil
}

// Replace puts another binary in the place of this one, on the same port and data.
func (s *Server) Replace(binary string) {
	s.t.Helper()
	s.Stop()
	s.binary = binary
	s.Start()
}
