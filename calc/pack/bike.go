package pack

import (
	"slices"

	"rimside/calc/check"
)

// Bike is what packing asks of a bike; "" is not known, everywhere, and "none" does not apply.
type Bike struct {
	check.Bike
	Electric   string // yes, no: shifting or motor
	Shifting   string // one of Shiftings
	Pedals     string // one of Pedals
	Derailleur string // one of Derailleurs
	Post       string // one of Posts
	Cockpit    string // one of Cockpits
}

// Shiftings are how the gears are shifted.
func Shiftings() []string { return []string{"cable", "electric", none} }

// Pedals are what turns the pedals: a spanner at their flats or an 8 mm key in their axle.
func Pedals() []string { return []string{"spanner", "hex", none} }

// Derailleurs are where the rear derailleur hangs: on a hanger that it is taken off, or on the axle or straight on the frame, where it
// stays.
func Derailleurs() []string { return []string{"hanger", "axle", "frame", none} }

// Posts are what holds a seat post from inside: nothing, wires, a dropper's cable; or a mast, which is no post to take out.
func Posts() []string { return []string{"plain", "wires", "dropper", none} }

// Cockpits are how the bars come off: at the faceplate; with the stem off the steerer; or not at all, since hoses run through the head
// tube: then they are turned.
func Cockpits() []string { return []string{"faceplate", "stem", "hoses", none} }

const none = "none"

// Way is how the bike travels.
type Way string

// The ways.
const (
	AirBag  Way = "air_bag"
	AirBox  Way = "air_box"
	AirCase Way = "air_case"
	Train   Way = "train"
	Car     Way = "car"
	Courier Way = "courier"
)

// Ways lists them as keys.
func Ways() []string {
	return []string{string(AirBag), string(AirBox), string(AirCase), string(Train), string(Car), string(Courier)}
}

// handled says whether strangers lift, stack and throw the bike, and the rules of a flight count: it then goes as small as it gets, its
// rotors off. By train and by car only the wheels come out.
func (w Way) handled() bool { return w != Train && w != Car }

// could says whether a value is the wanted one or is not known; sure says that it is known to be.
func could(value, wanted string) bool { return value == wanted || value == "" || value == "unknown" }

func sure(value, wanted string) bool { return value == wanted }

// electric says whether there may be a battery for shifting or motor. A motor is not assumed of a bike whose shifting is known: nobody
// overlooks one.
func (b Bike) electric() bool {
	return b.Electric == "yes" || b.Shifting == "electric" || b.Electric == "" && b.Shifting == ""
}

func (b Bike) shifts() bool { return b.Shifting != none && b.Derailleur != none }

// end is one end of the bike.
type end struct {
	side string
	check.Wheel
}

func (b Bike) ends() []end { return []end{{"front", b.Front}, {"rear", b.Rear}} }

func (e end) disc() bool { return could(e.Brake, "disc") }

func (b Bike) rotors() bool { return slices.ContainsFunc(b.ends(), end.disc) }

// rotorTool is what takes this end's rotor off; both kinds where its mount is not known.
func (e end) rotorTool() string {
	switch e.RotorMount {
	case "six_bolt":
		return Torx25
	case "lockring":
		return LockringTool
	}
	return RotorTools
}

// axleTool: a quick release opens by hand, and so do some through axles.
func (e end) axleTool() string {
	if could(e.Axle, "through_axle") {
		return Hex6
	}
	return ""
}
