package bundle

import (
	"slices"
	"strings"
	"testing"
)

// What the entry begins with is one script, whoever of the later ones uses a part of it; what is only used later is in none of it; and
// words, which the entry waits for, do not wait for the entry.
func TestWhatTheEntryBeginsWithIsOneScript(t *testing.T) {
	root := sourcesOf(t, map[string]string{
		"main.ts": "import { a } from './a.ts';\nimport { b } from './b.ts';\nimport { c } from './c.ts';\n" +
			"const words = (await import('./words/de.ts')).words;\nconsole.log(a, b, c, words);\nvoid import('./one.ts');\nvoid import('./two.ts');",
		"a.ts":        "export const a = document.title + 'first a';",
		"b.ts":        "export const b = document.title + 'first b';",
		"c.ts":        "export const c = document.title + 'first c';",
		"one.ts":      "import { a } from './a.ts';\nimport { d } from './d.ts';\nconsole.log(a, d, 'one');",
		"two.ts":      "import { a } from './a.ts';\nimport { b } from './b.ts';\nimport { d } from './d.ts';\nconsole.log(a, b, d, 'two');",
		"d.ts":        "export const d = document.title + 'later d';",
		"words/de.ts": "export const words = document.title + 'words';",
	})
	modules, err := Split(root, "pwa/src/main.ts", nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(modules.First) != 1 {
		t.Fatalf("the entry begins with %v, want one script", modules.First)
	}
	first := string(modules.Files[modules.First[0]])
	for _, wanted := range []string{"first a", "first b", "first c"} {
		if !strings.Contains(first, wanted) {
			t.Errorf("%q is not in the first script: %s", wanted, first)
		}
	}
	for name, text := range modules.Files {
		if name == modules.First[0] {
			continue
		}
		for _, wanted := range []string{"first a", "first b", "first c"} {
			if strings.Contains(string(text), wanted) {
				t.Errorf("%q is in %s too", wanted, name)
			}
		}
		if strings.Contains(string(text), `"words"`) && strings.Contains(string(text), modules.First[0]) {
			t.Errorf("the words wait for the first script: %s", text)
		}
	}
	for _, unwanted := range []string{"later d", `"one"`, `"two"`} {
		if strings.Contains(first, unwanted) {
			t.Errorf("%q is in the first script", unwanted)
		}
	}
	if !slices.Contains(modules.Begin, "pwa/src/a.ts") || slices.Contains(modules.Begin, "pwa/src/d.ts") {
		t.Errorf("said to begin with %v", modules.Begin)
	}
}
