package cli_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestTheCommandSpeaksTheLanguageOfItsEnvironment(t *testing.T) {
	home := t.TempDir()
	data, file := filepath.Join(home, "data"), filepath.Join(home, "book.ndjson")
	begin := filepath.Join(home, "begin.ndjson")
	if err := os.WriteFile(begin, []byte(`{"rimside":1,"book":"`+strings.Repeat("ab", 16)+"\"}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, _, complaint := finish(t, program(t, nil, "import", "-data", data, begin)); code != 0 {
		t.Fatal(complaint)
	}
	for _, test := range []struct {
		args            []string
		english, german string
	}{
		{[]string{"help"}, "usage: rimside [command] [flags]", "Aufruf: rimside [Befehl] [Optionen]"},
		{[]string{"help"}, "  -data DIR        keep the book's file in the folder DIR;", "  -data DIR        die Datei des Buchs im Ordner DIR halten;"},
		{[]string{"pair", "-h"}, "or set RIMSIDE_DATA", "oder setz RIMSIDE_DATA"},
		{[]string{"sevre"}, `rimside: there is no command "sevre"; see rimside help`, `rimside: es gibt keinen Befehl "sevre"; siehe rimside help`},
		{[]string{"site"}, "site needs the one folder", "site braucht den einen Ordner"},
		{[]string{"-behind-proxy"}, "-behind-proxy needs -name HOST", "-behind-proxy braucht -name HOST"},
		{[]string{"-addr", "192.0.2.1:7467"}, "cannot listen on 192.0.2.1:7467", "auf 192.0.2.1:7467 lässt sich nicht lauschen"},
		{[]string{"verify", "-data", home}, "there is no book in " + home, "in " + home + " ist kein Buch"},
		{[]string{"pair", "-data", data}, "good for one phone until", "gilt für ein Telefon bis"},
		{[]string{"export", "-data", data, file}, "The book in " + data + " is exported to " + file, "Das Buch in " + data + " ist nach " + file + " exportiert"},
		{[]string{"import", "-data", data, file}, "0 entries are new here, 0 were known", "0 Einträge sind hier neu, 0 waren bekannt"},
		{[]string{"verify", "-data", data}, "is sound: 0 entries, 0 records, 0 photos", "ist in Ordnung: 0 Einträge, 0 Datensätze, 0 Fotos"},
		{[]string{"erasures", "-data", data}, "No erasures wait.", "Nichts wartet auf das Löschen."},
		{[]string{"backup", "-data", data, file + ".tar"}, "is backed up in", "gesichert: Bewahr die Datei"},
	} {
		for _, each := range []struct{ lang, want, not string }{
			{"C", test.english, test.german}, {"de_DE.UTF-8", test.german, test.english},
		} {
			args := test.args
			if args[0] == "backup" {
				args = append(args[:len(args)-1:len(args)-1], file+each.lang)
			}
			_, stdout, stderr := finish(t, program(t, []string{"LC_ALL=", "LC_MESSAGES=", "LANG=" + each.lang}, args...))
			if all := stdout + stderr; !strings.Contains(all, each.want) || strings.Contains(all, each.not) {
				t.Errorf("LANG=%s rimside %s lacks %q: %s", each.lang, strings.Join(args, " "), each.want, all)
			}
		}
	}
}
