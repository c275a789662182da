package spares

import "rimside/calc/unit"

// Side is an end of the bike.
type Side string

// The ends.
const (
	Front Side = "front"
	Rear  Side = "rear"
)

// Sides lists them.
func Sides() []string { return []string{string(Front), string(Rear)} }

// Brake is what slows a wheel.
type Brake string

// The brakes.
const (
	Disc Brake = "disc"
	Rim  Brake = "rim"
)

// Brakes lists them.
func Brakes() []string { return []string{string(Disc), string(Rim)} }

// Hub is what frame or fork and wheel must have alike. Zero is not known.
type Hub struct {
	Side     Side
	Width    unit.Metre // between the dropouts
	Axle     unit.Metre // diameter
	BeadSeat unit.Metre
	Brake    Brake
	Rotor    unit.Metre // diameter
	Speeds   int        // sprockets; rear only, like what follows
	Spacing  string     // of the sprockets, as the trade names it
	MaxCog   int        // teeth: a wheel's biggest, or the biggest that the derailleur and the chain reach
	Mount    string     // of the rotor; for a bare wheel only
	Body     string     // of the freehub; for a bare wheel only
}

// End is one end of a bike, waiting for a wheel.
type End struct {
	Hub
	Room     unit.Metre // the widest tyre that clears frame or fork
	MinLabel unit.Metre // the narrowest tyre wanted
}

// Spare is a wheel in the car.
type Spare struct {
	ID string
	Hub
	Tyre    unit.Metre // width of its tyre; 0 for none or not known
	Bare    bool       // without rotor and sprockets: the rider's own are moved over
	OutWith string     // who has it; "" for nobody
	Stopped bool       // may not be ridden
}

// Freehub bodies by what they carry: families of splines that do not interchange, but for one spacer (trade page).
const (
	SplineTen    = "spline_8_10" // sprockets for 8 to 10 speeds
	SplineEleven = "spline_11"   // the same splines, 1.85 mm wider
)

// widerBody is the body on which another one's sprockets sit with a spacer of 1.85 mm (trade page).
var widerBody = map[string]string{SplineTen: SplineEleven}
