package journey

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
)

var (
	familyLine = regexp.MustCompile(`(?m)^\s*// family: (\S+)$`)
	keyLine    = regexp.MustCompile(`(?m)^\s*"([^"]+)":`)
)

// TestWords holds the sources to the catalogue: every key that is used is there, every key that is there is used, keys
// are put together only where the catalogue allows a family of them, and what a person reads stands nowhere else.
func TestWords(t *testing.T) {
	text := catalogueText(t, "en")
	var keys, families []string
	for _, match := range keyLine.FindAllStringSubmatch(text, -1) {
		if slices.Contains(keys, match[1]) {
			t.Errorf("the catalogue has %q twice", match[1])
		}
		keys = append(keys, match[1])
	}
	for _, match := range familyLine.FindAllStringSubmatch(text, -1) {
		families = append(families, match[1])
	}
	read := words(t)
	for _, key := range keys {
		if _, found := read[key]; !found {
			t.Errorf("%q cannot be read: it is neither one plain string nor a set of plural forms", key)
		}
	}
	used := usedKeys(t)
	for key, file := range used.keys {
		if !slices.Contains(keys, key) {
			t.Errorf("%s uses %q, which the catalogue has not", file, key)
		}
	}
	for prefix, file := range used.families {
		if !slices.Contains(families, prefix) {
			t.Errorf("%s puts keys together after %q; the catalogue has no line // family: %s", file, prefix, prefix)
		}
	}
	for _, family := range families {
		if _, found := used.families[family]; !found {
			t.Errorf("no source puts keys together after %q any more", family)
		}
	}
	for _, key := range keys {
		inFamily := slices.ContainsFunc(families, func(family string) bool { return strings.HasPrefix(key, family) })
		if _, found := used.keys[key]; !found && !inFamily && !used.anywhere[key] {
			t.Errorf("nothing uses %q", key)
		}
	}
}

// TestWordsHaveOneHomeForFormats: numbers, days, lists and the order of names are written by pwa/src/words alone, and no case is
// changed for the look of it, which other languages do not do as English does.
func TestWordsHaveOneHomeForFormats(t *testing.T) {
	for file, tokens := range sourceTokens(t) {
		if strings.HasPrefix(file, "words/") {
			continue
		}
		for i, token := range tokens {
			if token.kind == other && (token.text == "Intl" || strings.HasPrefix(token.text, "toLocale") && !compared(tokens, i)) {
				t.Errorf("%s:%d: %s belongs into words/", file, token.line, token.text)
			}
		}
	}
}

// compared tells whether what was typed is only compared with a word, and not shown.
func compared(tokens []scriptToken, at int) bool {
	return len(tokens) > at+3 && strings.Trim(tokens[at+3].text, "=!") == ""
}

type usage struct {
	keys, families map[string]string // by key or prefix: a file that uses it
	anywhere       map[string]bool   // string literals of any kind: keys are also handed round as values of type Key
}

// usedKeys reads what the sources ask of the catalogue.
func usedKeys(t *testing.T) usage {
	t.Helper()
	used := usage{map[string]string{}, map[string]string{}, map[string]bool{}}
	for file, tokens := range sourceTokens(t) {
		for i, token := range tokens {
			if token.kind == literal {
				used.anywhere[token.text] = true
			}
			if token.kind != literal && token.kind != template || !inCallOfW(tokens, i) {
				continue
			}
			if prefix, _, assembled := strings.Cut(token.text, "${"); token.kind == template && assembled {
				used.families[prefix] = file
			} else {
				used.keys[token.text] = file
			}
		}
	}
	return used
}

