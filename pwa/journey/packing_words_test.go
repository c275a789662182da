package journey

import (
	"slices"
	"strings"
	"testing"

	"rimside/calc/pack"
)

// Every code that packing answers with has words, and no words are left for a code that is gone.
func TestEveryPackingCodeHasWords(t *testing.T) {
	in := words(t)
	for family, codes := range map[string][]string{
		"step.": pack.StepIDs(), "stage.": pack.Stages(), "tool.": pack.Tools(), "note.": pack.Notes(), "goodWhy.": pack.Whys(), "good.": pack.GoodKinds(),
		"asBuilt.": pack.AsBuilt(), "packAsk.": pack.Questions(),
	} {
		others := map[string]bool{"good.where": true, "good.parcel": true, "good.dated": true, "packAsk.quickRelease": true, "packAsk.throughAxle": true}
		for _, code := range codes {
			if code != "legs_us" && in[family+code] == "" {
				t.Errorf("%s%s has no words", family, code)
			}
		}
		for key := range in {
			if code, mine := strings.CutPrefix(key, family); mine && !others[key] && !slices.Contains(codes, code) {
				t.Errorf("%s is no code of packing", key)
			}
		}
	}
}

// A step's name is short enough to be read at arm's length: five words.
func TestStepNamesAreShort(t *testing.T) {
	in := words(t)
	for _, id := range pack.StepIDs() {
		if name := in["step."+id]; len(strings.Fields(name)) > 6 || len([]rune(name)) > 32 {
			t.Errorf("%s is called %q", id, name)
		}
	}
}
