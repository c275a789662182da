package unit

import (
	"errors"
	"strconv"
	"strings"
)

// Dimension names what a typed text measures; it decides which unit names are understood.
type Dimension string

// The dimensions that people type.
const (
	Pressure    Dimension = "pressure"    // SI result in Pa
	Mass        Dimension = "mass"        // kg
	Length      Dimension = "length"      // m; tyres, rims
	Temperature Dimension = "temperature" // K
	Altitude    Dimension = "altitude"    // m
	Speed       Dimension = "speed"       // m/s
	Distance    Dimension = "distance"    // m; roads
)

// spelling is one unit: SI = (typed + offset) * scale.
type spelling struct {
	names         []string
	scale, offset float64
}

const (
	metrePerFoot = 0.3048   // international foot
	metrePerMile = 1609.344 // international mile
	kgPerPound   = 0.45359237
)

var spellings = map[Dimension][]spelling{
	Pressure: {
		{names: []string{"bar"}, scale: pascalPerBar},
		{names: []string{"psi", "lb/in2", "lbs"}, scale: pascalPerPSI},
		{names: []string{"kpa"}, scale: pascalPerKPa},
	},
	Mass: {
		{names: []string{"kg"}, scale: 1},
		{names: []string{"g"}, scale: 1e-3},
		{names: []string{"lb", "lbs"}, scale: kgPerPound},
	},
	Length: {
		{names: []string{"mm"}, scale: 1e-3},
		{names: []string{"cm"}, scale: 1e-2},
		{names: []string{"in", "\""}, scale: 0.0254},
	},
	Temperature: {
		{names: []string{"c", "°c", "°"}, scale: 1, offset: ZeroCelsius},
		{names: []string{"f", "°f"}, scale: 5.0 / 9, offset: 459.67},
	},
	Altitude: {
		{names: []string{"m"}, scale: 1},
		{names: []string{"ft"}, scale: metrePerFoot},
	},
	Speed: {
		{names: []string{"km/h", "kmh", "kph"}, scale: 1 / 3.6},
		{names: []string{"mph"}, scale: metrePerMile / 3600},
	},
	Distance: {
		{names: []string{"km"}, scale: 1e3},
		{names: []string{"mi"}, scale: metrePerMile},
		{names: []string{"m"}, scale: 1},
	},
}

// What can be wrong with a typed quantity. Each is fit to be looked up in a word catalogue by the caller.
var (
	ErrEmpty     = errors.New("nothing typed")
	ErrNotNumber = errors.New("not a number")
	ErrUnit      = errors.New("not a unit of this quantity")
	ErrSeparator = errors.New("write the number without thousands separators")
)

// maxDigits keeps a typed number inside what a float64 holds exactly; nobody types more on purpose.
const maxDigits = 15

// Parse reads a typed quantity such as "32 psi", "2,1 bar" or "2.1" (then in the fallback unit) and returns it in SI.
// A comma or a point is the decimal mark; both at once, or either twice, is ErrSeparator. Signs may be + - or the true
// minus. Errors: ErrEmpty, ErrNotNumber, ErrUnit, ErrSeparator.
func Parse(text string, dim Dimension, fallback string) (float64, error) {
	number, name := split(strings.TrimSpace(text))
	if number == "" && name == "" {
		return 0, ErrEmpty
	}
	value, err := parseNumber(number)
	if err != nil {
		return 0, err
	}
	if name == "" {
		name = fallback
	}
	u, ok := find(dim, name)
	if !ok {
		return 0, ErrUnit
	}
	return (value + u.offset) * u.scale, nil
}

// split parts the leading number characters from the unit that follows.
func split(text string) (number, name string) {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789.,+-−", r) })
	if end < 0 {
		return text, ""
	}
	return text[:end], strings.ToLower(strings.TrimSpace(text[end:]))
}

func parseNumber(text string) (float64, error) {
	body := strings.Replace(text, "−", "-", 1)
	sign := 1.0
	if rest, found := strings.CutPrefix(body, "-"); found {
		sign, body = -1, rest
	} else {
		body = strings.TrimPrefix(body, "+")
	}
	if strings.Count(body, ".")+strings.Count(body, ",") > 1 {
		return 0, ErrSeparator
	}
	body = strings.Replace(body, ",", ".", 1)
	digits := strings.Replace(body, ".", "", 1)
	if digits == "" || len(digits) > maxDigits || strings.Trim(digits, "0123456789") != "" {
		return 0, ErrNotNumber
	}
	value, err := strconv.ParseFloat(body, 64)
	if err != nil {
		return 0, ErrNotNumber
	}
	return sign * value, nil
}

func find(dim Dimension, name string) (spelling, bool) {
	for _, u := range spellings[dim] {
		for _, n := range u.names {
			if n == strings.ToLower(name) {
				return u, true
			}
		}
	}
	return spelling{}, false
}
