package cli_test

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// binary is the program under test, built once.
var binary string

func TestMain(m *testing.M) {
	os.Exit(buildAndRun(m))
}

func buildAndRun(m *testing.M) int {
	dir, err := os.MkdirTemp("", "rimside-cli-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	binary = filepath.Join(dir, "rimside")
	if runtime.GOOS == "windows" {
		binary += ".exe"
	}
	if said, err := exec.Command("go", "build", "-o", binary, "rimside/server").CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "building the program under test: %v\n%s", err, said)
		return 1
	}
	return m.Run()
}

// program prepares a run of the binary in an empty home and in English, with no variables of ours but those given.
func program(t testing.TB, env []string, args ...string) *exec.Cmd {
	t.Helper()
	command := exec.Command(binary, args...)
	command.Dir = t.TempDir()
	for _, variable := range os.Environ() {
		name, _, _ := strings.Cut(variable, "=")
		if !strings.HasPrefix(name, "RIMSIDE_") && name != "XDG_DATA_HOME" && name != "HOME" && !strings.EqualFold(name, "LocalAppData") {
			command.Env = append(command.Env, variable)
		}
	}
	command.Env = append(command.Env, "HOME="+command.Dir, "LocalAppData="+command.Dir, "LC_ALL=C")
	command.Env = append(command.Env, env...)
	return command
}

// finish runs the program to its end and returns its exit code and what it wrote.
func finish(t *testing.T, command *exec.Cmd) (code int, stdout, stderr string) {
	t.Helper()
	var out, complaint bytes.Buffer
	command.Stdout, command.Stderr = &out, &complaint
	timer := time.AfterFunc(20*time.Second, func() { _ = command.Process.Kill() })
	defer timer.Stop()
	err := command.Run()
	if exit := (*exec.ExitError)(nil); err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return command.ProcessState.ExitCode(), out.String(), complaint.String()
}

// serving starts the program and waits for the line that says where it is. It is killed at the end of the test.
func serving(t testing.TB, command *exec.Cmd) (url string) {
	t.Helper()
	pipe, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	var complaint bytes.Buffer
	command.Stderr = &complaint
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if command.ProcessState == nil {
			_ = command.Process.Kill()
			_ = command.Wait()
		}
	})
	timer := time.AfterFunc(20*time.Second, func() { _ = command.Process.Kill() })
	defer timer.Stop()
	line, err := bufio.NewReader(pipe).ReadString('\n')
	url, found := strings.CutPrefix(strings.TrimSpace(line), "Rimside is at ")
	if err != nil || !found {
		_ = command.Process.Kill()
		_ = command.Wait()
		t.Fatalf("first line %q (%v), want where Rimside is; stderr: %s", line, err, complaint.String())
	}
	return url
}
