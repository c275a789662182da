package journey

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

type tokenKind int

const (
	other    tokenKind = iota // names, numbers and signs
	literal                   // "..." or '...'
	template                  // `...`, holes and all
)

// scriptToken is a piece of a script; of a string the text without its quotes.
type scriptToken struct {
	kind tokenKind
	text string
	line int
}

// A regular expression of the script is told from a division by what stands before it.
var (
	blank      = regexp.MustCompile(`^(?:\s+|//[^\n]*|(?s:/\*.*?\*/))`)
	quoted     = regexp.MustCompile(`^(?:"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*')`)
	expression = regexp.MustCompile(`^/(?:[^/\\\[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+/[a-z]*`)
	name       = regexp.MustCompile(`^(?:[\p{L}_$#][\p{L}\p{N}_$]*|[0-9][0-9a-zA-Z_.]*|=>|\?\?|\?\.|.)`)
)

func scriptTokens(text string) []scriptToken {
	var tokens []scriptToken
	line := 1
	add := func(kind tokenKind, piece string) {
		tokens = append(tokens, scriptToken{kind, piece, line})
	}
	for rest := text; rest != ""; {
		var length int
		if piece := blank.FindString(rest); piece != "" {
			length = len(piece)
		} else if piece := quoted.FindString(rest); piece != "" {
			length = len(piece)
			add(literal, piece[1:length-1])
		} else if rest[0] == '`' {
			length = templateLength(rest)
			add(template, rest[1:length-1])
			for _, inner := range templateHoles(rest[1 : length-1]) {
				inside := scriptTokens(inner)
				for i := range inside {
					inside[i].line += line - 1
				}
				// A hole is an expression of its own.
				tokens = append(append(append(tokens, scriptToken{other, ";", line}), inside...), scriptToken{other, ";", line})
			}
		} else if piece := expression.FindString(rest); piece != "" && mayBeExpression(tokens) {
			length = len(piece)
			add(other, "/expression/")
		} else {
			length = len(name.FindString(rest))
			add(other, rest[:length])
		}
		line += strings.Count(rest[:length], "\n")
		rest = rest[length:]
	}
	return tokens
}

func mayBeExpression(tokens []scriptToken) bool {
	if len(tokens) == 0 {
		return true
	}
	return slices.Contains([]string{"(", ",", "=", ":", "[", "!", "&", "|", "?", "{", "}", ";", "return", "=>", "??"}, tokens[len(tokens)-1].text)
}

// templateLength is the length of the template at the beginning of the text, with its quotes.
func templateLength(text string) int {
	for i := 1; i < len(text); i++ {
		switch {
		case text[i] == '\\':
			i++
		case text[i] == '`':
			return i + 1
		case strings.HasPrefix(text[i:], "${"):
			i += holeLength(text[i:]) - 1
		}
	}
	return len(text)
}

// holeLength is the length of the ${...} at the beginning of the text.
func holeLength(text string) int {
	depth := 0
	for i := 1; i < len(text); i++ {
		switch text[i] {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return i + 1
			}
		case '`':
			i += templateLength(text[i:]) - 1
		case '"', '\'':
			if piece := quoted.FindString(text[i:]); piece != "" {
				i += len(piece) - 1
			}
		}
	}
	return len(text)
}

func templateHoles(text string) []string {
	var holes []string
	for i := 0; i < len(text); i++ {
		if text[i] == '\\' {
			i++
		} else if strings.HasPrefix(text[i:], "${") {
			length := holeLength(text[i:])
			holes = append(holes, text[i+2:i+length-1])
			i += length - 1
		}
	}
	return holes
}

// TestTheScanSeesWhatItShould is the test of the test: words and keys in each place where they may hide.
func TestTheScanSeesWhatItShould(t *testing.T) {
	visible := map[string]bool{
		`el("p", {}, "Hello")`:                 true,
		`el("p", {}, el("b", {}, x), "Hello")`: true,
		`el("p", { class: "a", on: { click: () => f(1, 2) } }, ` + "`Hello ${x}`)": true,
		`el("p", {}, ` + "`${x} · ${y}`)":                                          false,
		`el("p", { class: "Hello" })`:                                              false,
		`el("p", { title: "Hello" })`:                                              true,
		`el("p", { "aria-label": "Hello" })`:                                       true,
		`el("p", {}, x && "Hello")`:                                                true,
		`el("p", {}, x ? "Hello" : y)`:                                             true,
		`el("p", {}, x === "Hello" && y)`:                                          false,
		`el("p", {}, w("Hello"))`:                                                  false,
		`el("p", {}, " · ")`:                                                       false,
		`setText(this.#text, "Hello")`:                                             true,
		`setText(node, x === "Hello" ? a : b)`:                                     false,
		`node.textContent = "Hello"`:                                               true,
		`text.replace(/"/g, x); el("p", {}, "Hello")`:                              true,
		`// el("p", {}, "Hello")`:                                                  false,
	}
	for source, want := range visible {
		tokens := scriptTokens(source)
		found := slices.ContainsFunc(tokens, func(token scriptToken) bool { return strings.Contains(token.text, "Hello") && token.kind != other }) &&
			slices.ContainsFunc(indexes(tokens), func(i int) bool {
				return strings.Contains(tokens[i].text, "Hello") && (isChild(tokens, i) || isSpoken(tokens, i) || isSet(tokens, i))
			})
		if found != want {
			t.Errorf("%s: seen as read by a person: %v", source, found)
		}
	}
	keys := map[string]bool{
		`w("Hello")`:                   true,
		`w(a ? "Hello" : "Bye")`:       true,
		`w("x", { name: "Hello" })`:    false,
		`w(a === "Hello" ? "x" : "y")`: false,
		`this.w("Hello")`:              false,
		"`a ${w(\"Hello\")} b`":        true,
	}
	for source, want := range keys {
		tokens := scriptTokens(source)
		found := slices.ContainsFunc(indexes(tokens), func(i int) bool {
			return tokens[i].kind == literal && tokens[i].text == "Hello" && inCallOfW(tokens, i)
		})
		if found != want {
			t.Errorf("%s: seen as a key: %v", source, found)
		}
	}
}

func indexes(tokens []scriptToken) []int {
	all := make([]int, len(tokens))
	for i := range all {
		all[i] = i
	}
	return all
}