// inCallOfW tells whether the token stands in the first argument of w(...), also as a branch of "a ? b : c".
func inCallOfW(tokens []scriptToken, at int) bool {
	depth := 0
	for i := at - 1; i >= 1; i-- {
		switch text := tokens[i].text; {
		case tokens[i].kind != other:
		case text == ")" || text == "]" || text == "}":
			depth++
		case depth > 0 && (text == "(" || text == "[" || text == "{"):
			depth--
		case text == "(":
			before := at > 0 && slices.Contains([]string{"(", "?", ":"}, tokens[at-1].text)
			return tokens[i-1].text == "w" && (i < 2 || tokens[i-2].text != ".") && before
		case depth == 0 && (text == "," || text == "{" || text == "[" || text == ";"):
			return false
		}
	}
	return false
}

// TestNoWordsOutsideTheCatalogue looks for text that a person would read among the arguments of el and svg, in text that
// is set, and in attributes that are read out.
func TestNoWordsOutsideTheCatalogue(t *testing.T) {
	for file, tokens := range sourceTokens(t) {
		for i, token := range tokens {
			if token.kind == other || !strings.ContainsFunc(withoutHoles(token.text), unicode.IsLetter) {
				continue
			}
			if isChild(tokens, i) || isSpoken(tokens, i) || isSet(tokens, i) {
				t.Errorf("%s:%d: %q is read by a person and belongs into the catalogue", file, token.line, token.text)
			}
		}
	}
}

var hole = regexp.MustCompile(`\$\{[^}]*\}`)

func withoutHoles(text string) string { return hole.ReplaceAllString(text, "") }

// isChild tells whether the token is, whole or as one outcome, a third or later argument of el or svg.
func isChild(tokens []scriptToken, at int) bool {
	if at == 0 || !slices.Contains([]string{",", "?", ":", "&", "|", "??", "+", "("}, tokens[at-1].text) {
		return false // compared with something, say
	}
	depth, commas := 0, 0
	for i := at - 1; i >= 1; i-- {
		if tokens[i].kind != other {
			continue
		}
		switch text := tokens[i].text; {
		case text == ")" || text == "]" || text == "}":
			depth++
		case depth > 0 && (text == "(" || text == "[" || text == "{"):
			depth--
		case depth == 0 && text == ",":
			commas++
		case depth == 0 && text == "(":
			return commas >= 2 && (tokens[i-1].text == "el" || tokens[i-1].text == "svg")
		case depth == 0 && (text == "{" || text == "[" || text == ";"):
			return false
		}
	}
	return false
}

// isSpoken tells whether the token is the value of an attribute that is shown or read out.
func isSpoken(tokens []scriptToken, at int) bool {
	if at < 2 || tokens[at-1].text != ":" {
		return false
	}
	return slices.Contains([]string{"aria-label", "aria-description", "aria-roledescription", "aria-valuetext", "title", "placeholder", "alt"}, tokens[at-2].text)
}

// isSet tells whether the token is put into the page as text: setText(node, "...") or node.textContent = "...".
func isSet(tokens []scriptToken, at int) bool {
	if at >= 2 && tokens[at-1].text == "=" && slices.Contains([]string{"textContent", "innerText", "ariaLabel"}, tokens[at-2].text) {
		return true
	}
	for i := at - 1; i >= 1 && i > at-8; i-- {
		if tokens[i].text == "(" {
			return tokens[i-1].text == "setText" && tokens[at-1].text == ","
		}
	}
	return false
}

// sourceTokens takes the app's scripts apart, catalogue and tests left out.
func sourceTokens(t *testing.T) map[string][]scriptToken {
	t.Helper()
	root := filepath.Join(moduleRoot(t), "pwa", "src")
	found := map[string][]scriptToken{}
	err := fs.WalkDir(os.DirFS(root), ".", func(path string, _ fs.DirEntry, err error) error {
		name := filepath.Base(path)
		if err != nil || !strings.HasSuffix(name, ".ts") || strings.HasSuffix(name, ".test.ts") ||
			strings.HasSuffix(name, ".d.ts") || strings.HasPrefix(path, "words/en") {
			return err
		}
		text, err := os.ReadFile(filepath.Join(root, path))
		found[path] = scriptTokens(string(text))
		return err
	})
	if err != nil || len(found) == 0 {
		t.Fatalf("no sources found: %v", err)
	}
	return found
}
