package cli

import (
	"flag"
	"fmt"
	"io"
	"strings"
)

// printUsage lists the sub-commands, and serve's flags, as it is what runs without a sub-command.
func printUsage(out io.Writer) {
	fmt.Fprint(out, "Rimside: a pocket wheel book.\n\nusage: rimside [command] [flags]\n\n")
	for _, known := range commands() {
		fmt.Fprintf(out, "  %-8s %s\n", known.name, known.sentence)
	}
	fmt.Fprint(out, "\nflags of serve:\n")
	var settings serveSettings
	printFlags(out, settings.flags())
}

// printFlags lists the flags, each with the variable that it may be given by as well.
func printFlags(out io.Writer, flags *flag.FlagSet) {
	flags.VisitAll(func(f *flag.Flag) {
		value, help := flag.UnquoteUsage(f)
		fmt.Fprintf(out, "  %-16s %s\n  %-16s or set %s\n", strings.TrimSpace("-"+f.Name+" "+value), help, "", variable(f.Name))
	})
}
