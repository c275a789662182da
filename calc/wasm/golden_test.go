package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// The registry's golden answers once more, computed by WebAssembly: the tests themselves are compiled for it and run.
func TestGoldenInWebAssembly(t *testing.T) {
	dir := t.TempDir()
	tests, runner := filepath.Join(dir, "registry.wasm"), filepath.Join(dir, "wasirun")
	command(t, []string{"GOOS=wasip1", "GOARCH=wasm", "GOFLAGS="}, "go", "test", "-c", "-ldflags=-s -w", "-o", tests, "rimside/calc/registry")
	command(t, []string{"GOFLAGS="}, "go", "build", "-o", runner, "./testdata/wasirun")
	names := []string{"TestGolden", "TestGoldenReferencePoints", "TestEveryExampleIsAnswered"}
	out := command(t, nil, runner, tests, filepath.Join("..", "registry"), "-test.v", "-test.run=^("+strings.Join(names, "|")+")$")
	for _, name := range names {
		if !strings.Contains(out, "--- PASS: "+name+" (") {
			t.Errorf("%s did not pass in WebAssembly:\n%s", name, out)
		}
	}
}

// command runs a program, which must end well, and returns what it printed.
func command(t *testing.T, env []string, name string, args ...string) string {
	t.Helper()
	c := exec.Command(name, args...)
	c.Env = append(os.Environ(), env...)
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}
