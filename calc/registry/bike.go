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
func builtEnd(name string) *Field {
	return group(name,
		label("wheel", idLength).optional(), label("tyre", idLength).optional(),
		num("label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		num("inner_mm", "mm", 10, 110).optional(),
		yesNo("hookless_ok").instead(false),
		num("bead_seat_mm", "mm", 200, 700).optional(),
		num("tyre_bead_seat_mm", "mm", 200, 700).optional(),
		num("table_min_label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		num("table_max_label_mm", "mm", tyre.MinLabelMM, tyre.MaxLabelMM).optional(),
		oneOf("setup", pressure.Setups()).optional(),
		oneOf("profile", tyre.Profiles()).optional(),
		materialOf("rim_material"), materialOf("nipple_material"), materialOf("spoke_material"),
		materialOf("hub_material"), materialOf("bearing_material"),
		oneOf("brake", brakes).optional(),
		oneOf("axle", axles).optional(),
		oneOf("rotor_mount", mounts).optional(),
		num("rotor_min_mm", "mm", minRotorMM, maxRotorMM).optional(),
		yesNo("spared_indoors").instead(false),
	).optional()
}

var builtBike = group("bike",
	label("id", idLength).optional(),
	builtEnd("front"), builtEnd("rear"),
	oneOf("brake", brakes).optional(),
	materialOf("frame_material"), materialOf("bar_material"),
	oneOf("use", uses).optional(),
	yesNo("racing").optional(),
	yesNo("electric").optional(),
	oneOf("shifting", pack.Shiftings()).optional(),
	oneOf("pedals", pack.Pedals()).optional(),
	oneOf("derailleur", pack.Derailleurs()).optional(),
	oneOf("seatpost", pack.Posts()).optional(),
	oneOf("cockpit", pack.Cockpits()).optional(),
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
		RotorMount: v.text("rotor_mount"), RotorMin: v.num("rotor_min_mm"), Spared: v.yes("spared_indoors"),
	}
	if w.Brake == "" { // the bike's own word stands for both ends
		w.Brake = bike.text("brake")
	}
	return w
}

// pastField is what was noted about a bike, one shape for every calculation that reads it; a line carries what its kind has.
var pastField = listOf("history", 0, maxEvents,
	oneOf("kind", check.Events()),
	date("day"),
	oneOf("side", sides).optional(),
	oneOf("conditions", []string{"indoor", "wet", "salted", "dry"}).optional(),
	num("hours", "h", 0, maxHours).instead(salt.UnknownHours),
	num("km", "km", 0, 2000).optional(),
	oneOf("sweat", salt.Sweats()).optional(),
	oneOf("moment", check.Moments()).optional(),
	num("mm", "mm", minPadMM, maxPadMM).optional(),
	yesNo("new").optional(),
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
