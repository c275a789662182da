package pressure

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"rimside/calc/air"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// Setup is what keeps the air in.
type Setup string

// The three set-ups.
const (
	Tube     Setup = "tube"
	Tubeless Setup = "tubeless"
	Insert   Setup = "insert"
)

// Setups lists the keys.
func Setups() []string { return []string{string(Tube), string(Tubeless), string(Insert)} }

// Tyre is a tyre as marked and, where someone has, as measured. Zero means not given.
type Tyre struct {
	BeadSeat    unit.Metre // if printed otherwise than the rim's
	Label       unit.Metre
	Measured    unit.Metre
	Sidewall    tyre.Sidewall
	Setup       Setup
	Max, Min    unit.Pascal
	ForHookless bool // named by its maker for hookless rims
	Test        *tyre.RollingTest
}

// Rim is a rim as marked. Zero means not given.
type Rim struct {
	BeadSeat unit.Metre
	Inner    unit.Metre
	Profile  tyre.Profile
	Max      unit.Pascal
	Table    tyre.Table
}

// WheelSetup is one end of the bike.
type WheelSetup struct {
	Tyre Tyre
	Rim  Rim
}

// Here is where the rider stands: where the tyres are set (home, the car) or at the start of the ride.
type Here string

// The two places.
const (
	HereSet  Here = "set"
	HereRide Here = "ride"
)

// Heres lists the keys.
func Heres() []string { return []string{string(HereSet), string(HereRide)} }

// PerWheel is one number for each wheel.
type PerWheel struct{ Front, Rear float64 }

func (p PerWheel) of(side Side) float64 {
	if side == Front {
		return p.Front
	}
	return p.Rear
}

// Readings is what the gauge says now, where the rider stands. Nil means not read.
type Readings struct {
	Front, Rear *unit.Pascal
	Stroke      unit.CubicMetre // of the pump; 0 when not given
}

// Input is everything the answer depends on, in SI units; pressures are gauge pressures.
type Input struct {
	Rider, Bike         unit.Kilogram // bottles, bags and clothes included
	FrontShare          float64
	FrontLoad, RearLoad unit.Kilogram // two scale readings, which win over FrontShare; 0 when not given
	Front, Rear         WheelSetup
	Ground              []road.Stretch
	Set, Ride           air.State
	Along               []air.State // further places of the ride, as its highest point; a temperature of 0 is the ride's by the standard lapse
	Here                Here        // "" is HereSet
	Warmest             *unit.Kelvin
	GaugeError          unit.Pascal // reading minus truth
	Wet                 bool
	Firmness            int      // steps, negative is softer
	Shift               PerWheel // personal, in logarithms of pressure
	Now                 Readings
}

// ErrInput says that an input is outside what can be computed; the text names it.
var ErrInput = errors.New("cannot compute")

// wrongInput is an ErrInput with its reason. (Package fmt would do this too, at a sixth of the browser's download.)
type wrongInput string

func (e wrongInput) Error() string { return ErrInput.Error() + ": " + string(e) }
func (e wrongInput) Unwrap() error { return ErrInput }

func inputError(parts ...string) error { return wrongInput(strings.Join(parts, "")) }

// Weighed says whether both wheels were put on a scale.
func (in Input) Weighed() bool { return in.FrontLoad > 0 && in.RearLoad > 0 }

// allMass is rider and bike, or what the scales said of both wheels.
func (in Input) allMass() unit.Kilogram {
	if in.Weighed() {
		return in.FrontLoad + in.RearLoad
	}
	return in.Rider + in.Bike
}

// carried is the mass on one wheel.
func (in Input) carried(side Side) unit.Kilogram {
	switch {
	case in.Weighed() && side == Front:
		return in.FrontLoad
	case in.Weighed():
		return in.RearLoad
	case side == Front:
		return in.allMass() * unit.Kilogram(in.FrontShare)
	}
	return in.allMass() * unit.Kilogram(1-in.FrontShare)
}

// standing is the air where the rider stands.
func (in Input) standing() air.State {
	if in.Here == HereRide {
		return in.Ride
	}
	return in.Set
}

func (in Input) wheel(side Side) WheelSetup {
	if side == Front {
		return in.Front
	}
	return in.Rear
}

// check refuses what no person or bike can be, so that nothing below divides by zero or carries a NaN.
func (in Input) check() error {
	positive := map[string]float64{
		"rider": float64(in.Rider), "bike": float64(in.Bike),
		"set temperature": float64(in.Set.Temperature), "ride temperature": float64(in.Ride.Temperature),
	}
	if !in.Weighed() {
		positive["front share"], positive["rear share"] = in.FrontShare, 1-in.FrontShare
	}
	if in.Warmest != nil {
		positive["warmest temperature"] = float64(*in.Warmest)
	}
	finite := map[string]float64{
		"front scale": float64(in.FrontLoad), "rear scale": float64(in.RearLoad), "front shift": in.Shift.Front, "rear shift": in.Shift.Rear,
		"gauge error": float64(in.GaugeError), "pump stroke": float64(in.Now.Stroke),
	}
	for _, side := range Sides {
		in.wheel(side).check(string(side), positive, finite)
	}
	var shares float64
	for i, s := range in.Ground {
		finite["ground "+strconv.Itoa(i)+" share"] = s.Share
		shares += s.Share
		if !s.Soft {
			positive["ground "+strconv.Itoa(i)+" roughness"] = float64(s.Rough)
			positive["ground "+strconv.Itoa(i)+" speed"] = float64(s.Speed)
		}
	}
	positive["ground"] = shares
	return checkNumbers(positive, finite)
}

// checkNumbers refuses what must be above 0 and is not, and what is no number.
func checkNumbers(positive, finite map[string]float64) error {
	for name, x := range positive {
		if !(x > 0) || math.IsInf(x, 0) {
			return inputError(name, " must be more than 0")
		}
	}
	for name, x := range finite {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return inputError(name, " must be a number")
		}
	}
	return nil
}

// check collects what must be above 0 and what must at least be a number.
func (w WheelSetup) check(side string, positive, finite map[string]float64) {
	positive[side+" label"] = float64(w.Tyre.Label)
	positive[side+" inner width"] = float64(w.Rim.Inner)
	positive[side+" bead seat"] = float64(w.Rim.BeadSeat)
	finite[side+" measured"] = float64(w.Tyre.Measured)
	for name, x := range map[string]unit.Pascal{"tyre maximum": w.Tyre.Max, "tyre minimum": w.Tyre.Min, "rim maximum": w.Rim.Max, "table maximum": w.Rim.Table.Max} {
		finite[side+" "+name] = float64(x)
	}
	if t := w.Tyre.Test; t != nil {
		positive[side+" coefficient"], positive[side+" test pressure"], positive[side+" test load"] = t.Coefficient, float64(t.Pressure), float64(t.Load)
	}
}
