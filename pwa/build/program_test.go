package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// builder is this program, built once and without the race detector: compressing under it takes minutes.
var builder string

func TestMain(m *testing.M) {
	os.Exit(buildAndRun(m))
}

func buildAndRun(m *testing.M) int {
	dir, err := os.MkdirTemp("", "rimside-build-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	builder = filepath.Join(dir, "build.exe") // any system runs it under this name
	if said, err := exec.Command("go", "build", "-o", builder, ".").CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "building the builder: %v\n%s", err, said)
		return 1
	}
	return m.Run()
}

// runBuilder runs the builder in a folder and returns what it said.
func runBuilder(here string, args ...string) (string, error) {
	command := exec.Command(builder, args...)
	command.Dir = here
	said, err := command.CombinedOutput()
	return string(said), err
}
