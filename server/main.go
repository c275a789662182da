// Command server is Rimside: it serves the web app, and its calculations to other programs.
package main

import (
	"os"

	"rimside/server/cli"
)

func main() {
	os.Exit(cli.Run(os.Args[1:], os.LookupEnv, os.Stdout, os.Stderr))
}
