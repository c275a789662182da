package web

import (
	"strconv"
	"strings"
)

// chooseEncoding picks the variant that the Accept-Encoding header rates highest, the smaller one where it rates two
// alike, and the plain one when it takes none of them.
func chooseEncoding(header string, has func(encoding string) bool) string {
	rates := parseRates(header)
	best, bestRate := "identity", rateOf(rates, "identity")
	for i := len(encodings) - 1; i >= 0; i-- {
		name := encodings[i].name
		if !has(name) {
			continue
		}
		if rate := rateOf(rates, name); rate > 0 && rate >= bestRate {
			best, bestRate = name, rate
		}
	}
	return best
}

// rateOf is how much a client likes an encoding, from 0 (refused, or not named) to 1. Plain bytes may go to anybody all
// the same; not being named only puts them last.
func rateOf(rates map[string]float64, name string) float64 {
	if rate, found := rates[name]; found {
		return rate
	}
	if rate, found := rates["*"]; found {
		return rate
	}
	return 0
}

// parseRates reads "br;q=0.8, gzip" into a rate for each name. Nonsense counts as refused.
func parseRates(header string) map[string]float64 {
	rates := map[string]float64{}
	for item := range strings.SplitSeq(header, ",") {
		name, parameters, _ := strings.Cut(item, ";")
		name = strings.ToLower(strings.TrimSpace(name))
		if name == "x-gzip" {
			name = "gzip"
		}
		if name != "" {
			rates[name] = parseRate(parameters)
		}
	}
	return rates
}

func parseRate(parameters string) float64 {
	for parameter := range strings.SplitSeq(parameters, ";") {
		name, value, _ := strings.Cut(strings.TrimSpace(parameter), "=")
		if !strings.EqualFold(strings.TrimSpace(name), "q") {
			continue
		}
		rate, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
		if err != nil || !(rate >= 0 && rate <= 1) {
			return 0
		}
		return rate
	}
	return 1
}
