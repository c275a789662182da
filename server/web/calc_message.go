package web

import (
	"fmt"
	"strconv"
	"strings"

	"rimside/calc/registry"
)

// told is a fault of a calculation's input: the registry's code and field, and a sentence.
type told struct {
	Code    string `json:"code"`
	Field   string `json:"field"`
	Message string `json:"message"`
}

// refusal is one of all the faults, with the values that its sentence was made of.
type refusal struct {
	told
	Values map[string]any `json:"values"`
}

// refusals puts every fault into words.
func refusals(found *registry.Error) []refusal {
	var out []refusal
	for _, each := range found.All() {
		out = append(out, refusal{told{each.Code, each.Field, message(each)}, each.Values})
	}
	return out
}

// message is the English sentence about one fault.
func message(e *registry.Error) string {
	what := wordsOf(e.Field)
	switch e.Code {
	case registry.CodeUnknown:
		return "There is no calculation of this name."
	case registry.CodeMalformed:
		return "The request is not well-formed JSON."
	case registry.CodeTrailing:
		return "There is something after the end of the request."
	case registry.CodeDuplicate:
		return what + " is given twice."
	case registry.CodeNull:
		return what + " is null: leave it out or give a value."
	case registry.CodeField:
		return unknownMessage(e)
	case registry.CodeMissing:
		return missingMessage(what, e)
	case registry.CodeType:
		return typeMessage(what, e)
	case registry.CodeBounds:
		return boundsMessage(what, e)
	case registry.CodeChoice:
		return what + ": one of " + choices(e) + "."
	case registry.CodeConflict:
		if least, isScale := e.Values["least"].(float64); isScale {
			return "Both scales together show less than the rider's " + written(least) + " kg: weigh again, with the rider on the bike."
		}
		if most, isScale := e.Values["most"].(float64); isScale {
			return "Both scales together show more than the " + written(most) + " kg of rider and bike: weigh again, or correct the weights."
		}
		return what + " does not go with this: " + lower(wordsOf(text(e, "with"))) + "."
	case registry.CodeCannot:
		return reasonMessage(text(e, "why"))
	}
	return "This request was refused: " + e.Code + "."
}

func unknownMessage(e *registry.Error) string {
	if write := text(e, "write"); write != "" {
		return "Names are case-sensitive: write " + write + "."
	}
	return "There is no such field here."
}

func missingMessage(what string, e *registry.Error) string {
	if with := text(e, "with"); with != "" {
		return what + " is missing: it belongs to " + lower(wordsOf(with)) + "."
	}
	return what + " is missing."
}

func typeMessage(what string, e *registry.Error) string {
	switch kind := text(e, "type"); kind {
	case "number":
		return what + ": a number" + inUnit(e) + "."
	case "integer":
		return what + ": a whole number."
	case "boolean":
		return what + ": true or false."
	case "choice":
		return what + ": one of " + choices(e) + "."
	case "day":
		return what + ": a day like 2026-07-14."
	case "list":
		return what + ": a list."
	case "text":
		return what + ": a text."
	}
	if e.Field == "" {
		return "The request must be a JSON object."
	}
	return what + ": an object with its fields."
}

func boundsMessage(what string, e *registry.Error) string {
	if above, isSum := e.Values["above"].(float64); isSum {
		return what + ": at least one must be more than " + written(above) + "."
	}
	if _, isList := e.Values["items"]; isList {
		return fmt.Sprintf("%s: from %s to %s items.", what, written(e.Values["min"]), written(e.Values["max"]))
	}
	if _, isText := e.Values["characters"]; isText {
		return fmt.Sprintf("%s: from %s to %s characters.", what, written(e.Values["min"]), written(e.Values["max"]))
	}
	return fmt.Sprintf("%s: from %s to %s%s.", what, written(e.Values["min"]), written(e.Values["max"]), inUnit(e))
}

// reasons say why something cannot be computed.
var reasons = map[string]string{
	"altitude_out_of_range":  "The altitude must be between -5000 and 11000 m.",
	"temperature_below_zero": "The temperature must be above absolute zero.",
	"below_vacuum":           "The pressure must be above a vacuum at this altitude.",
	"no_days_between":        "The days between the readings must be more than 0.",
	"flat_tyre":              "A flat tyre shows no leak: both readings must be above 0.",
	"measure_not_above_zero": "Bead seat, flange and well must be measures above 0.",
	"tape_fills_well":        "The tape fills the well: measure the well's depth without tape.",
	"valve_above_flange":     "The valve stands above the flange: measure its height above the taped well.",
	"insert":                 "With an insert these sums do not hold: no number.",
	"too_much_gas":           "So much gas in so little room is no tyre: no gas law here holds.",
	"no_gas":                 "The amount of gas must be more than 0.",
	"pumped_between":         "The later reading is higher at the same temperature and altitude: it was pumped in between, or one reading is wrong.",
}

func reasonMessage(why string) string {
	if known, found := reasons[why]; found {
		return known
	}
	return "These values together lie outside what can be computed."
}

// wordsOf is what a person calls a field; its path where nothing else is known.
func wordsOf(path string) string {
	parts := strings.Split(path, ".")
	side := ""
	for i, part := range parts {
		if _, err := strconv.Atoi(part); err == nil {
			parts[i] = "*"
		}
	}
	if words, found := fieldWords[strings.Join(parts, ".")]; found {
		return words
	}
	for i, part := range parts {
		if part == "front" || part == "rear" {
			side, parts[i] = strings.ToUpper(part[:1])+part[1:], "side"
		}
	}
	if words, found := sidedWords[strings.Join(parts, ".")]; found && side != "" {
		return side + " " + words
	}
	if last := len(parts) - 1; last > 0 && parts[last] == "*" { // an item of a list of plain values is called as its list
		if words, found := fieldWords[strings.Join(parts[:last], ".")]; found {
			return words
		}
	}
	return path
}

func text(e *registry.Error, name string) string { s, _ := e.Values[name].(string); return s }

func choices(e *registry.Error) string {
	list, _ := e.Values["choices"].([]string)
	return strings.Join(list, ", ")
}

func inUnit(e *registry.Error) string {
	if unit := text(e, "unit"); unit != "" {
		return " " + unit
	}
	return ""
}

// written prints a bound as a person would write it.
func written(bound any) string {
	if x, isNumber := bound.(float64); isNumber {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	return fmt.Sprint(bound)
}

// lower begins words with a small letter, as the rest of a sentence.
func lower(words string) string {
	if words == "" {
		return ""
	}
	return strings.ToLower(words[:1]) + words[1:]
}
