package registry

import "math"

// The rows of an answer's table. Nobody is told what is wrong with an answer, so they need no words.

// result is an answer that is an object.
func result(table ...*Field) *Field { return &Field{Kind: object, Fields: table} }

// listing is an answer that is a list of objects.
func listing(table ...*Field) *Field { return &Field{Kind: list, Max: math.Inf(1), Fields: table} }

// part is an object within an answer.
func part(name string, table ...*Field) *Field {
	return &Field{Name: name, Kind: object, Fields: table}
}

// parts is a list of objects within an answer.
func parts(name string, table ...*Field) *Field {
	return &Field{Name: name, Kind: list, Max: math.Inf(1), Fields: table}
}

// figure is any finite number.
func figure(name, unit string) *Field {
	return &Field{Name: name, Kind: number, Unit: unit, Min: math.Inf(-1), Max: math.Inf(1)}
}

// tally is a whole number.
func tally(name, unit string) *Field {
	return &Field{Name: name, Kind: integer, Unit: unit, Min: math.Inf(-1), Max: math.Inf(1)}
}

// rangeOf is two numbers, the lower first.
func rangeOf(name, unit string) *Field { return &Field{Name: name, Kind: span, Unit: unit} }

// pairOf is two numbers in the order of what they belong to.
func pairOf(name, unit string) *Field { return &Field{Name: name, Kind: twin, Unit: unit} }

// key is one of the keys that a package lists.
func key(name string, choices ...string) *Field {
	return &Field{Name: name, Kind: choice, Choices: choices}
}

// flag is true or false.
func flag(name string) *Field { return &Field{Name: name, Kind: boolean} }

// wording is a text of no fixed choice.
func wording(name string) *Field { return &Field{Name: name, Kind: text} }

// wordings is a list of such texts.
func wordings(name string) *Field {
	return &Field{Name: name, Kind: list, Item: text, Max: math.Inf(1)}
}

// onDay is a calendar day.
func onDay(name string) *Field { return &Field{Name: name, Kind: day} }

// valuesOf is what a code's sentence needs: numbers, texts and flags by name.
func valuesOf(name string) *Field { return &Field{Name: name, Kind: named} }
