package cli

import (
	"flag"
	"fmt"
	"strings"
)

// printUsage lists the sub-commands, and serve's flags, as it is what runs without a sub-command.
func printUsage(c call) {
	fmt.Fprint(c.stdout, c.text("usage"))
	for _, known := range commands() {
		fmt.Fprintf(c.stdout, "  %-8s %s\n", known.name, c.text(known.name))
	}
	fmt.Fprint(c.stdout, c.text("usage.serve"))
	var settings serveSettings
	printFlags(c, settings.flags())
}

// printFlags lists the flags, whose help is an entry of the catalogue, each with the variable that it may be given by as well.
func printFlags(c call, flags *flag.FlagSet) {
	flags.VisitAll(func(f *flag.Flag) {
		f.Usage = c.text(f.Usage)
		value, help := flag.UnquoteUsage(f)
		fmt.Fprintf(c.stdout, "  %-16s %s\n  %-16s %s\n", strings.TrimSpace("-"+f.Name+" "+value), help, "", c.text("usage.flag", "variable", variable(f.Name)))
	})
}
