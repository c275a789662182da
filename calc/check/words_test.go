package check_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"rimside/calc/check"
)

// Every row is whole, short enough for a phone in gloves, and at a known station in walking order.
func TestRowsAreWholeAndShort(t *testing.T) {
	for _, moment := range check.Moments() {
		seen, last := map[string]bool{}, 0
		for _, c := range check.Ask(check.Bike{}, moment, []check.Event{on(1, "crash"), on(1, "transport"), fitted(1, "pads")}) {
			for what, text := range map[string]string{"title": c.Title, "look for": c.LookFor, "how": c.How, "limit": c.Limit, "source": c.Source} {
				most := map[string]int{"title": 36, "look for": 95, "how": 110, "limit": 75, "source": 70}[what]
				if n := utf8.RuneCountInString(text); n == 0 || n > most {
					t.Errorf("%s: %s has %d characters: %s", c.ID, what, n, text)
				}
				if strings.ContainsAny(text, "'\"") {
					t.Errorf("%s: a straight quote in %s", c.ID, text)
				}
			}
			if seen[c.ID] || len(c.ID) > 60 || !slices.Contains([]check.Severity{check.Note, check.Care, check.Stop}, c.Worst) {
				t.Errorf("%s: twice, too long for a record, or worst is %q", c.ID, c.Worst)
			}
			seen[c.ID] = true
			at := slices.Index(check.Stations(), c.Station)
			if at < last {
				t.Errorf("%s, %s: out of walking order", moment, c.ID)
			}
			last = at
		}
		if len(seen) == 0 {
			t.Errorf("nothing is asked at %s", moment)
		}
	}
	if got := check.Ask(check.Bike{}, "midnight", nil); len(got) != 0 {
		t.Errorf("an unknown moment asks %d", len(got))
	}
}

// Where something turns or may have splintered, the caution stands at the step.
func TestCautionsStandAtTheStep(t *testing.T) {
	turning, splintered := 0, 0
	for _, moment := range check.Moments() {
		for _, c := range check.Ask(check.Bike{}, moment, nil) {
			how := strings.ToLower(c.How)
			if strings.Contains(how, "spin") || strings.Contains(how, "turn once") || strings.Contains(how, "turn slowly") {
				turning++
				if !strings.Contains(how, "fingers clear") {
					t.Errorf("%s turns without a caution: %s", c.ID, c.How)
				}
			}
			if c.Source == "owner’s manual" && strings.Contains(c.ID, ".carbon_") {
				splintered++
				if !strings.Contains(how, "fail later") {
					t.Errorf("%s: %s", c.ID, c.How)
				}
			}
		}
	}
	if turning < 20 || splintered < 6 {
		t.Errorf("only %d and %d rows were looked at", turning, splintered)
	}
}
