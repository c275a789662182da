package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"rimside/pwa"
)

// budget is what the app may weigh: what travels to a phone, and what it takes on the machine that serves it.
type budget struct {
	First struct { // what a phone fetches before it shows the first answer
		Scripts float64 `json:"js_css_br11_kb"`
		WASM    float64 `json:"wasm_br11_kb"`
	} `json:"to_the_first_answer"`
	Whole    float64 `json:"whole_app_js_css_br11_kb"` // all places, with the words of one language
	Binary   float64 `json:"binary_stripped_mb"`
	Resident float64 `json:"resident_mb"`
}

func readBudget(t *testing.T) budget {
	t.Helper()
	file, err := os.Open("budget.json")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var b budget
	decoder := json.NewDecoder(file)
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&b); err != nil {
		t.Fatal(err)
	}
	if b.First.WASM <= 0 || b.First.Scripts <= 0 || b.Whole <= 0 || b.Binary <= 0 || b.Resident <= 0 {
		t.Fatalf("the budget lacks a limit: %+v", b)
	}
	return b
}

// needBuild skips a measurement that needs the built app, but never where a whole run is asked for.
func needBuild(t *testing.T) {
	t.Helper()
	if pwa.Version(pwa.Dist()) != "" {
		return
	}
	const message = "the app is not built, so there is nothing to measure: run go generate ./... first"
	if os.Getenv("CI") != "" {
		t.Fatal(message)
	}
	t.Skip(message)
}

func within(t *testing.T, what string, got, limit float64, unit string) {
	t.Helper()
	t.Logf("%s: %.1f %s of %.0f %s", what, got, unit, limit, unit)
	if got <= 0 {
		t.Errorf("%s: nothing was measured", what)
	}
	if got > limit {
		t.Errorf("%s: %.1f %s is over the budget of %.0f %s in pwa/build/budget.json", what, got, unit, limit, unit)
	}
}

func TestWhatTravelsIsWithinTheBudget(t *testing.T) {
	needBuild(t)
	limits := readBudget(t)
	out := filepath.Join(t.TempDir(), "release")
	if said, err := runBuilder(".", "-release", "-out", out); err != nil {
		t.Fatalf("building the release: %v\n%s", err, said)
	}
	page, err := os.ReadFile(filepath.Join(out, "index.html"))
	if err != nil {
		t.Fatal(err)
	}
	var wasm, first, whole int64
	for name, size := range sizes(t, out) {
		name = strings.TrimSuffix(strings.TrimPrefix(name, filepath.ToSlash(out)+"/"), ".br")
		switch path.Ext(name) {
		case ".wasm":
			wasm += size
		case ".js", ".css":
			whole += size
			if neededFirst(string(page), name) {
				first += size
			}
		}
	}
	within(t, "to the first answer, WASM as brotli 11", float64(wasm)/1e3, limits.First.WASM, "kB")
	within(t, "to the first answer, scripts and styles as brotli 11", float64(first)/1e3, limits.First.Scripts, "kB")
	within(t, "whole app, scripts and styles as brotli 11", float64(whole)/1e3, limits.Whole, "kB")
	if first < whole/4 || first >= whole {
		t.Errorf("%d of %d bytes of scripts are needed first: either they were not found, or no place is loaded later", first, whole)
	}
}

// neededFirst tells what the page names, and the worker that its script starts at once.
func neededFirst(page, name string) bool {
	return strings.Contains(page, `"`+name+`"`) || path.Base(name) == "calc-worker.js"
}

// sizes maps each file of a build to what is sent for it: its brotli copy, or itself where it has none.
func sizes(t *testing.T, dir string) map[string]int64 {
	t.Helper()
	all := map[string]int64{}
	err := filepath.WalkDir(dir, func(file string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		facts, err := entry.Info()
		all[filepath.ToSlash(file)] = facts.Size()
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name := range all {
		if _, smaller := all[name+".br"]; smaller {
			delete(all, name)
		}
	}
	return all
}

func TestTheProgramIsWithinTheBudget(t *testing.T) {
	needBuild(t)
	limits := readBudget(t)
	binary := strippedBinary(t)
	facts, err := os.Stat(binary)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "stripped binary", float64(facts.Size())/1e6, limits.Binary, "MB")
	if runtime.GOOS != "linux" {
		t.Skip("resident memory is read from /proc, which this system does not have; the binary's size was checked")
	}
	within(t, "resident memory after the first answers", residentMB(t, binary), limits.Resident, "MB")
}

// strippedBinary builds the server the way it is handed out.
func strippedBinary(t *testing.T) string {
	t.Helper()
	binary := filepath.Join(t.TempDir(), "rimside")
	command := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", binary, "rimside/server")
	command.Env = append(os.Environ(), "CGO_ENABLED=0")
	if said, err := command.CombinedOutput(); err != nil {
		t.Fatalf("building the server: %v\n%s", err, said)
	}
	return binary
}
