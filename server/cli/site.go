package cli

import (
	"errors"
	"flag"
	"fmt"

	"rimside/pwa"
)

// site writes the app as static files. It works from them alone, as every calculation is in them.
func site(c call) error {
	operands, err := parse(c, flag.NewFlagSet("site", flag.ContinueOnError))
	if err != nil {
		return err
	}
	if len(operands) != 1 {
		return usageError{"site needs the one folder to write: rimside site DIR"}
	}
	built := pwa.Version(pwa.Dist())
	if built == "" {
		return errors.New("the app is not built: run go generate ./..., then build rimside again")
	}
	files, err := siteFiles(pwa.Dist())
	if err != nil {
		return err
	}
	if err := writeSite(operands[0], built, files); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "Version %s of the app is in %s: %d files, for any https host\n", built, operands[0], len(files))
	return nil
}
