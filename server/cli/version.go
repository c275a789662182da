package cli

import (
	"flag"
	"fmt"
	"runtime"
	"strconv"

	"rimside/pwa"
)

// released is the version of a release, which the linker sets; "" in a program built from a checkout.
var released string

// version prints which release this is, which app it holds, and the Go version and system that it was made with and for.
func version(c call) error {
	operands, err := parse(c, flag.NewFlagSet("version", flag.ContinueOnError))
	if err != nil {
		return err
	}
	if len(operands) > 0 {
		return misused("misused.version", "given", strconv.Quote(operands[0]))
	}
	built := pwa.Version(pwa.Dist())
	if built == "" {
		built = c.text("unbuilt")
	}
	if released != "" {
		built = released + " app " + built
	}
	fmt.Fprintf(c.stdout, "rimside %s %s %s/%s\n", built, runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return nil
}
