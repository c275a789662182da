// Package words holds how the server's own texts are said in more than one language: the page by which phones learn to trust
// it, and the command's output. The app's words are in pwa/src/words.
package words

import "strings"

// Languages are those that the server speaks, the one for everybody else first.
var Languages = [...]string{"en", "de"}

// Text is one text in each of Languages, in their order.
type Text [len(Languages)]string

// In chooses the text of a language: the first one's where it has none.
func (t Text) In(language string) string {
	for i, each := range Languages {
		if each == language && t[i] != "" {
			return t[i]
		}
	}
	return t[0]
}

// Missing lists the texts of a catalogue that a language lacks, as "key: language".
func Missing(catalogue map[string]Text) []string {
	var lacks []string
	for key, text := range catalogue {
		for i, each := range Languages {
			if text[i] == "" {
				lacks = append(lacks, key+": "+each)
			}
		}
	}
	return lacks
}

// OfEnvironment is the language that the environment asks for: by the first of LC_ALL, LC_MESSAGES and LANG that is set (POSIX
// base definitions, section 8.2). Without one, and for any that is not spoken, it is the first of Languages.
func OfEnvironment(env func(name string) (string, bool)) string {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		value, _ := env(name)
		if value == "" {
			continue
		}
		primary, _, _ := strings.Cut(strings.ToLower(value)+"_", "_")
		primary, _, _ = strings.Cut(primary, ".")
		primary, _, _ = strings.Cut(primary, "-")
		primary, _, _ = strings.Cut(primary, "@")
		for _, each := range Languages {
			if primary == each {
				return each
			}
		}
		break
	}
	return Languages[0]
}
