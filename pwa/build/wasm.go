package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// wordy are the packages that decide and list rather than compute. Inlining makes them larger, and a phone would not notice that it
// makes them faster: without it the WASM is a twentieth smaller, and an answer takes as long as before.
var wordy = []string{"check", "due", "fit", "pack", "ready", "registry", "salt", "spares", "wasm"}

// compileWASM compiles calc/wasm for the browser and returns the module's bytes. Paths and version control state are
// left out of it, so that the same sources give the same bytes in any checkout.
func compileWASM(root string) ([]byte, error) {
	source := filepath.Join(root, "calc", "wasm")
	if _, err := os.Stat(source); err != nil {
		return nil, fmt.Errorf("calc/wasm is missing: the browser's entry to the calculations is needed: %w", err)
	}
	temp, err := os.MkdirTemp("", "rimside-wasm-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(temp)
	file := filepath.Join(temp, "calc.wasm")
	var said bytes.Buffer
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", file}
	for _, name := range wordy {
		args = append(args, "-gcflags="+modulePath+"/calc/"+name+"=-l")
	}
	command := exec.Command("go", append(args, "./calc/wasm")...)
	command.Dir = root
	command.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOWASM=", "CGO_ENABLED=0")
	command.Stdout, command.Stderr = &said, &said
	if err := command.Run(); err != nil {
		return nil, fmt.Errorf("compiling calc/wasm: %w\n%s", err, strings.TrimSpace(said.String()))
	}
	return os.ReadFile(file)
}
