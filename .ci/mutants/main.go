// Command mutants changes one important line at a time and runs the tests that should notice. It is slow, and no part of
// .ci/run: run it as `go run ./.ci/mutants` from a clean tree, with -only TEXT for those whose name holds TEXT.
//
// It works on a clone, so that the tree stays as it is. The last line counts; a change that no test noticed has survived,
// and the command then ends with 1.
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

func main() {
	only := flag.String("only", "", "run those whose name holds `TEXT`")
	flag.Parse()
	if err := run(*only); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run(only string) error {
	folder, err := os.MkdirTemp("", "rimside-mutants-")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(folder) }()
	clone := filepath.Join(folder, "clone")
	if out, err := exec.Command("git", "clone", "--quiet", "--no-hardlinks", ".", clone).CombinedOutput(); err != nil {
		return fmt.Errorf("cloning: %w: %s", err, out)
	}
	if out, err := in(clone, "go", "generate", "./..."); err != nil {
		return fmt.Errorf("generating: %w: %s", err, out)
	}
	var caught, survived int
	for _, m := range all {
		if !strings.Contains(m.name, only) {
			continue
		}
		begin := time.Now()
		by, err := m.tried(clone)
		switch {
		case err != nil:
			return fmt.Errorf("%s: %w", m.name, err)
		case by == "":
			survived++
			fmt.Printf("SURVIVED %s (%s)\n", m.name, m.file)
		default:
			caught++
			fmt.Printf("caught   %s: %s, %.0f s\n", m.name, by, time.Since(begin).Seconds())
		}
	}
	fmt.Printf("%d caught, %d survived\n", caught, survived)
	if survived > 0 {
		return fmt.Errorf("%d changes were noticed by no test", survived)
	}
	return nil
}

// tried makes the change, runs the tests and takes it back. It names the first test that failed, "" when none did.
func (m mutant) tried(clone string) (by string, err error) {
	path := filepath.Join(clone, filepath.FromSlash(m.file))
	text, err := os.ReadFile(path)
	if err != nil {
		return "", err
	}
	if strings.Count(string(text), m.from) != 1 {
		return "", fmt.Errorf("%q stands %d times in %s: the list no longer fits the code", m.from, strings.Count(string(text), m.from), m.file)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), m.from, m.to, 1)), 0o644); err != nil {
		return "", err
	}
	defer func() {
		if back := os.WriteFile(path, text, 0o644); err == nil {
			err = back
		}
	}()
	if strings.HasPrefix(m.file, "pwa/src/") {
		if out, err := in(clone, "go", "generate", "./..."); err != nil {
			return "", fmt.Errorf("generating: %w: %s", err, out)
		}
	}
	args := append([]string{"test", "-count=1", "-failfast", "-timeout=10m"}, m.tests...)
	out, err := in(clone, "go", args...)
	if err == nil {
		return "", nil
	}
	if found := failed.FindStringSubmatch(out); found != nil {
		return found[1], nil
	}
	return "", fmt.Errorf("the tests could not be run: %w: %s", err, out[max(0, len(out)-800):])
}

var failed = regexp.MustCompile(`--- FAIL: (\S+)`)

func in(folder, name string, args ...string) (string, error) {
	command := exec.Command(name, args...)
	command.Dir = folder
	out, err := command.CombinedOutput()
	return string(out), err
}
