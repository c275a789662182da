package cli

import (
	"flag"

	"rimside/pwa"
)

// site writes the app as static files. It works from them alone, as every calculation is in them.
func site(c call) error {
	operands, err := parse(c, flag.NewFlagSet("site", flag.ContinueOnError))
	if err != nil {
		return err
	}
	if len(operands) != 1 {
		return misused("misused.site")
	}
	built := pwa.Version(pwa.Dist())
	if built == "" {
		return trouble("site.unbuilt")
	}
	files, err := siteFiles(pwa.Dist())
	if err != nil {
		return err
	}
	if err := writeSite(operands[0], built, files); err != nil {
		return err
	}
	c.say("site.done", "version", built, "dir", operands[0], "n", len(files))
	return nil
}
