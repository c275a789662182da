package trust

import (
	"strconv"
	"strings"

	"rimside/server/words"
)

// language chooses, of the languages that the page speaks, the one that an Accept-Language header wants most; the first of
// two wanted alike. Without one it speaks, and for what cannot be read, it is English (RFC 9110, section 12.5.4).
func language(accepts string) string {
	chosen, most := words.Languages[0], 0.0
	for wanted := range strings.SplitSeq(accepts, ",") {
		tag, weight, _ := strings.Cut(wanted, ";")
		primary, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(tag)), "-")
		q := quality(weight)
		for _, spoken := range words.Languages {
			if primary == spoken && q > most {
				chosen, most = spoken, q
			}
		}
	}
	return chosen
}

// quality reads the weight of a wanted language, 0 to 1 (RFC 9110, section 12.4.2); none is 1, and one that is no weight 0.
func quality(parameter string) float64 {
	name, value, found := strings.Cut(parameter, "=")
	if !found && strings.TrimSpace(parameter) == "" {
		return 1
	}
	q, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
	if !strings.EqualFold(strings.TrimSpace(name), "q") || err != nil || !(q >= 0 && q <= 1) {
		return 0
	}
	return q
}
