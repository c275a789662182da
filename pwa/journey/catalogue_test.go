package journey

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"sync"
	"testing"
)

var (
	pieces = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	entry  = regexp.MustCompile(`(?m)^\s*"([^"]+)":\s*((?:"(?:[^"\\]|\\.)*"(?:\s*\+\s*)?)+),$`)
	forms  = regexp.MustCompile(`(?m)^\s*"([^"]+)":\s*\{\s*by: "(\w+)",\s*((?:\w+: "(?:[^"\\]|\\.)*",?\s*)+)\},$`)
	form   = regexp.MustCompile(`(\w+): ("(?:[^"\\]|\\.)*")`)
)

// words reads the word catalogue, so that the tests speak of the app in its own words. Of an entry with plural forms the
// key itself gives the form for many, and key#one the form for one.
func words(t testing.TB) map[string]string {
	t.Helper()
	return wordsIn(t, languageOf(t))
}

var spoken sync.Map // the name of a test to its language

// speak has a test's phones and words in another language than English.
func speak(t *testing.T, language string) {
	spoken.Store(t.Name(), language)
	t.Cleanup(func() { spoken.Delete(t.Name()) })
}

func languageOf(t testing.TB) string {
	if language, found := spoken.Load(t.Name()); found {
		return language.(string)
	}
	return "en"
}

// wordsIn is the catalogue of a language.
func wordsIn(t testing.TB, language string) map[string]string {
	t.Helper()
	found := map[string]string{}
	text := catalogueText(t, language)
	for _, match := range entry.FindAllStringSubmatch(text, -1) {
		var all string
		for _, piece := range pieces.FindAllString(match[2], -1) {
			all += unquoted(t, piece)
		}
		found[match[1]] = all
	}
	for _, match := range forms.FindAllStringSubmatch(text, -1) {
		for _, each := range form.FindAllStringSubmatch(match[3], -1) {
			name := match[1] + "#" + each[1]
			if each[1] == "other" {
				name = match[1]
			}
			found[name] = unquoted(t, each[2])
		}
	}
	if len(found) == 0 {
		t.Fatal("the catalogue cannot be read: the test no longer fits its form")
	}
	return found
}

func unquoted(t testing.TB, text string) string {
	t.Helper()
	plain, err := strconv.Unquote(text)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return plain
}

// catalogueText is the source of a language's catalogue: the files of its folder.
func catalogueText(t testing.TB, language string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(moduleRoot(t), "pwa", "src", "words", language, "*.ts"))
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
