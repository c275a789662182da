package main

import (
	"strings"
	"testing"
)

func TestCounting(t *testing.T) {
	start := `{"Action":"start","Package":"p"}` + "\n"
	run := func(name string) string { return `{"Action":"run","Package":"p","Test":"` + name + `"}` + "\n" }
	end := func(action, name string) string {
		return `{"Action":"` + action + `","Package":"p","Test":"` + name + `"}` + "\n"
	}
	say := func(name, text string) string {
		return `{"Action":"output","Package":"p","Test":"` + name + `","Output":"` + text + `\n"}` + "\n"
	}
	for _, test := range []struct {
		name, input string
		steps       []string
		last        string
		code        int
		shows       []string
		hides       string
	}{
		{"all fine", start + run("A") + run("A/b") + say("A", "quiet") + end("pass", "A/b") + end("pass", "A") + end("pass", ""), nil,
			"2 passed, 0 failed", 0, []string{"ok    p: 2 passed"}, "quiet"},
		{"one fails", start + run("A") + say("A", "it broke") + end("fail", "A") + run("B") + end("pass", "B") + end("fail", ""), nil,
			"1 passed, 1 failed", 1, []string{"FAILED p A", "it broke"}, "no test"},
		{"one is skipped", start + run("A") + say("A", "a.go:1: no browser") + end("skip", "A") + run("B") + end("pass", "B") + end("pass", ""), nil,
			"1 passed, 0 failed, 1 skipped", 0, []string{"skipped p A: a.go:1: no browser"}, "FAILED"},
		{"a package does not compile", `{"ImportPath":"p","Action":"build-output","Output":"p.go:1: bad\n"}` + "\n" + start + end("fail", ""), nil,
			"0 passed, 1 failed", 1, []string{"p.go:1: bad", "FAIL  p"}, "no test"},
		{"a package breaks off", start + run("A") + say("A", "panic: oh") + end("fail", ""), nil,
			"0 passed, 1 failed", 1, []string{"FAILED p A (did not end)", "panic: oh"}, "no test"},
		{"a step failed before", start + run("A") + end("pass", "A") + end("pass", ""), []string{"format", "vet"},
			"1 passed, 2 failed", 1, []string{"FAILED before the tests: vet"}, "no test"},
		{"nothing ran", "", nil, "0 passed, 1 failed", 1, []string{"no test ran"}, ""},
		{"everything was skipped", start + run("A") + end("skip", "A") + end("pass", ""), nil, "0 passed, 1 failed, 1 skipped", 1, []string{"no test ran"}, "did not end"},
		{"a package without tests", start + end("skip", "") + start + run("A") + end("pass", "A") + end("pass", ""), nil, "1 passed, 0 failed", 0, []string{"none  p"}, "FAILED"},
		{"something else in between", "warning: odd\n" + start + run("A") + end("pass", "A") + end("pass", ""), nil, "1 passed, 0 failed", 0, []string{"warning: odd"}, "FAILED"},
	} {
		t.Run(test.name, func(t *testing.T) {
			var out strings.Builder
			sum := newTally(&out)
			for _, step := range test.steps {
				sum.failedStep(step)
			}
			for line := range strings.Lines(test.input) {
				sum.line(line)
			}
			code := sum.finish()
			lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
			if code != test.code || lines[len(lines)-1] != test.last {
				t.Errorf("exit code %d, last line %q, want %d and %q", code, lines[len(lines)-1], test.code, test.last)
			}
			for _, text := range test.shows {
				if !strings.Contains(out.String(), text) {
					t.Errorf("%q is not shown: %s", text, out.String())
				}
			}
			if test.hides != "" && strings.Contains(out.String(), test.hides) {
				t.Errorf("%q is shown: %s", test.hides, out.String())
			}
		})
	}
}

func TestACommandThatFailsByItselfIsAFailure(t *testing.T) {
	var out strings.Builder
	sum := newTally(&out)
	if err := run([]string{"go", "no-such-command"}, "", sum); err == nil {
		t.Error("no error from a command that failed")
	}
	if err := run([]string{"/no/such/program"}, "", sum); err == nil {
		t.Error("no error from a program that is not there")
	}
}
