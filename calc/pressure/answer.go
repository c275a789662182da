package pressure

import (
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// Side is an end of the bike.
type Side string

// Front and Rear wheel; Both is for notices that concern the whole bike.
const (
	Front Side = "front"
	Rear  Side = "rear"
	Both  Side = "both"
)

// Sides lists the two wheels, front first.
var Sides = [2]Side{Front, Rear}

// Limit names what held a recommendation back.
type Limit string

// The limits.
const (
	LimitNone           Limit = "none"
	LimitTyre           Limit = "tyre"
	LimitRim            Limit = "rim"
	LimitHookless       Limit = "hookless"
	LimitTable          Limit = "table"
	LimitUnread         Limit = "unread" // a mark that nobody has read, on a hooked rim
	LimitFloor          Limit = "floor"
	LimitPrintedMinimum Limit = "printed_minimum"
)

// Limits lists the keys.
func Limits() []string {
	return []string{
		string(LimitNone), string(LimitTyre), string(LimitRim), string(LimitHookless), string(LimitTable), string(LimitUnread),
		string(LimitFloor), string(LimitPrintedMinimum),
	}
}

// Range is a pair of pressures, low first.
type Range struct{ Low, High unit.Pascal }

// Advice is what a wheel may be told to hold. It is missing after a stop.
type Advice struct {
	P0          unit.Pascal // before the personal shift and firmness; true, at the ride
	Recommended unit.Pascal // true, at the ride
	Set         unit.Pascal // true, where and when it is set
	Gauge       unit.Pascal // what the rider's gauge shows for Set
	HereGauge   unit.Pascal // what it shows where the rider stands
	AtRide      unit.Pascal // Set carried to the ride
	Likely      Range       // of Recommended
	Squash      float64
	Action      *Action
	Good        *Range // the fine range; missing where all ground is soft
	Cost        *Cost  // missing where all ground is soft
}

// Cost is what the recommendation costs along the course.
type Cost struct {
	Casing, Roughness unit.Watt
	AboveBest         unit.Watt
	Light             float64
	Acceleration      unit.MetrePerSecond2
}

// Curve is one point of the loss curve.
type Curve struct {
	Pressure          unit.Pascal
	Casing, Roughness unit.Watt
}

// Figures are what a wheel's answer rests on. They are missing for a refused or unknown pair.
type Figures struct {
	Practice unit.Pascal
	Want     unit.Pascal // after ratio and wet, before limits
	Optimum  *unit.Pascal
	Floor    unit.Pascal
	Ceiling  unit.Pascal // what all limits allow at the ride
	Limited  Limit
	Curve    []Curve
}

// Wheel is the answer for one wheel.
type Wheel struct {
	Width     unit.Metre // 0 when no width is possible
	Measured  bool
	Predicted unit.Metre // beside a measured width; 0 when none is possible
	Load      unit.Newton
	Figures   *Figures
	Advice    *Advice
}

// Deeds lists the keys.
func Deeds() []string { return []string{string(Leave), string(LetOut), string(Add)} }

// Deed is what to do to a tyre.
type Deed string

// The three deeds.
const (
	Leave  Deed = "leave"
	LetOut Deed = "let_out"
	Add    Deed = "add"
)

// Action is a deed and by how much the reading should change; strokes only when adding with a known pump.
type Action struct {
	Do      Deed
	By      unit.Pascal
	Strokes *float64
}

// Bigger is a printed width that would do where the present tyre cannot.
type Bigger struct {
	Side        Side
	Label       unit.Metre
	Recommended unit.Pascal // at the ride, once its sidewall allows it
	NeedsMark   unit.Pascal // the least maximum that must be printed on it
}

// Answer is everything about both wheels.
type Answer struct {
	Front, Rear Wheel
	Notices     []Notice
	Bigger      []Bigger
}

// Wheel is the answer for one side.
func (a *Answer) Wheel(side Side) *Wheel {
	if side == Front {
		return &a.Front
	}
	return &a.Rear
}

// Kind is a tyre as far as notes and the ratio of both ends ask: two of one kind are the same tyre in the same way.
type Kind struct {
	Label    unit.Metre
	Sidewall tyre.Sidewall
	Setup    Setup
}

func (t Tyre) kind() Kind { return Kind{t.Label, t.Sidewall, t.Setup} }

// pair is the tyre on its rim, as the rules of package tyre want it.
func (w WheelSetup) pair() tyre.Pair {
	beadSeat := w.Tyre.BeadSeat
	if beadSeat == 0 {
		beadSeat = w.Rim.BeadSeat
	}
	return tyre.Pair{
		TyreBeadSeat: beadSeat, RimBeadSeat: w.Rim.BeadSeat,
		Label: w.Tyre.Label, Inner: w.Rim.Inner, Profile: w.Rim.Profile,
		HooklessNamed: w.Tyre.ForHookless, Table: w.Rim.Table,
	}
}
