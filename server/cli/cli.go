// Package cli is the rimside command: one file for each sub-command.
package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"rimside/server/words"
)

// Lookup finds an environment variable.
type Lookup func(name string) (string, bool)

// command is one sub-command; the catalogue says by its name what it does. It writes its result to stdout; whatever goes wrong it returns.
type command struct {
	name string
	run  func(c call) error
}

// call is one use of a sub-command.
type call struct {
	args           []string
	env            Lookup
	stdout, stderr io.Writer
}

func commands() []command {
	return []command{
		{"serve", serve},
		{"backup", backup},
		{"restore", restore},
		{"export", export},
		{"import", importFile},
		{"verify", verify},
		{"pair", pair},
		{"erasures", erasures},
		{"site", site},
		{"version", version},
		{"licences", licences},
	}
}

// Run runs the program with the arguments after its name and returns its exit code: 0, 2 for a wrong call, 1 for
// anything else that failed, said in one line on stderr.
func Run(args []string, env Lookup, stdout, stderr io.Writer) int {
	err := dispatch(call{args, env, stdout, stderr})
	if err == nil || errors.Is(err, flag.ErrHelp) {
		return 0
	}
	fmt.Fprintln(stderr, "rimside: "+strings.Join(strings.Fields(explain(err, words.OfEnvironment(env))), " "))
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
		printUsage(c)
		return nil
	}
	for _, known := range commands() {
		if known.name == name {
			return known.run(c)
		}
	}
	return misused("command.none", "name", strconv.Quote(name))
}

func isHelp(arg string) bool {
	return arg == "-h" || strings.TrimLeft(arg, "-") == "help"
}
