package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// parse reads the flags from the arguments, and those not given there from the environment. It returns what is left of
// the arguments.
func parse(c call, flags *flag.FlagSet) ([]string, error) {
	flags.SetOutput(io.Discard)
	if err := flags.Parse(c.args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprint(c.stdout, c.text("usage.of", "command", flags.Name()))
			printFlags(c, flags)
			return nil, err
		}
		return nil, misused("mistake", "why", err)
	}
	given := map[string]bool{}
	flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	var wrong error
	flags.VisitAll(func(f *flag.Flag) {
		value, set := c.env(variable(f.Name))
		if given[f.Name] || !set || value == "" {
			return
		}
		if err := flags.Set(f.Name, value); err != nil {
			wrong = misused("variable", "variable", variable(f.Name), "value", strconv.Quote(value), "why", err)
		}
	})
	return flags.Args(), wrong
}

// variable names the environment variable that stands for a flag.
func variable(flagName string) string {
	return "RIMSIDE_" + strings.ToUpper(strings.ReplaceAll(flagName, "-", "_"))
}
