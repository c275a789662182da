package pressure

import (
	"strconv"

	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// Severity of a notice.
type Severity string

// The severities. After a Stop the wheel has no number.
const (
	Stop Severity = "stop"
	Care Severity = "care"
	Info Severity = "info"
)

// Code names a notice for a word catalogue.
type Code string

// Notice says something about a wheel that its numbers do not. Text is fit to show a person, with pressures in bar.
type Notice struct {
	Code     Code
	Severity Severity
	Side     Side
	Text     string
}

// Codes of notices. Those of a tyre.Verdict are the verdict's own key.
const (
	ImpossibleWidth Code = "impossible_width"
	AskMaxTyre      Code = "ask_max_tyre"
	AskMaxRim       Code = "ask_max_rim"
	AskMaxBoth      Code = "ask_max_both"
	FloorOverLimit  Code = "floor_above_ceiling"
	FlatWhereSet    Code = "flat_where_set"
	EdgeUnknown     Code = "rim_edge_unknown"
	AtLimitRide     Code = "at_limit_ride"
	AtLimitSet      Code = "at_limit_set"
	AtLimitWarmest  Code = "at_limit_warmest"
	AtFloor         Code = "at_floor"
	OverLimitNow    Code = "over_limit_now"
	NoBest          Code = "no_computed_best"
	SoftMost        Code = "mostly_soft"
	SoftPart        Code = "partly_soft"
	Balanced        Code = "front_raised_to_rear"
	TubeHookless    Code = "tube_on_hookless"
	LooseGround     Code = "wheel_leaves_ground"
	NoneBigEnough   Code = "none_big_enough"
	ScalesWin       Code = "scales_win"
)

var texts = map[Code]string{
	Code(tyre.BeadDiffers):     "Do not mount this: tyre and rim have different bead seat diameters. The three-digit numbers must be the same.",
	Code(tyre.NotForHookless):  "No pressure for this pair: a straight or unknown rim edge needs a tyre that its maker names for hookless rims, also with a tube inside. Read the sidewall or the maker's list.",
	Code(tyre.HooklessNarrow):  "No pressure for this pair: the tyre is too narrow for this straight or unknown rim edge. It can come off.",
	Code(tyre.OutsideTable):    "No pressure for this pair: the rim's own table does not list this tyre width.",
	Code(tyre.TooNarrow):       "No pressure for this pair: the tyre is too narrow for this rim.",
	Code(tyre.TooWide):         "No pressure for this pair: the tyre is too wide for this rim. It can roll off.",
	Code(tyre.NarrowCare):      "A narrow tyre for this rim: check both makers' lists.",
	Code(tyre.WideCare):        "A wide tyre for this rim: check both makers' lists.",
	Code(tyre.HooklessNoTable): "Wide tyres on hookless rims have lower limits: look for the rim's own table of widths and enter it.",
	ImpossibleWidth:            "No pressure for this pair: this casing is too short for a rim this wide. Check both widths.",
	AskMaxTyre:                 "Read the maximum on the tyre's sidewall and enter it: no number without it.",
	AskMaxRim:                  "Read the maximum on the rim or in its manual and enter it: no number without it.",
	AskMaxBoth:                 "Read the maximum on the tyre and on the rim and enter both: no number without them.",
	FlatWhereSet:               "Set this tyre where you ride: pumped at the other place it would be flat there.",
	EdgeUnknown:                "Rim edge unknown: treated as hookless, the safe side.",
	AtFloor:                    "Held at the least that keeps the rim off the ground.",
	OverLimitNow:               "Over the limit now: let air out before riding.",
	NoBest:                     "The loss curve has no lowest point in reach; custom and the good range still hold.",
	SoftMost:                   "Mostly soft ground: as soft as the rim allows, since no curve describes sinking in.",
	SoftPart:                   "The soft part is left out of the sums; softer helps there.",
	Balanced:                   "Same tyre at both ends: the front is kept at no less than 85 % of the rear.",
	TubeHookless:               "A tube does not make a hookless rim safer: the same limits hold.",
	LooseGround:                "On ground this rough the wheel leaves the ground: the loss is an upper bound.",
	NoneBigEnough:              "No wider tyre that this rim may carry would do: less load, or a stronger wheel.",
	ScalesWin:                  "The two scale readings are used; the front share is left aside.",
}

// Codes lists every notice, so that a word catalogue can be held to it.
func Codes() []string {
	var codes []string
	for code := range texts {
		codes = append(codes, string(code))
	}
	return append(codes, string(FloorOverLimit), string(AtLimitRide), string(AtLimitSet), string(AtLimitWarmest))
}

func (a *Answer) tell(code Code, severity Severity, side Side) {
	a.say(code, severity, side, texts[code])
}

func (a *Answer) say(code Code, severity Severity, side Side, text string) {
	a.Notices = append(a.Notices, Notice{Code: code, Severity: severity, Side: side, Text: text})
}

var askCodes = map[string]Code{"tyre": AskMaxTyre, "rim": AskMaxRim, "both": AskMaxBoth}

// limitWords says whose mark a limit is.
var limitWords = map[Limit]string{
	LimitTyre: "the tyre", LimitRim: "the rim", LimitHookless: "the hookless rim", LimitTable: "the rim's own table",
}

var atLimitCodes = map[moment]Code{atRide: AtLimitRide, atSet: AtLimitSet, atWarmest: AtLimitWarmest}

// bar prints a pressure for a text.
func bar(p unit.Pascal) string { return strconv.FormatFloat(p.Bar(), 'f', 2, 64) + " bar" }

func atLimitText(c ceiling) string {
	switch c.binds {
	case atSet:
		return "Held back so that it stays under " + limitWords[c.limit] + "'s " + bar(c.mark) + " where you set it."
	case atWarmest:
		return "Held back so that it stays under " + limitWords[c.limit] + "'s " + bar(c.mark) + " at the warmest hour."
	}
	return "Held at " + limitWords[c.limit] + "'s limit of " + bar(c.mark) + "."
}

func floorText(floor unit.Pascal, c ceiling, bigger []Bigger, side Side) string {
	text := "Do not ride this tyre under this load: it needs " + bar(floor) + " to keep the rim off the ground, but " +
		limitWords[c.limit] + " allows " + bar(c.at) + "."
	for _, b := range bigger {
		if b.Side == side {
			return text + " A " + strconv.FormatFloat(b.Label.MM(), 'f', 0, 64) + " mm tyre would do: read its sidewall, check the frame's room."
		}
	}
	return text
}
