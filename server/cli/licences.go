package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"rimside/pwa"
)

// licences prints what the program is made with and on what terms.
func licences(c call) error {
	operands, err := parse(c, flag.NewFlagSet("licences", flag.ContinueOnError))
	if err != nil {
		return err
	}
	if len(operands) > 0 {
		return usageError{fmt.Sprintf("licences takes no arguments, not %q", operands[0])}
	}
	text, err := pwa.Licences(pwa.Dist())
	if err != nil {
		return err
	}
	if text == "" {
		return errors.New("this program was built from a checkout, not by a release: go.mod names what it is made with, and each of those brings its licence; a release (go run ./.ci/release VERSION) puts them all together")
	}
	_, err = io.WriteString(c.stdout, text)
	return err
}
