package journey

import (
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/evanw/esbuild/pkg/api"
)

// scriptResult is what pwa/src/ui/testing.ts says of one test.
type scriptResult struct {
	Name  string `json:"name"`
	Error string `json:"error"`
}

// TestScripts runs every *.test.ts of the app's source in the browser.
func TestScripts(t *testing.T) {
	browser := OpenBrowser(t)
	script := bundleTests(t)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/tests.js" {
			w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
			_, _ = w.Write(script)
			return
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprint(w, `<!doctype html><html lang="en"><head><link rel="icon" href="data:,"></head><body></body></html>`)
	}))
	t.Cleanup(server.Close)
	p := browser.Open(server.URL)
	results := Eval[[]scriptResult](p, `new Promise((resolve, reject) => {
		const script = document.createElement("script");
		script.src = "tests.js";
		script.onload = () => resolve(globalThis.tests.runAll());
		script.onerror = reject;
		document.head.append(script);
	})`)
	if len(results) == 0 {
		t.Fatal("no script test ran")
	}
	for _, result := range results {
		t.Run(result.Name, func(t *testing.T) {
			if result.Error != "" {
				t.Error(result.Error)
			}
		})
	}
}

// bundleTests puts all test files and the runner into one script, which sets globalThis.tests.
func bundleTests(t *testing.T) []byte {
	t.Helper()
	root := filepath.Join(moduleRoot(t), "pwa", "src")
	var entry strings.Builder
	err := fs.WalkDir(os.DirFS(root), ".", func(path string, _ fs.DirEntry, err error) error {
		if strings.HasSuffix(path, ".test.ts") {
			fmt.Fprintf(&entry, "import %q;\n", "./"+path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	entry.WriteString(`import { runAll as run } from "./ui/testing.ts";
		import { learn } from "./words/locale.ts";
		export const runAll = () => learn("later").then(run);`)
	built := api.Build(api.BuildOptions{
		Stdin:      &api.StdinOptions{Contents: entry.String(), ResolveDir: root, Loader: api.LoaderTS},
		Bundle:     true,
		Format:     api.FormatIIFE,
		GlobalName: "tests",
		Target:     api.ES2022,
		Charset:    api.CharsetUTF8,
		Loader:     map[string]api.Loader{".css": api.LoaderEmpty},
		Sourcemap:  api.SourceMapInline,
		Define: map[string]string{
			"__WORKER_URL__": `"worker.js"`, "__WASM_URL__": `"calc.wasm"`, "__VERSION__": `"test"`, "__FILES__": "[]",
		},
	})
	if len(built.Errors) > 0 {
		t.Fatalf("bundling the script tests: %v", built.Errors)
	}
	return built.OutputFiles[0].Contents
}
