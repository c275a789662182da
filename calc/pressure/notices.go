package pressure

import (
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

// Severities lists the keys, worst first.
func Severities() []string { return []string{string(Stop), string(Care), string(Info)} }

// Code names a notice; its words stand in the app's catalogue.
type Code string

// Notice says something about a wheel that its numbers do not.
type Notice struct {
	Code     Code
	Severity Severity
	Side     Side
	Values   []Value
}

// Quantity is what a value of a notice measures.
type Quantity string

// The quantities.
const (
	IsKey      Quantity = "key"
	IsPlain    Quantity = "plain"    // a share or a ratio
	IsPressure Quantity = "pressure" // Pa; a mark as printed, or a pressure as each code says
	IsLength   Quantity = "length"   // m
)

// Value is one thing that a notice speaks of.
type Value struct {
	Name   string
	Is     Quantity
	Number float64 // in SI
	Key    string
}

func key(name, key string) Value { return Value{Name: name, Is: IsKey, Key: key} }

func plain(name string, x float64) Value { return Value{Name: name, Is: IsPlain, Number: x} }

func pressure(name string, p unit.Pascal) Value {
	return Value{Name: name, Is: IsPressure, Number: float64(p)}
}

func length(name string, l unit.Metre) Value {
	return Value{Name: name, Is: IsLength, Number: float64(l)}
}

// Codes of notices, with their values. Those of a tyre.Verdict are the verdict's own key, with label and inner (and
// least_label, the narrowest allowed, without hooks).
const (
	ImpossibleWidth  Code = "impossible_width"
	AskMaxTyre       Code = "ask_max_tyre"
	AskMaxRim        Code = "ask_max_rim"
	AskMaxBoth       Code = "ask_max_both"
	FloorOverLimit   Code = "floor_above_ceiling"  // limit, its mark, floor_by, floor_needs (the mark the floor asks for); of a bigger tyre: label, needs_mark
	FlatWhereSet     Code = "flat_where_set"       //
	EdgeUnknown      Code = "rim_edge_unknown"     //
	AtLimitRide      Code = "at_limit_ride"        // limit, its mark as printed
	AtLimitSet       Code = "at_limit_set"         // limit, its mark as printed
	AtLimitWarmest   Code = "at_limit_warmest"     // limit, its mark as printed
	HeldUnread       Code = "held_unread"          // missing, the mark it counts as, wants (at the ride), wants_here (what the gauge would show of it where one stands)
	AtFloor          Code = "at_floor"             //
	AtPrintedMinimum Code = "at_printed_minimum"   // min as printed
	OverLimitNow     Code = "over_limit_now"       // limit, its mark as printed
	NoBest           Code = "no_computed_best"     //
	AllSoft          Code = "all_soft"             //
	PartlySoft       Code = "partly_soft"          // share of the distance, softer (by how much, at the ride)
	FrontRaised      Code = "front_raised_to_rear" // ratio, the least of front over rear
	Evened           Code = "front_over_rear"      // ratio, the most of front over rear
	TubeHookless     Code = "tube_on_hookless"     //
	LooseGround      Code = "wheel_leaves_ground"  //
	NoneBigEnough    Code = "none_big_enough"      //
)

// Codes lists every notice, so that a word catalogue can be held to it.
func Codes() []string {
	var out []string
	for _, verdict := range tyre.Verdicts() {
		out = append(out, string(verdict))
	}
	for _, code := range []Code{
		ImpossibleWidth, AskMaxTyre, AskMaxRim, AskMaxBoth, FloorOverLimit, FlatWhereSet, EdgeUnknown, AtLimitRide, AtLimitSet,
		AtLimitWarmest, HeldUnread, AtFloor, AtPrintedMinimum, OverLimitNow, NoBest, AllSoft, PartlySoft, FrontRaised, Evened,
		TubeHookless, LooseGround, NoneBigEnough,
	} {
		out = append(out, string(code))
	}
	return out
}

func (a *Answer) tell(code Code, severity Severity, side Side, values ...Value) {
	a.Notices = append(a.Notices, Notice{Code: code, Severity: severity, Side: side, Values: values})
}

var askCodes = map[Missing]Code{MissingTyre: AskMaxTyre, MissingRim: AskMaxRim, MissingBoth: AskMaxBoth}
