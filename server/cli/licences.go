package cli

import (
	"flag"
	"io"
	"strconv"

	"rimside/pwa"
)

// licences prints what the program is made with and on what terms.
func licences(c call) error {
	operands, err := parse(c, flag.NewFlagSet("licences", flag.ContinueOnError))
	if err != nil {
		return err
	}
	if len(operands) > 0 {
		return misused("misused.licences", "given", strconv.Quote(operands[0]))
	}
	text, err := pwa.Licences(pwa.Dist())
	if err != nil {
		return err
	}
	if text == "" {
		return trouble("licences.none")
	}
	_, err = io.WriteString(c.stdout, text)
	return err
}
