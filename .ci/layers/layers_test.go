// Package layers_test keeps who may import whom. The rules are written down here and nowhere else in code.
package layers_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"rimside/pwa/build/bundle"
	"rimside/pwa/build/contract"
)

// TestMain looks at the whole module, from its root.
func TestMain(m *testing.M) {
	if err := os.Chdir("../.."); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// graph maps whoever imports to what it imports.
type graph map[string][]string

// check returns a line for every import that the rule forbids, and for every importer that it does not know.
func (g graph) check(rule func(from, to string) bool) []string {
	var wrong []string
	for from, imports := range g {
		for _, to := range imports {
			if !rule(from, to) {
				wrong = append(wrong, from+" must not import "+to)
			}
		}
	}
	slices.Sort(wrong)
	return slices.Compact(wrong)
}

func TestGoLayers(t *testing.T) {
	packages := listPackages(t, nil, "./...")
	// What is compiled for the browser only is not listed otherwise.
	for from, imports := range listPackages(t, []string{"GOOS=js", "GOARCH=wasm"}, "./calc/...") {
		packages[from] = append(packages[from], imports...)
	}
	for _, needed := range []string{"rimside/calc/registry", "rimside/calc/wasm", "rimside/server/web", "rimside/pwa/build"} {
		if len(packages[needed]) == 0 {
			t.Errorf("no imports of %s are known: the rules were not put to the test", needed)
		}
	}
	for _, wrong := range packages.check(goRule) {
		t.Error(wrong)
	}
}

func TestScriptLayers(t *testing.T) {
	if err := contract.Write("."); err != nil { // not committed, and the graph is to be whole on a clean clone too
		t.Fatal(err)
	}
	files, err := bundle.Graph(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, needed := range []string{"pwa/src/main.ts", "pwa/src/log/db/draft.ts", "pwa/src/calc-worker.ts"} {
		if len(files[needed]) == 0 {
			t.Errorf("no imports of %s are known: the rules were not put to the test", needed)
		}
	}
	for _, wrong := range graph(files).check(scriptRule) {
		t.Error(wrong)
	}
}

// The router is a choice that one file knows of.
func TestOnlyTheRoutesKnowTheRouter(t *testing.T) {
	const routes = "server/web/routes.go"
	said, err := exec.Command("git", "ls-files", "--cached", "--others", "--exclude-standard", "*.go").Output()
	if err != nil {
		t.Skipf("the files are listed by git, which does not work here: %v", err)
	}
	for file := range strings.FieldsSeq(string(said)) {
		text, err := os.ReadFile(file)
		if errors.Is(err, os.ErrNotExist) {
			continue // removed, but not committed yet
		}
		if err != nil {
			t.Fatal(err)
		}
		if uses := bytes.Contains(text, []byte(`"github.com/`+`gorilla/mux"`)); uses != (file == routes) {
			t.Errorf("%s imports the router: %v; only %s does", file, uses, routes)
		}
	}
}

// listPackages asks the toolchain which package imports which, tests left out.
func listPackages(t *testing.T, env []string, pattern string) graph {
	t.Helper()
	command := exec.Command("go", "list", "-json=ImportPath,Imports", pattern)
	command.Env = append(os.Environ(), env...)
	command.Stderr = os.Stderr
	said, err := command.Output()
	if err != nil {
		t.Fatalf("go list %s: %v", pattern, err)
	}
	packages := graph{}
	for decoder := json.NewDecoder(bytes.NewReader(said)); ; {
		var listed struct {
			ImportPath string
			Imports    []string
		}
		if err := decoder.Decode(&listed); errors.Is(err, io.EOF) {
			return packages
		} else if err != nil {
			t.Fatal(err)
		}
		packages[listed.ImportPath] = listed.Imports
	}
}
