package journey

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
)

// scratch is the folder for this run's binaries.
var scratch string

func TestMain(m *testing.M) {
	var err error
	if scratch, err = os.MkdirTemp("", "rimside-journey-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	code := m.Run()
	os.RemoveAll(scratch)
	os.Exit(code)
}

// missing skips the test with a plain line, or fails it where everything must run.
func missing(t testing.TB, format string, args ...any) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatalf("needed when CI is set: "+format, args...)
	}
	t.Skipf(format, args...)
}

// moduleRoot is the folder with go.mod, two above this one.
func moduleRoot(t testing.TB) string {
	t.Helper()
	root, err := filepath.Abs(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	return root
}

var buildOnce = sync.OnceValues(func() (string, error) {
	return buildServer(filepath.Join("..", ".."), "rimside")
})

// binary builds the real server once for all tests.
func binary(t testing.TB) string {
	t.Helper()
	if _, err := os.Stat(filepath.Join(moduleRoot(t), "pwa", "dist", "index.html")); err != nil {
		missing(t, "the app is not built: run go generate ./... first (%v)", err)
	}
	path, err := buildOnce()
	if err != nil {
		t.Fatal(err)
	}
	return path
}

func buildServer(root, name string) (string, error) {
	path := filepath.Join(scratch, name)
	command := exec.Command("go", "build", "-o", path, "./server")
	command.Dir = root
	if output, err := command.CombinedOutput(); err != nil {
		return "", errors.Join(fmt.Errorf("building the server: %s", output), err)
	}
	return path, nil
}
