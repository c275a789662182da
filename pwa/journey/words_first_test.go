package journey

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rimside/pwa/build/bundle"
)

// TestTheFirstScreenHasItsWords: what the app's first script says stands in the words that travel with it. A key that only the
// other places have would be no sentence yet.
func TestTheFirstScreenHasItsWords(t *testing.T) {
	modules, err := bundle.Split(moduleRoot(t), "pwa/src/main.ts", map[string]string{"__WORKER_URL__": `"w"`, "__WASM_URL__": `"c"`, "__VERSION__": `"t"`, "__FILES__": "[]"})
	if err != nil {
		t.Fatal(err)
	}
	const folder = "pwa/src/words/en/"
	var here, there []string
	files, err := filepath.Glob(filepath.Join(moduleRoot(t), folder, "*.ts"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no catalogue found: %v", err)
	}
	for _, file := range files {
		keys := &there
		if slices.Contains(modules.Begin, folder+filepath.Base(file)) {
			keys = &here
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, match := range keyLine.FindAllStringSubmatch(string(text), -1) {
			*keys = append(*keys, match[1])
		}
	}
	if len(here) == 0 || len(there) == 0 {
		t.Fatalf("the first script has %d keys and the rest %d: the test no longer fits how they are split", len(here), len(there))
	}
	for file, tokens := range sourceTokens(t) {
		if !slices.Contains(modules.Begin, "pwa/src/"+file) {
			continue
		}
		for i, token := range tokens {
			if token.kind == other || !inCallOfW(tokens, i) {
				continue
			}
			prefix, _, assembled := strings.Cut(token.text, "${")
			for _, key := range there {
				if key == token.text || assembled && strings.HasPrefix(key, prefix) {
					t.Errorf("%s says %q on the first screen; it belongs into the words that travel with the first script", file, key)
				}
			}
		}
	}
}
