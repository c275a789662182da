// Command release makes what is handed out: the program for every system, the licences of all that is in it, and the checksums.
//
//	go run ./.ci/release -out DIR 1.4.0
//
// It builds what is committed, in a folder of its own, so that nothing half done gets in. The same commit and the same Go give
// the same bytes, in whatever folder and on whatever day: that is how anybody can check a program against its source.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// versionForm is what a version may look like: it becomes part of file names and of what the linker is told.
var versionForm = regexp.MustCompile(`^[0-9]+(\.[0-9]+){0,3}(-[0-9A-Za-z.]+)?$`)

// order is one release that somebody asked for.
type order struct {
	version string
	out     string   // an empty folder, or none yet
	only    []target // what to build for
	quick   bool     // compressed as on any day; for tests
	cache   string   // of compiled packages, "" for the usual one
}

func main() {
	out := flag.String("out", "", "`DIR` to write, empty or not there yet (default: rimside-VERSION in the folder for temporary files)")
	only := flag.String("only", "", "build for these `SYSTEMS` only, as in linux-amd64,windows-arm64")
	flag.Parse()
	if flag.NArg() != 1 {
		fmt.Fprintln(os.Stderr, "release: which version? As in: go run ./.ci/release -out DIR 1.4.0")
		os.Exit(2)
	}
	wanted, err := choose(*only)
	if err == nil {
		err = release(order{version: flag.Arg(0), out: *out, only: wanted})
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// release makes all of it in a copy of the committed tree.
func release(o order) error {
	if !versionForm.MatchString(o.version) {
		return fmt.Errorf("%q is no version: write it as 1.4.0 or 1.4.0-rc.1", o.version)
	}
	if o.out == "" {
		o.out = filepath.Join(os.TempDir(), "rimside-"+o.version)
	}
	out, err := filepath.Abs(o.out)
	if err != nil {
		return err
	}
	if entries, err := os.ReadDir(out); err == nil && len(entries) > 0 {
		return fmt.Errorf("%s is not empty: choose another folder with -out", out)
	}
	work, err := os.MkdirTemp("", "rimside-release-")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(work) }()
	commit, err := copyCommitted(work)
	if err != nil {
		return err
	}
	tools := toolchain{root: work, cache: o.cache}
	licences, err := makeApp(tools, o)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(out, "LICENCES.txt"), []byte(licences), 0o644); err != nil {
		return err
	}
	for _, each := range o.only {
		file := filepath.Join(out, each.file(o.version))
		if err := tools.program(each, o.version, file); err != nil {
			return err
		}
		fmt.Println("built", filepath.Base(file))
	}
	if err := writeSums(out); err != nil {
		return err
	}
	fmt.Printf("Release %s of commit %s is in %s: %d programs, LICENCES.txt, SHA256SUMS\n", o.version, commit, out, len(o.only))
	return nil
}

// choose reads the systems that were named, all when none was.
func choose(names string) (chosen []target, err error) {
	if names == "" {
		return targets, nil
	}
	for name := range strings.SplitSeq(names, ",") {
		found := false
		for _, each := range targets {
			if each.name() == name {
				chosen, found = append(chosen, each), true
			}
		}
		if !found {
			return nil, fmt.Errorf("there is no release for %q; there are %s", name, allNames())
		}
	}
	return chosen, nil
}
