package main

import (
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/pwa"
)

// module lays out a small module with every input of a build and returns its root.
func module(t *testing.T) string {
	t.Helper()
	root := t.TempDir()
	if err := os.CopyFS(root, os.DirFS(filepath.Join("testdata", "module"))); err != nil {
		t.Fatal(err)
	}
	// Kept under other names, as the real module would take them for its own.
	for from, to := range map[string]string{"go.mod.txt": "go.mod", "calc/wasm/main.go.txt": "calc/wasm/main.go"} {
		if err := os.Rename(filepath.Join(root, from), filepath.Join(root, to)); err != nil {
			t.Fatal(err)
		}
	}
	put(t, root, "pwa/dist/.keep", "")
	return root
}

func put(t *testing.T, root, name, content string) {
	t.Helper()
	file := filepath.Join(root, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
}

// embedded reads a whole tree of files, with the plain form of each that is there as brotli alone.
func embedded(t *testing.T, files fs.FS) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		content, err := fs.ReadFile(files, name)
		all[name] = string(content)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, small := range maps.Clone(all) {
		plain, isSmall := strings.CutSuffix(name, ".br")
		if _, there := all[plain]; isSmall && !there {
			whole, err := pwa.Unpack([]byte(small))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			all[plain] = string(whole)
		}
	}
	return all
}

// build builds the module around the folder here and returns the files, wherever it put them.
func build(t *testing.T, here, out string) map[string]string {
	t.Helper()
	if said, err := runBuilder(here, "-out", out); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return embedded(t, os.DirFS(out))
}

// generate builds a module's root the way go generate does.
func generate(t *testing.T, root string) map[string]string {
	t.Helper()
	if said, err := runBuilder(filepath.Join(root, "pwa")); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return embedded(t, os.DirFS(filepath.Join(root, "pwa", "dist")))
}

// named returns the path of the one file with that name.
func named(t *testing.T, files map[string]string, name string) string {
	t.Helper()
	for path := range files {
		if strings.HasSuffix(path, "/"+name) {
			return path
		}
	}
	t.Fatalf("no %s among %v", name, slices.Sorted(maps.Keys(files)))
	return ""
}

func TestABuildHoldsWhatTheServerAndThePhoneNeed(t *testing.T) {
	root := module(t)
	files := generate(t, root)
	version := files["version.json"]
	if !strings.HasPrefix(version, `{"version":"`) || len(strings.TrimSpace(version)) != len(`{"version":"`)+12+len(`"}`) {
		t.Fatalf("version.json is %q", version)
	}
	version = version[len(`{"version":"`):][:12]
	main, css := named(t, files, "main.js"), named(t, files, "main.css")
	worker, wasm := named(t, files, "calc-worker.js"), strings.TrimSuffix(named(t, files, "calc.wasm.br"), ".br")
	for path, texts := range map[string][]string{
		"index.html":         {main, css, `data-version="` + version + `"`, "icon-180.png", "app.webmanifest"},
		"recover/index.html": {`src="../` + named(t, files, "recover.js") + `"`, version},
		"app.webmanifest":    {named(t, files, "icon-maskable-512.png")},
		main:                 {worker, wasm},
		worker:               {"importObject"}, // out of the toolchain's own script
		"sw.js":              {version, `"./"`, main, css, worker, wasm, named(t, files, "icon-192.png"), "app.webmanifest"},
		css:                  {"body"},
	} {
		for _, text := range texts {
			if !strings.Contains(files[path], text) {
				t.Errorf("%s lacks %q: %.400s", path, text, files[path])
			}
		}
		if strings.Contains(files[path], "{{") && path != worker {
			t.Errorf("%s has a hole left: %.400s", path, files[path])
		}
	}
	if strings.Contains(files["sw.js"], ".br") || strings.Contains(files["sw.js"], "recover") {
		t.Errorf("the worker keeps what no page asks for: %s", files["sw.js"])
	}
	stored, err := os.ReadDir(filepath.Join(root, "pwa", "dist", filepath.FromSlash(path.Dir(worker))))
	if err != nil || len(stored) != 1 || stored[0].Name() != path.Base(worker)+".br" {
		t.Errorf("the worker is stored as %v (%v): forms that few clients want would make the server's binary a tenth larger", stored, err)
	}
	for _, path := range []string{wasm + ".br", worker + ".br", "sw.js", "sw.js.br", "index.html", ".keep"} {
		if _, found := files[path]; !found {
			t.Errorf("%s is missing", path)
		}
	}
}

func TestTheSameSourcesGiveTheSameBuildAnywhere(t *testing.T) {
	first := generate(t, module(t))
	deeper := filepath.Join(module(t), "pwa", "src")
	if second := build(t, deeper, filepath.Join(t.TempDir(), "out")); !maps.Equal(without(first, ".keep"), second) {
		t.Error("the build depends on where it is made")
	}
}

func without(files map[string]string, name string) map[string]string {
	rest := maps.Clone(files)
	delete(rest, name)
	return rest
}

