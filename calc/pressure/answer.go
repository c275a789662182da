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
	LimitNone     Limit = "none"
	LimitTyre     Limit = "tyre"
	LimitRim      Limit = "rim"
	LimitHookless Limit = "hookless"
	LimitTable    Limit = "table"
	LimitFloor    Limit = "floor"
)

// Range is a pair of pressures, low first.
type Range struct{ Low, High unit.Pascal }

// Advice is what a wheel may be told to hold. It is missing after a stop.
type Advice struct {
	Recommended unit.Pascal // true, at the ride
	Set         unit.Pascal // true, where and when it is set
	Gauge       unit.Pascal // what the rider's gauge shows for Set
	AtRide      unit.Pascal // Set carried to the ride
	Likely      Range       // of Recommended
	Squash      float64
	Action      *Action
	Cost        *Cost // missing where the ground is too soft to compute
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
	Custom  unit.Pascal
	Optimum *unit.Pascal
	Good    *Range
	Floor   unit.Pascal
	Ceiling *unit.Pascal // what all limits allow at the ride; nil when none is known
	Limited Limit
	Curve   []Curve
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
	Recommended unit.Pascal
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

// sameTyre says whether both ends carry the same tyre in the same way.
func sameTyre(a, b Tyre) bool {
	return a.Label == b.Label && a.Sidewall == b.Sidewall && a.Setup == b.Setup
}

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
