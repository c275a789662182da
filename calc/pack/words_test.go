package pack_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"rimside/calc/pack"
)

var stages = []string{"write_down", "drivetrain", "pedals", "front_wheel", "rear_wheel", "rotors", "derailleur", "seatpost", "bars", "electrics", "protect"}

var arrivalStages = []string{
	"rotors", "derailleur", "front_wheel", "rear_wheel", "stem", "bars", "seatpost", "pedals", "tyres", "gears", "brakes", "last_look",
}

// Stages stand in the order of the work, each in one piece; texts are whole sentences, short enough for a phone in gloves.
func TestStepsAreWholeAndShort(t *testing.T) {
	for name, build := range builds {
		for _, way := range pack.Ways() {
			a := pack.Plan(build, pack.Way(way), "", nil)
			for i, list := range [][]pack.Step{a.Steps, a.Arrival} {
				order, last := [][]string{stages, arrivalStages}[i], 0
				for _, s := range list {
					if at := slices.Index(order, s.Stage); at < last {
						t.Errorf("%s, %s: %s stands in %s, out of order", way, name, s.ID, s.Stage)
					} else {
						last = at
					}
					if n := utf8.RuneCountInString(s.Text); n < 40 || n > 265 || len(s.ID) > 60 {
						t.Errorf("%s, %s: %s has %d characters: %s", way, name, s.ID, n, s.Text)
					}
					if strings.ContainsAny(s.Text, "'\"") || strings.Contains(s.Text, "  ") || !strings.ContainsAny(s.Text[len(s.Text)-1:], ".?") {
						t.Errorf("%s, %s: %s", way, s.ID, s.Text)
					}
					if low := strings.ToLower(s.Text); strings.Contains(low, "spin ") && !strings.Contains(low, "fingers clear") {
						t.Errorf("%s turns without a caution: %s", s.ID, s.Text)
					}
				}
			}
		}
	}
}
