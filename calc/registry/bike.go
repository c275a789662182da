package registry

import (
	"rimside/calc/check"
	"rimside/calc/due"
	"rimside/calc/pack"
	"rimside/calc/pressure"
	"rimside/calc/salt"
	"rimside/calc/tyre"
)

// Keys of a build that no calculation's package lists.
var (
	brakes = []string{"disc", "rim"}
	axles  = []string{"quick_release", "through_axle"}
	mounts = []string{"six_bolt", "lockring"}
	uses   = []string{"road", "other"}
	sides  = []string{"front", "rear"}
)

// A mark on a rotor, and what may be measured on a rotor or pad.
const minRotorMM, maxRotorMM, minPadMM, maxPadMM = 0.5, 4, 0.01, 10

// builtEnd is one end of a bike; everything may be left out, which makes the questions more, not fewer.
func builtEnd(name, words string) Field {
	return group(name, words,
		label("wheel", words+" wheel's id", idLength).optional(), label("tyre", words+" tyre's id", idLength).optional(),
		num("label_mm", words+" width printed on the tyre", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		num("inner_mm", words+" rim's inner width", "mm", 10, 110).optional(),
		yesNo("hookless_ok", words+" tyre named for hookless rims").instead(false),
		num("bead_seat_mm", words+" rim's bead seat diameter", "mm", 200, 700).optional(),
		num("tyre_bead_seat_mm", words+" tyre's bead seat diameter", "mm", 200, 700).optional(),
		num("table_min_label_mm", words+" narrowest width in the rim's table", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		num("table_max_label_mm", words+" widest width in the rim's table", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		oneOf("setup", words+" setup", pressure.Setups()).optional(),
		oneOf("profile", words+" rim edge", tyre.Profiles()).optional(),
		materialOf("rim_material", words+" rim"), materialOf("nipple_material", words+" nipples"), materialOf("spoke_material", words+" spokes"),
		materialOf("hub_material", words+" hub"), materialOf("bearing_material", words+" bearings"),
		oneOf("brake", words+" brake", brakes).optional(),
		oneOf("axle", words+" axle", axles).optional(),
		oneOf("rotor_mount", words+" rotor mount", mounts).optional(),
		num("rotor_min_mm", words+" rotor’s mark of least thickness", "mm", minRotorMM, maxRotorMM).optional(),
	).optional()
}

var builtBike = group("bike", "Bike",
	label("id", "Bike's id", idLength).optional(),
	builtEnd("front", "Front"), builtEnd("rear", "Rear"),
	oneOf("brake", "Brake", brakes).optional(),
	materialOf("frame_material", "Frame"), materialOf("bar_material", "Bar"),
	oneOf("use", "Use", uses).optional(),
	yesNo("racing", "Racing").optional(),
	yesNo("electric", "Electric shifting or motor").optional(),
	oneOf("shifting", "Shifting", pack.Shiftings()).optional(),
	oneOf("pedals", "Pedals turned by", pack.Pedals()).optional(),
	oneOf("derailleur", "Rear derailleur on", pack.Derailleurs()).optional(),
	oneOf("seatpost", "Seat post", pack.Posts()).optional(),
	oneOf("cockpit", "Bars come off", pack.Cockpits()).optional(),
)

func builtBikeOf(v values) due.Bike {
	bike := due.Bike{Bike: check.Bike{
		Front: builtEndOf(v, "front"), Rear: builtEndOf(v, "rear"), Frame: v.text("frame_material"), Bar: v.text("bar_material"),
		Road: v.text("use") == "road", Racing: v.yes("racing"),
	}}
	bike.FrontBearing, bike.RearBearing = material(v.in("front"), "bearing_material"), material(v.in("rear"), "bearing_material")
	return bike
}

func builtEndOf(bike values, side string) check.Wheel {
	v := bike.in(side)
	w := check.Wheel{
		Setup: v.text("setup"), Profile: v.text("profile"), Rim: v.text("rim_material"), Nipple: v.text("nipple_material"),
		Spoke: v.text("spoke_material"), Hub: v.text("hub_material"), Brake: v.text("brake"), Axle: v.text("axle"),
		RotorMount: v.text("rotor_mount"), RotorMin: v.num("rotor_min_mm"),
	}
	if w.Brake == "" { // the bike's own word stands for both ends
		w.Brake = bike.text("brake")
	}
	return w
}

// pastField is what was noted about a bike, one shape for every calculation that reads it; a line carries what its kind has.
var pastField = listOf("history", "History", 0, maxEvents,
	oneOf("kind", "Kind", check.Events()),
	date("day", "Day"),
	oneOf("side", "Side", sides).optional(),
	oneOf("conditions", "Conditions of the ride", []string{"indoor", "wet", "salted", "dry"}).optional(),
	num("hours", "Hours ridden", "h", 0, maxHours).instead(salt.UnknownHours),
	num("km", "Distance ridden", "km", 0, 2000).optional(),
	oneOf("sweat", "Sweat", salt.Sweats()).optional(),
	oneOf("moment", "Moment of the check", check.Moments()).optional(),
	num("mm", "Measured at rotor or pads", "mm", minPadMM, maxPadMM).optional(),
	yesNo("new", "Fitted new").optional(),
).optional()

func pastOf(v values) []due.Event {
	var out []due.Event
	for _, e := range v.items("history") {
		out = append(out, due.Event{
			Event: check.Event{
				Day: e.day("day"), Kind: e.text("kind"), Conditions: e.text("conditions"), Moment: e.text("moment"), New: e.yes("new"),
			},
			Side: e.text("side"), Hours: hoursOf(e), KM: e.num("km"), Sweat: e.text("sweat"), MM: e.num("mm"),
		})
	}
	return out
}
