package main

import (
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
)

// event is one line of `go test -json`.
type event struct {
	Action, Package, ImportPath, Test, Output string
	Elapsed                                   float64
}

// tally counts tests, subtests included, and shows what a reader has to know.
type tally struct {
	out                     io.Writer
	passed, failed, skipped int
	packages                map[string]*packageRun
}

// packageRun is what is known of a package while its tests run.
type packageRun struct {
	passed, failed int
	output         map[string][]string // by test; "" is the package's own
	running        map[string]bool
}

func newTally(out io.Writer) *tally {
	return &tally{out: out, packages: map[string]*packageRun{}}
}

func (s *tally) failedStep(name string) {
	s.failed++
	fmt.Fprintf(s.out, "FAILED before the tests: %s\n", name)
}

func (s *tally) broken(message string) {
	s.failed++
	fmt.Fprintln(s.out, "FAILED:", message)
}

// line takes one line of the command's output. What is not an event is shown as it is.
func (s *tally) line(text string) {
	var e event
	if err := json.Unmarshal([]byte(text), &e); err != nil || e.Action == "" {
		fmt.Fprint(s.out, text)
		return
	}
	if strings.HasPrefix(e.Action, "build-") {
		fmt.Fprint(s.out, e.Output)
		return
	}
	run := s.packages[e.Package]
	if run == nil {
		run = &packageRun{output: map[string][]string{}, running: map[string]bool{}}
		s.packages[e.Package] = run
	}
	if e.Action == "output" {
		run.output[e.Test] = append(run.output[e.Test], e.Output)
	} else if e.Test == "" {
		s.endPackage(run, e)
	} else {
		s.test(run, e)
	}
}

func (s *tally) test(run *packageRun, e event) {
	switch e.Action {
	case "run":
		run.running[e.Test] = true
		return
	case "pass":
		s.passed++
		run.passed++
	case "skip":
		s.skipped++
		fmt.Fprintf(s.out, "skipped %s %s%s", e.Package, e.Test, reason(run.output[e.Test]))
	case "fail":
		s.failed++
		run.failed++
		s.show(run, e.Package, e.Test)
	default:
		return
	}
	delete(run.running, e.Test)
	delete(run.output, e.Test)
}

// endPackage closes a package's account. One that failed without a failing test did not compile, or broke off.
func (s *tally) endPackage(run *packageRun, e event) {
	if e.Action != "pass" && e.Action != "fail" && e.Action != "skip" {
		return
	}
	for _, name := range slices.Sorted(maps.Keys(run.running)) {
		s.failed++
		run.failed++
		s.show(run, e.Package, name+" (did not end)")
	}
	if e.Action == "fail" && run.failed == 0 {
		s.failed++
		s.show(run, e.Package, "")
	}
	word := map[string]string{"pass": "ok", "fail": "FAIL", "skip": "none"}[e.Action]
	fmt.Fprintf(s.out, "%-5s %s: %d passed, %d failed in %.1f s\n", word, e.Package, run.passed, run.failed, e.Elapsed)
	delete(s.packages, e.Package)
}

func (s *tally) show(run *packageRun, pkg, test string) {
	name, _, _ := strings.Cut(test, " ")
	fmt.Fprintf(s.out, "FAILED %s %s\n", pkg, test)
	for _, text := range run.output[name] {
		fmt.Fprint(s.out, "    ", text)
	}
}

// reason picks what a skipped test said.
func reason(output []string) string {
	for _, text := range output {
		if trimmed := strings.TrimSpace(text); trimmed != "" && !strings.HasPrefix(trimmed, "=== ") && !strings.HasPrefix(trimmed, "--- ") {
			return ": " + trimmed + "\n"
		}
	}
	return "\n"
}

// finish prints the line that counts and returns the exit code.
func (s *tally) finish() int {
	if s.passed == 0 && s.failed == 0 {
		s.broken("no test ran")
	}
	fmt.Fprintf(s.out, "%d passed, %d failed", s.passed, s.failed)
	if s.skipped > 0 {
		fmt.Fprintf(s.out, ", %d skipped", s.skipped)
	}
	fmt.Fprintln(s.out)
	if s.failed > 0 || s.passed == 0 {
		return 1
	}
	return 0
}
