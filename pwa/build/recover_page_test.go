package main

import (
	"os"
	"regexp"
	"testing"
)

// What stands on the repair page before its script has run is all that a phone shows where no script runs: it chooses no
// language, so it must say the same in each.
func TestTheRepairPageSpeaksEachLanguageWithoutItsScript(t *testing.T) {
	page, err := os.ReadFile("../src/recover.html")
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range []string{`<html lang="en"`, `<p>This page needs JavaScript and signal\.[^<]*</p>`, `<p lang="de">Diese Seite braucht JavaScript und Netz\.[^<]*</p>`} {
		if !regexp.MustCompile(part).Match(page) {
			t.Errorf("the page lacks %s", part)
		}
	}
}