func TestAChangeGivesAnotherVersionAndLeavesNothingBehind(t *testing.T) {
	root := module(t)
	first := generate(t, root)
	for name, content := range map[string]string{
		"pwa/src/main.ts":    "import './main.css'; document.title = 'changed' + __WORKER_URL__ + __WASM_URL__;",
		"pwa/src/main.css":   "body { color: green }",
		"pwa/src/shell.html": "<!doctype html><head></head>{{version}}{{main}}{{css}}",
	} {
		put(t, root, name, content)
		next := generate(t, root)
		if next["version.json"] == first["version.json"] {
			t.Errorf("%s changed, the version did not", name)
		}
		first = next
	}
	scripts := 0
	for name := range first {
		if strings.HasSuffix(name, "main.js") {
			scripts++
		}
	}
	if scripts != 1 {
		t.Errorf("%d main scripts are left, want the last one", scripts)
	}
	put(t, root, "pwa/src/sw.ts", "console.log(__VERSION__, __FILES__.length)")
	if next := generate(t, root); next["sw.js"] == first["sw.js"] || next["version.json"] != first["version.json"] {
		t.Error("the service worker must change by itself, as it is not part of the version")
	}
}

func TestCompressedCopiesAreTakenOverOnlyWhenWhole(t *testing.T) {
	root := module(t)
	first := generate(t, root)
	worker := named(t, first, "calc-worker.js")
	best, err := shrinkBrotli([]byte(first[worker]), true)
	if err != nil || string(best) == first[worker+".br"] {
		t.Fatalf("both levels give the same copy, or %v", err)
	}
	for content, want := range map[string]string{
		string(best):                  string(best),        // from a release: nothing to gain
		string(best[:len(best)/2]):    first[worker+".br"], // from an interrupted build
		first[worker]:                 first[worker+".br"], // not compressed at all
		first["index.html.br"]:        first[worker+".br"], // of another file
		string(append(best, best...)): first[worker+".br"], // with something after it
	} {
		put(t, root, "pwa/dist/"+worker+".br", content)
		if again := generate(t, root); again[worker+".br"] != want {
			t.Errorf("a copy of %d bytes at hand: the build has %d bytes, want %d", len(content), len(again[worker+".br"]), len(want))
		}
	}
}

func TestMissingOrBrokenInputsAreNamed(t *testing.T) {
	for name, test := range map[string]struct{ change, content, want string }{
		"no shell":             {"pwa/src/shell.html", "", "pwa/src/shell.html"},
		"no worker":            {"pwa/src/calc-worker.ts", "", "pwa/src/calc-worker.ts"},
		"no service worker":    {"pwa/src/sw.ts", "", "pwa/src/sw.ts"},
		"no manifest":          {"pwa/src/app.webmanifest.json", "", "app.webmanifest.json"},
		"no calculations":      {"calc/wasm/main.go", "", "calc/wasm"},
		"broken calculations":  {"calc/wasm/main.go", "package main\nfunc main() { nothing() }", "main.go:2"},
		"hole without a value": {"pwa/src/shell.html", "{{nonsense}}", "{{nonsense}}"},
		"broken manifest":      {"pwa/src/app.webmanifest.json", "{", "app.webmanifest.json"},
		"broken script":        {"pwa/src/main.ts", "import './main.css';\nlet = ;", "pwa/src/main.ts:2"},
		"import of nothing":    {"pwa/src/main.ts", "import './missing.ts';", "missing.ts"},
		"no style sheet":       {"pwa/src/main.ts", "console.log(1)", "style sheet"},
	} {
		t.Run(name, func(t *testing.T) {
			root := module(t)
			if test.content != "" {
				put(t, root, test.change, test.content)
			} else if err := os.Remove(filepath.Join(root, filepath.FromSlash(test.change))); err != nil {
				t.Fatal(err)
			}
			said, err := runBuilder(root)
			if err == nil || !strings.HasPrefix(said, "build: ") || !strings.Contains(said, test.want) {
				t.Errorf("%v: %q, want a failure that names %s", err, said, test.want)
			}
			if left := embedded(t, os.DirFS(filepath.Join(root, "pwa", "dist"))); len(left) != 1 {
				t.Errorf("a build that failed left %v", slices.Sorted(maps.Keys(left)))
			}
		})
	}
}

func TestOnlyABuildIsReplaced(t *testing.T) {
	out := t.TempDir()
	put(t, out, "letter.txt", "dear")
	if said, err := runBuilder(module(t), "-out", out); err == nil || !strings.Contains(said, "empty folder") {
		t.Errorf("%v: %q, want a failure that asks for an empty folder", err, said)
	}
	if left := embedded(t, os.DirFS(out)); left["letter.txt"] != "dear" || len(left) != 1 {
		t.Errorf("the folder now holds %v", left)
	}
}

func TestOutsideACheckoutItSaysSo(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "go.mod", "module other\n")
	if said, err := runBuilder(dir); err == nil || !strings.Contains(said, "checkout") {
		t.Errorf("%v: %q, want a failure that says where to run it", err, said)
	}
}
