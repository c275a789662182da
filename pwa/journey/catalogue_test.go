package journey

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
)

var entry = regexp.MustCompile(`(?m)^\s*"([^"]+)":\s*((?:"(?:[^"\\]|\\.)*"(?:\s*\+\s*)?)+),$`)

// words reads the word catalogue, so that the tests speak of the app in its own words.
func words(t testing.TB) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, match := range entry.FindAllStringSubmatch(catalogueText(t), -1) {
		var all string
		for _, piece := range regexp.MustCompile(`"(?:[^"\\]|\\.)*"`).FindAllString(match[2], -1) {
			one, err := strconv.Unquote(piece)
			if err != nil {
				t.Fatalf("%s: %v", match[1], err)
			}
			all += one
		}
		found[match[1]] = all
	}
	if len(found) == 0 {
		t.Fatal("the catalogue cannot be read: the test no longer fits its form")
	}
	return found
}

// catalogueText is the source of the English catalogue: the files of its folder.
func catalogueText(t testing.TB) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(moduleRoot(t), "pwa", "src", "words", "en", "*.ts"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no catalogue found: %v", err)
	}
	var all string
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all += string(text) + "\n"
	}
	return all
}
