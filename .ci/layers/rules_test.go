package layers_test

import (
	"path"
	"slices"
	"strings"
)

// In each of these a package may import those before it only.
var (
	calcLine  = []string{"unit", "tyre", "road", "ride", "air", "pressure", "fit", "salt", "spares", "check", "ready", "due", "pack", "ground", "spokes", "trial", "qr", "registry", "wasm"}
	storeLine = []string{"fault", "record", "oplog", "sqlite", "blob"}
)

// serverUses lists what each part of the server may import of the server. access and trust do not know each other.
var serverUses = map[string][]string{
	"": {"cli", "web", "access", "trust"}, "cli": {"web", "access", "trust", "words"}, "web": {"access", "trust"}, "access": nil, "trust": {"words"}, "words": nil,
}

// fourier is the one library that computing may use, and where.
const fourier = "gonum.org/v1/gonum/dsp/fourier"

var fourierUsers = []string{"ground", "spokes"}

// impure are the standard packages that read clocks, files, networks or chance: a calculation's answer depends on its
// input alone. The browser's entry has to talk to the browser.
var impure = []string{"os", "io/fs", "io/ioutil", "net", "time", "log", "syscall", "database", "embed", "math/rand", "crypto/rand", "plugin", "testing"}

// goRule tells whether one package may import another.
func goRule(from, to string) bool {
	from, ours := within(from)
	target, inside := within(to)
	top, part := split(from)
	if !ours || !inside {
		if to == fourier && slices.Contains(fourierUsers, part) {
			return true
		}
		return top != "calc" || isStandard(to) && (part == "wasm" || !isImpure(to))
	}
	targetTop, targetPart := split(target)
	switch top {
	case "calc":
		return targetTop == "calc" && isBefore(calcLine, targetPart, part)
	case "store":
		return targetTop == "store" && isBefore(storeLine, targetPart, part)
	case "pwa":
		// The builder writes the contract from what is declared in Go.
		if part == "build" && (target == "calc/registry" || target == "store/record") {
			return true
		}
		// The embedded app stands alone, lest the bundler end up in the binary that serves it.
		return part != "" && targetTop == "pwa" && targetPart == part
	case "server":
		if targetTop != "server" {
			return targetTop == "calc" || targetTop == "store" || target == "pwa"
		}
		return slices.Contains(serverUses[part], targetPart)
	}
	return false
}

// within takes the module's name off a package's path.
func within(importPath string) (string, bool) {
	rest, found := strings.CutPrefix(importPath, "rimside/")
	return rest, found || importPath == "rimside"
}

// split returns the first two parts of a path.
func split(name string) (top, part string) {
	top, rest, _ := strings.Cut(name, "/")
	part, _, _ = strings.Cut(rest, "/")
	return top, part
}

// isBefore also lets a package use what lies in its own folder.
func isBefore(line []string, target, from string) bool {
	here, there := slices.Index(line, from), slices.Index(line, target)
	return here >= 0 && there >= 0 && there <= here
}

func isStandard(importPath string) bool {
	first, _, _ := strings.Cut(importPath, "/")
	return !strings.Contains(first, ".") && first != "rimside"
}

func isImpure(importPath string) bool {
	return slices.ContainsFunc(impure, func(name string) bool {
		return importPath == name || strings.HasPrefix(importPath, name+"/")
	})
}

// scriptUses lists which folders of pwa/src a folder may import besides itself. Files beside the folders put the app
// together and may import any.
var scriptUses = map[string][]string{
	"contract": nil, "words": nil, "log": nil, "ui": {"words", "contract"}, "book": {"log", "words", "contract"},
	"screens": {"ui", "book", "log", "words", "contract"},
}

// workerUses does the same for the two files that run without a page.
var workerUses = map[string][]string{"sw.ts": {"log"}, "calc-worker.ts": {"calc-protocol.ts"}}

const screenContract = "pwa/src/ui/screen.ts"

// sharedScreens is the folder of what several screens need and ui may not know, since it reads the book.
const sharedScreens = "shared"

const testTools = "pwa/src/ui/testing.ts"

// scriptRule tells whether one file of pwa/src may import another.
func scriptRule(from, to string) bool {
	if isTest(to) || to == testTools {
		return isTest(from)
	}
	here, there := place(from), place(to)
	if from == screenContract && there == "log" {
		return true // it names the types of what screens are lent
	}
	if uses, isWorker := workerUses[here]; isWorker {
		return slices.Contains(uses, there)
	}
	if strings.HasSuffix(here, ".ts") {
		return there != "sw.ts" && there != "calc-worker.ts"
	}
	uses, known := scriptUses[here]
	if !known || here == "screens" && there == "screens" && screen(from) != screen(to) && screen(to) != sharedScreens {
		return false
	}
	return here == there || slices.Contains(uses, there)
}

// place is a file's folder in pwa/src, or its own name if it lies in none.
func place(file string) string {
	first, _, _ := strings.Cut(strings.TrimPrefix(file, "pwa/src/"), "/")
	return first
}

// screen is the folder of the screen that a file belongs to.
func screen(file string) string {
	name, _, _ := strings.Cut(strings.TrimPrefix(file, "pwa/src/screens/"), "/")
	return name
}

func isTest(file string) bool {
	return strings.HasSuffix(path.Base(file), ".test.ts")
}
