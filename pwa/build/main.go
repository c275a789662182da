// Command build makes pwa/dist out of calc/wasm and pwa/src: it writes pwa/src/contract, compiles the calculations to WASM,
// bundles the TypeScript, draws the icons, names files by their content, compresses them, and lists them for the service worker.
//
// It works on the module that the working directory lies in, so a changed copy of the tree builds itself.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"rimside/pwa/build/contract"
)

func main() {
	release := flag.Bool("release", false, "compress as far as possible (slower; for what is handed out)")
	out := flag.String("out", "", "folder to write, an empty one or an earlier build (default: pwa/dist of the module)")
	flag.Parse()
	if flag.NArg() > 0 {
		fmt.Fprintf(os.Stderr, "build: unexpected argument %q; see -help\n", flag.Arg(0))
		os.Exit(2)
	}
	if err := run(*out, *release); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

// run builds the module around the working directory into out, or into its own pwa/dist when out is empty.
func run(out string, release bool) error {
	here, err := os.Getwd()
	if err != nil {
		return err
	}
	root, err := moduleRoot(here)
	if err != nil {
		return err
	}
	if out == "" {
		out = filepath.Join(root, "pwa", "dist")
	} else if err := mayReplace(out); err != nil {
		return err
	}
	if err := contract.Write(root); err != nil {
		return err
	}
	tree, version, err := assemble(root)
	if err != nil {
		return err
	}
	packed, err := compressAll(tree, out, release)
	if err != nil {
		return err
	}
	if err := writeTree(out, packed); err != nil {
		return err
	}
	fmt.Println(summary(tree, packed, version, release))
	return nil
}
