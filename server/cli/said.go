package cli

import (
	"errors"
	"fmt"
	"strings"

	"rimside/server/words"
)

// text is an entry of the catalogue in the language that the environment asks for, filled with name, value, name, value ...
func (c call) text(key string, values ...any) string {
	return textIn(words.OfEnvironment(c.env), key, values...)
}

// say writes an entry of the catalogue as a line of its own to stdout.
func (c call) say(key string, values ...any) { fmt.Fprintln(c.stdout, c.text(key, values...)) }

func textIn(language, key string, values ...any) string {
	spoken := make([]any, len(values))
	for i, value := range values {
		if err, isError := value.(error); isError {
			value = explain(err, language)
		}
		spoken[i] = value
	}
	return words.Fill(said[key].In(language), spoken...)
}

// problem is what went wrong, as an entry of the catalogue. It becomes words where it is told: there the language is known.
type problem struct {
	key    string
	values []any
}

// trouble makes a problem; errors among its values are its causes.
func trouble(key string, values ...any) error { return problem{key, values} }

func (p problem) Error() string { return textIn(words.Languages[0], p.key, p.values...) }

// Unwrap gives the causes.
func (p problem) Unwrap() (causes []error) {
	for _, value := range p.values {
		if err, isError := value.(error); isError {
			causes = append(causes, err)
		}
	}
	return causes
}

// usageError is a wrong way to call the program, as opposed to something that failed.
type usageError struct{ problem }

// misused makes one.
func misused(key string, values ...any) error { return usageError{problem{key, values}} }

// explain tells an error in a language, as far as it is one of this package; others, of deeper layers, are in English.
func explain(err error, language string) string {
	switch known := err.(type) {
	case problem:
		return textIn(language, known.key, known.values...)
	case usageError:
		return textIn(language, known.key, known.values...)
	case interface{ Unwrap() []error }:
		var parts []error
		var lines []string
		for _, each := range known.Unwrap() {
			parts = append(parts, each)
			lines = append(lines, explain(each, language))
		}
		if joined := errors.Join(parts...); joined != nil && joined.Error() == err.Error() {
			return strings.Join(lines, "\n")
		}
	}
	return err.Error()
}
