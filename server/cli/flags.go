package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
)

// parse reads the flags from the arguments, and those not given there from the environment. It returns what is left of
// the arguments.
func parse(c call, flags *flag.FlagSet) ([]string, error) {
	flags.SetOutput(io.Discard)
	if err := flags.Parse(c.args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprintf(c.stdout, "usage: rimside %s\n", flags.Name())
			printFlags(c.stdout, flags)
			return nil, err
		}
		return nil, usageError{err.Error() + "; see rimside help"}
	}
	given := map[string]bool{}
	flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	var problem error
	flags.VisitAll(func(f *flag.Flag) {
		value, set := c.env(variable(f.Name))
		if given[f.Name] || !set || value == "" {
			return
		}
		if err := flags.Set(f.Name, value); err != nil {
			problem = usageError{fmt.Sprintf("the variable %s cannot be %q: %v", variable(f.Name), value, err)}
		}
	})
	return flags.Args(), problem
}

// variable names the environment variable that stands for a flag.
func variable(flagName string) string {
	return "RIMSIDE_" + strings.ToUpper(strings.ReplaceAll(flagName, "-", "_"))
}
