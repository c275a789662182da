package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/andybalholm/brotli"
)

// toolchain runs Go in one copy of the tree.
type toolchain struct {
	root  string
	cache string // of compiled packages, "" for the usual one
}

// unset are the variables by which somebody's own settings would change what is built.
var unset = []string{"GOFLAGS", "GOEXPERIMENT", "GOOS", "GOARCH", "GOAMD64", "GOARM64", "GOARM", "CGO_ENABLED", "GODEBUG", "GOWORK", "GOFIPS140"}

// run runs Go and returns what it wrote.
func (t toolchain) run(variables []string, args ...string) ([]byte, error) {
	command := exec.Command("go", args...)
	command.Dir = t.root
	command.Env = append(os.Environ(), "CGO_ENABLED=0", "GOWORK=off")
	for _, name := range unset {
		if name != "CGO_ENABLED" && name != "GOWORK" {
			command.Env = append(command.Env, name+"=")
		}
	}
	if t.cache != "" {
		command.Env = append(command.Env, "GOCACHE="+t.cache)
	}
	command.Env = append(command.Env, variables...)
	var said bytes.Buffer
	command.Stderr = &said
	out, err := command.Output()
	if err != nil {
		return nil, fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, strings.TrimSpace(said.String()))
	}
	return out, nil
}

// makeApp builds the web app into the copy of the tree, puts the licences beside it, and returns those.
func makeApp(tools toolchain, o order) (string, error) {
	args := []string{"run", "-buildvcs=false", "./pwa/build"}
	if !o.quick {
		args = append(args, "-release")
	}
	if _, err := tools.run(nil, args...); err != nil {
		return "", err
	}
	licences, err := tools.licences(o.only)
	if err != nil {
		return "", err
	}
	// pwa.Licences reads it from there. Servers hand out no file whose name starts with a dot.
	return licences, os.WriteFile(filepath.Join(tools.root, "pwa", "dist", ".licences.br"), shrink(licences), 0o644)
}

// shrink cannot fail: it writes to memory.
func shrink(text string) []byte {
	var small bytes.Buffer
	writer := brotli.NewWriterLevel(&small, brotli.BestCompression)
	_, _ = writer.Write([]byte(text))
	_ = writer.Close()
	return small.Bytes()
}

// program builds the one program for a target. Paths, the state of version control and the build's own number are left out.
func (t toolchain) program(to target, version, file string) error {
	_, err := t.run(to.variables(), "build", "-trimpath", "-buildvcs=false",
		"-ldflags=-s -w -buildid= -X rimside/server/cli.released="+version, "-o", file, "./server")
	return err
}
