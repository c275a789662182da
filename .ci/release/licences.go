package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// legal are the names of files that tell on what terms something may be passed on.
var legal = regexp.MustCompile(`(?i)^(un)?licen[cs]e|^copying|^notice|^patents|^third.party`)

// grants are those of them that a part cannot do without.
var grants = regexp.MustCompile(`(?i)licen|copying`)

// part is one piece of work by others that is in the programs.
type part struct{ name, version, folder string }

// bundler puts the scripts of the app together and leaves short helpers of its own in them.
const bundler = "github.com/evanw/esbuild"

// licences writes the page of all that is linked into the programs for these targets, the calculations for the browser, and
// the bundler's helpers. What only builds or tests is not in it.
func (t toolchain) licences(to []target) (string, error) {
	parts := map[string]part{}
	for _, each := range to {
		if err := t.linked(parts, each.variables(), "./server"); err != nil {
			return "", err
		}
	}
	if err := t.linked(parts, []string{"GOOS=js", "GOARCH=wasm"}, "./calc/wasm"); err != nil {
		return "", err
	}
	if err := t.module(parts, bundler); err != nil {
		return "", err
	}
	own, err := t.standardLibrary()
	if err != nil {
		return "", err
	}
	return page(append([]part{own}, slices.SortedFunc(maps.Values(parts), func(a, b part) int { return strings.Compare(a.name, b.name) })...))
}

// goModule is what the toolchain tells of a module.
type goModule struct {
	Path, Version, Dir string
	Main               bool
	Replace            *goModule
}

func (m goModule) part() part {
	if m.Replace != nil {
		return part{m.Path, m.Replace.Version, m.Replace.Dir}
	}
	return part{m.Path, m.Version, m.Dir}
}

// linked adds the modules that the packages of a program come from.
func (t toolchain) linked(parts map[string]part, variables []string, program string) error {
	out, err := t.run(variables, "list", "-deps", "-json=Module", program)
	if err != nil {
		return err
	}
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		var each struct{ Module *goModule }
		if err := decoder.Decode(&each); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
		if each.Module != nil && !each.Module.Main {
			parts[each.Module.Path] = each.Module.part()
		}
	}
}

func (t toolchain) module(parts map[string]part, name string) error {
	out, err := t.run(nil, "list", "-m", "-json", name)
	if err != nil {
		return err
	}
	var found goModule
	err = json.Unmarshal(out, &found)
	parts[name] = found.part()
	return err
}

// standardLibrary is Go's own part: its library is linked in, and its script starts the calculations in the browser.
func (t toolchain) standardLibrary() (part, error) {
	out, err := t.run(nil, "env", "GOROOT", "GOVERSION")
	if err != nil {
		return part{}, err
	}
	lines := strings.Fields(string(out))
	if len(lines) != 2 {
		return part{}, fmt.Errorf("go env tells no folder of Go: %q", out)
	}
	return part{"Go's standard library", lines[1], lines[0]}, nil
}

// page puts the texts together. One that several share stands once, after the names of all of them.
func page(parts []part) (string, error) {
	var order []string
	named := map[string][]string{}
	for _, each := range parts {
		texts, err := each.texts()
		if err != nil {
			return "", err
		}
		for _, file := range slices.Sorted(maps.Keys(texts)) {
			text := texts[file]
			if named[text] == nil {
				order = append(order, text)
			}
			named[text] = append(named[text], strings.TrimSpace(each.name+" "+each.version)+" ("+file+")")
		}
	}
	var out strings.Builder
	out.WriteString("What Rimside is made with, and on what terms. The names stand above the text that goes with them.\n")
	for _, text := range order {
		fmt.Fprintf(&out, "\n%s\n%s\n\n%s\n", strings.Repeat("=", 78), strings.Join(named[text], "\n"), text)
	}
	return out.String(), nil
}

// texts reads the files of a part that tell its terms. A part without any cannot be passed on.
func (p part) texts() (map[string]string, error) {
	if p.folder == "" {
		return nil, fmt.Errorf("%s is not on this machine: go mod download", p.name)
	}
	texts := map[string]string{}
	terms := false
	err := filepath.WalkDir(p.folder, func(file string, entry os.DirEntry, err error) error {
		name, _ := filepath.Rel(p.folder, file)
		name = filepath.ToSlash(name)
		top, _, _ := strings.Cut(name, "/")
		switch {
		case err != nil || name == ".":
			return err
		case !legal.MatchString(top) && entry.IsDir():
			return fs.SkipDir
		case !legal.MatchString(top) || entry.IsDir():
			return nil
		}
		content, err := os.ReadFile(file)
		terms = terms || grants.MatchString(name)
		texts[name] = strings.TrimSpace(strings.ReplaceAll(string(content), "\r\n", "\n"))
		return err
	})
	if err == nil && !terms {
		err = fmt.Errorf("%s %s has no file with its licence in %s: nobody knows on what terms it may be passed on", p.name, p.version, p.folder)
	}
	return texts, err
}
