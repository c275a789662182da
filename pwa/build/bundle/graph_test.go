package bundle

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func sourcesOf(t *testing.T, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		file := filepath.Join(root, "pwa", "src", filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

// The bundler forgets imports of types and never sees a file that no entry leads to; the graph holds them all the same.
func TestGraphSeesEveryKindOfImport(t *testing.T) {
	root := sourcesOf(t, map[string]string{
		"main.ts":         "import './main.css';\nimport { a } from './log/a.ts';\nconsole.log(a);\nvoid import('./later.ts');",
		"main.css":        "body { color: black }",
		"later.ts":        "export * from './log/a.ts';",
		"log/a.ts":        "import type { B } from '../ui/b.ts';\nexport const a: B = 1;",
		"log/stray.ts":    "import { type B } from \"../ui/b.ts\";\nimport {\n  unused,\n} from '../ui/c.ts';\nexport const s: B = 2;",
		"log/typed.ts":    "export type T = import('../ui/b').B;",
		"ui/b.ts":         "export type B = number;",
		"ui/c.ts":         "export const unused = 1;",
		"calc-worker.ts":  "import 'wasm_exec.js';",
		"declarations.ts": "export type { B } from './ui/b.ts';",
		"x.d.ts":          "declare module '*.css';",
	})
	got, err := Graph(root)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{
		"main.ts": "later.ts log/a.ts main.css", "main.css": "", "later.ts": "log/a.ts", "log/a.ts": "ui/b.ts",
		"log/stray.ts": "ui/b.ts ui/c.ts", "log/typed.ts": "ui/b.ts", "ui/b.ts": "", "ui/c.ts": "", "calc-worker.ts": "",
		"declarations.ts": "ui/b.ts",
	}
	for name, imports := range want {
		list := strings.ReplaceAll(strings.Join(got["pwa/src/"+name], " "), "pwa/src/", "")
		if _, found := got["pwa/src/"+name]; !found || list != imports {
			t.Errorf("%s imports %q, want %q", name, list, imports)
		}
	}
	if len(got) != len(want) {
		t.Errorf("the graph knows %v", slices.Sorted(maps.Keys(got)))
	}
}

func TestScriptIsAClassicScriptForOlderPhones(t *testing.T) {
	root := sourcesOf(t, map[string]string{
		"main.ts":  "import './main.css';\nexport const name: string = __NAME__;\n/*! legal */\nconsole.log(name ?? 'none');\nclass A { static { console.log(1); } accessor = 1; }\nnew A();",
		"main.css": "a { color: red; & b { color: blue } }",
	})
	result, err := Script(root, "pwa/src/main.ts", map[string]string{"__NAME__": `"filled in"`})
	if err != nil {
		t.Fatal(err)
	}
	script, style := string(result.Script), string(result.Style)
	for _, unwanted := range []string{"export", "__NAME__", "legal", "sourceMappingURL", "\n\n"} {
		if strings.Contains(script, unwanted) {
			t.Errorf("the script holds %q: %s", unwanted, script)
		}
	}
	if !strings.Contains(script, "filled in") || !strings.HasPrefix(script, `"use strict";(()=>`) {
		t.Errorf("not a strict classic script with its value: %s", script)
	}
	if strings.Contains(style, "&") || !strings.Contains(style, "a b{") {
		t.Errorf("nested rules are left, which browsers of the oldest kind ignore: %s", style)
	}
}

func TestProblemsNameTheirPlace(t *testing.T) {
	root := sourcesOf(t, map[string]string{"main.ts": "\nlet = 1;"})
	if _, err := Script(root, "pwa/src/main.ts", nil); err == nil || !strings.Contains(err.Error(), "pwa/src/main.ts:2:") {
		t.Errorf("error %v, want the file and line", err)
	}
	if _, err := Script(root, "pwa/src/other.ts", nil); err == nil || !strings.Contains(err.Error(), "pwa/src/other.ts is needed") {
		t.Errorf("error %v, want the file that is missing", err)
	}
}
