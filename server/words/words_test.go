package words

import (
	"slices"
	"testing"
)

func TestTheEnvironmentChoosesTheLanguage(t *testing.T) {
	for _, test := range []struct {
		env  map[string]string
		want string
	}{
		{nil, "en"},
		{map[string]string{"LANG": "C"}, "en"},
		{map[string]string{"LANG": "C.UTF-8"}, "en"},
		{map[string]string{"LANG": "en_GB.UTF-8"}, "en"},
		{map[string]string{"LANG": "de"}, "de"},
		{map[string]string{"LANG": "de_DE.UTF-8"}, "de"},
		{map[string]string{"LANG": "de-CH"}, "de"},
		{map[string]string{"LANG": "de_AT@euro"}, "de"},
		{map[string]string{"LANG": "de.UTF-8"}, "de"},
		{map[string]string{"LANG": "den_CA"}, "en"},
		{map[string]string{"LANG": "fr_FR"}, "en"},
		{map[string]string{"LC_MESSAGES": "de_DE", "LANG": "C"}, "de"},
		{map[string]string{"LC_ALL": "C", "LC_MESSAGES": "de_DE", "LANG": "de_DE"}, "en"},
		{map[string]string{"LC_ALL": "", "LC_MESSAGES": "", "LANG": "de_DE"}, "de"},
		{map[string]string{"LC_ALL": "fr_FR", "LANG": "de_DE"}, "en"},
	} {
		env := func(name string) (string, bool) { value, set := test.env[name]; return value, set }
		if got := OfEnvironment(env); got != test.want {
			t.Errorf("%v: %s, want %s", test.env, got, test.want)
		}
	}
}

func TestTextsTakeNamedValues(t *testing.T) {
	for _, test := range []struct {
		text   string
		values []any
		want   string
	}{
		{"in {data}: {file}", []any{"file", "a{data}b", "data", "home"}, "in home: a{data}b"},
		{"{n|Eintrag ist|Einträge sind} neu", []any{"n", 1}, "1 Eintrag ist neu"},
		{"{n|Eintrag ist|Einträge sind} neu", []any{"n", 0}, "0 Einträge sind neu"},
		{"{n|Eintrag ist|Einträge sind} neu", []any{"n", 21}, "21 Einträge sind neu"},
		{"{lost}", nil, "{lost}"},
	} {
		if got := Fill(test.text, test.values...); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

func TestWhatALanguageLacksIsListed(t *testing.T) {
	lacks := Missing(map[string]Text{"whole": {"a", "b"}, "half": {"a"}})
	if !slices.Equal(lacks, []string{"half: de"}) {
		t.Errorf("%v", lacks)
	}
	if got := (Text{"a"}).In("de"); got != "a" {
		t.Errorf("a text without German says %q", got)
	}
}
