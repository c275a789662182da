package cli

import (
	"errors"
	"flag"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rimside/server/words"
)

func TestEveryTextOfTheCommandIsSaidInEachLanguage(t *testing.T) {
	for _, each := range words.Missing(said) {
		t.Errorf("the command has no text for %s", each)
	}
	for key, text := range said {
		want := holes(text[0])
		for i, language := range words.Languages {
			if got := holes(text[i]); text[i] != "" && !slices.Equal(got, want) {
				t.Errorf("%s in %s takes the values %v, in %s %v", key, language, got, words.Languages[0], want)
			}
			if strings.HasSuffix(text[0], "\n") != strings.HasSuffix(text[i], "\n") || strings.Count(text[0], "`") != strings.Count(text[i], "`") {
				t.Errorf("%s in %s has other ends or marks than in %s", key, language, words.Languages[0])
			}
		}
	}
}

func holes(text string) []string {
	names := words.Holes(text)
	slices.Sort(names)
	return slices.Compact(names)
}

func TestTheCatalogueHoldsWhatTheCodeNamesAndNothingElse(t *testing.T) {
	files, err := fs.Glob(os.DirFS("."), "*.go")
	if err != nil {
		t.Fatal(err)
	}
	var source strings.Builder
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") || name == "said_words.go" {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		source.Write(text)
	}
	told := regexp.MustCompile(`(?:\.say|\.text|trouble|misused)\("([\w.]+)"|"(flag\.\w+)"|\{"(\w+)", \w+\},`).FindAllStringSubmatch(source.String(), -1)
	if len(told) < len(said)/2 {
		t.Fatalf("only %d texts were found in the code", len(told))
	}
	for _, found := range told {
		if key := found[1] + found[2] + found[3]; said[key][0] == "" {
			t.Errorf("the code says %q, which the catalogue lacks", key)
		}
	}
	for key := range said {
		if !strings.Contains(source.String(), `"`+key+`"`) {
			t.Errorf("nothing says %q", key)
		}
	}
}

func TestProblemsAreExplainedToTheirCause(t *testing.T) {
	cause := trouble("data.served", "dir", "home")
	whole := errors.Join(trouble("trust.cannot", "port", 7469, "why", cause), nil)
	if got := explain(whole, "de"); got != "die Seite, auf der Telefone diesem Server vertrauen lernen, braucht den Port 7469: "+explain(cause, "de") {
		t.Errorf("in German: %s", got)
	}
	if got := explain(whole, "en"); got != whole.Error() {
		t.Errorf("in English: %s", got)
	}
	deep := trouble("export.cannot", "why", fs.ErrPermission)
	if !errors.Is(deep, fs.ErrPermission) || !strings.HasSuffix(explain(deep, "de"), fs.ErrPermission.Error()) {
		t.Errorf("the cause is lost: %s", explain(deep, "de"))
	}
	if !errors.As(errors.Join(misused("misused.site")), new(usageError)) || errors.Is(misused("misused.site"), flag.ErrHelp) {
		t.Error("a wrong call is not known as one")
	}
}
