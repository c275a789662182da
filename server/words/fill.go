package words

import (
	"fmt"
	"regexp"
)

// hole is {name}, or {name|one|other}, which says the number and the word for so many.
var hole = regexp.MustCompile(`\{([a-z]+)(?:\|([^{}|]*)\|([^{}|]*))?\}`)

// Fill puts named values into a text: name, value, name, value ...
func Fill(text string, values ...any) string {
	named := map[string]any{}
	for i := 0; i+1 < len(values); i += 2 {
		named[fmt.Sprint(values[i])] = values[i+1]
	}
	return hole.ReplaceAllStringFunc(text, func(found string) string {
		parts := hole.FindStringSubmatch(found)
		value, given := named[parts[1]]
		if !given {
			return found
		}
		said := fmt.Sprint(value)
		switch {
		case parts[2] == "":
			return said
		case said == "1":
			return said + " " + parts[2]
		}
		return said + " " + parts[3]
	})
}

// Holes lists the names of a text's values.
func Holes(text string) []string {
	var names []string
	for _, found := range hole.FindAllStringSubmatch(text, -1) {
		names = append(names, found[1])
	}
	return names
}
