// Package cli is the rimside command: one file for each sub-command.
package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
)

// Lookup finds an environment variable.
type Lookup func(name string) (string, bool)

// command is one sub-command. It writes its result to stdout; whatever goes wrong it returns.
type command struct {
	name, sentence string
	run            func(c call) error
}

// call is one use of a sub-command.
type call struct {
	args           []string
	env            Lookup
	stdout, stderr io.Writer
}

func commands() []command {
	return []command{
		{"serve", "serve the app and its calculations (the default)", serve},
		{"backup", "FILE: write everything in the data folder into one file", backup},
		{"restore", "FILE: make a data folder of a backup", restore},
		{"export", "FILE: write the book's entries as text, one a line", export},
		{"import", "FILE: take an exported file in", importFile},
		{"verify", "check everything in the data folder", verify},
		{"pair", "print a code that lets a phone in", pair},
		{"erasures", "list what waits to be erased; -agree or -stop decides", erasures},
		{"site", "DIR: write the app as static files for any https host", site},
		{"version", "print the program's version", version},
		{"licences", "print what the program is made with, and on what terms", licences},
	}
}

// usageError is a wrong way to call the program, as opposed to something that failed.
type usageError struct{ message string }

func (e usageError) Error() string { return e.message }

// Run runs the program with the arguments after its name and returns its exit code: 0, 2 for a wrong call, 1 for
// anything else that failed, said in one line on stderr.
func Run(args []string, env Lookup, stdout, stderr io.Writer) int {
	err := dispatch(call{args, env, stdout, stderr})
	if err == nil || errors.Is(err, flag.ErrHelp) {
		return 0
	}
	fmt.Fprintln(stderr, "rimside: "+strings.Join(strings.Fields(err.Error()), " "))
	if errors.As(err, new(usageError)) {
		return 2
	}
	return 1
}

func dispatch(c call) error {
	name := "serve"
	if len(c.args) > 0 && !strings.HasPrefix(c.args[0], "-") {
		name, c.args = c.args[0], c.args[1:]
	} else if len(c.args) == 1 && isHelp(c.args[0]) {
		name = "help"
	}
	if name == "help" {
		printUsage(c.stdout)
		return nil
	}
	for _, known := range commands() {
		if known.name == name {
			return known.run(c)
		}
	}
	return usageError{fmt.Sprintf("there is no command %q; see rimside help", name)}
}

func isHelp(arg string) bool {
	return arg == "-h" || strings.TrimLeft(arg, "-") == "help"
}
