package pack

import "slices"

// Whether something may travel.
const (
	Yes = "yes"
	No  = "no"
	Ask = "ask" // only with the airline's approval
)

// Where it then travels.
const (
	InBag      = "bag"
	InCabin    = "cabin"
	NotCarried = "none"
)

// ReadOn is the day on which the published rules were read; they change. It is not the date of any rule.
const ReadOn = "2026-11-25"

// The dates of the rules themselves.
const (
	airRules = "2026-03-27" // the air regulators' rule set (ICAO Doc 9284) with its newest addendum, as read
	usRules  = "2024"       // the newest edition of the security rule's page that was read
)

// Good is something to travel with; a size of 0 is not known. Count and size are of each piece's own; Who is whose it is, "" where nobody
// said.
type Good struct {
	ID            string
	Count         int
	Grams, Wh, ML float64
	Who           string
}

// Verdict is whether it may go into cabin and hold, why, and what follows.
type Verdict struct {
	ID, Cabin, Hold string
	Why             string  // one of Whys
	Values          []Value // the numbers in the reason
	Place           string  // where it then travels
	Asks            string  // what has to be told before it may go, as a member's name; "" when nothing has
	Dated           string  // date of the rule; "" where no published rule was read
	Parcel          bool    // it goes as a parcel: the courier is asked too
}

// GoodKinds lists what is known, as keys.
func GoodKinds() []string {
	return []string{
		"cartridge", "power_bank", "spare_battery", "lithium_installed", "shifting_battery", "shifting_built_in", "battery_pump", "aerosol",
		"flammable_spray", "alcohol", "solvent", "rubber_cement", "sealant", "mineral_oil", "brake_fluid", "tools", "pump",
	}
}

// sold are the kinds that a shop at the other end has, so that they need not travel.
var sold = []string{"cartridge", "aerosol", "flammable_spray", "alcohol", "solvent", "rubber_cement", "sealant", "mineral_oil", "brake_fluid"}

// SizeOf names the member that tells a kind's size: "grams", "wh", "ml", or "" where none matters.
func SizeOf(kind string) string {
	switch kind {
	case "cartridge":
		return "grams"
	case "power_bank", "spare_battery", "lithium_installed", "shifting_battery", "battery_pump":
		return "wh"
	case "aerosol", "sealant", "mineral_oil", "brake_fluid":
		return "ml"
	}
	return ""
}

// JudgeGoods judges each of the goods in the company of the others of the same person, by the strictest rule that the way or any leg
// touches.
func JudgeGoods(goods []Good, way Way, usLeg string) []Verdict {
	all := load{goods: goods, usLeg: usLeg}
	out := make([]Verdict, len(goods))
	for i, g := range goods {
		v := all.judge(g)
		if v.Dated == "" && g.ID != "tools" && g.ID != "pump" {
			v.Dated = airRules
		}
		switch way {
		case Car:
			v = Verdict{Cabin: Yes, Hold: Yes, Why: "no_flight_heat", Values: []Value{{"most_c", HotCar}}}
		case Train:
			v = v.byTrain()
		case Courier:
			v = v.byCourier(g.ID == "lithium_installed")
		}
		v.ID = g.ID
		if v.Place == "" {
			v.Place = v.place()
		}
		out[i] = v
	}
	return out
}

// byTrain: no published rule was read, so what may not simply fly is asked about.
func (v Verdict) byTrain() Verdict {
	if v.Hold == Yes || v.Cabin == Yes {
		return Verdict{Cabin: Yes, Hold: Yes, Why: "no_flight"}
	}
	return Verdict{Cabin: Ask, Hold: Ask, Why: "railway"}
}

// byCourier: a parcel has no cabin, and may fly. Nobody said what a courier thinks of a battery.
func (v Verdict) byCourier(battery bool) Verdict {
	if v.Hold == Yes && battery {
		v.Hold = Ask
	}
	v.Cabin, v.Parcel, v.Place = No, true, ""
	return v
}

// place: what may go in the cabin only is not in the bag; a plain yes goes before an approval.
func (v Verdict) place() string {
	switch {
	case v.Hold == Yes, v.Hold == Ask && v.Cabin != Yes:
		return InBag
	case v.Cabin != No:
		return InCabin
	}
	return NotCarried
}

// buyThere: of what may not travel, each kind once that a shop has; and alcohol for the rotors, which arrival wants.
func buyThere(goods []Verdict, t Trip) []string {
	var out []string
	for _, v := range goods {
		if v.Place == NotCarried && slices.Contains(sold, v.ID) && !slices.Contains(out, v.ID) {
			out = append(out, v.ID)
		}
	}
	if t.Way.handled() && t.Bike.rotors() && !slices.Contains(out, "alcohol") {
		out = append(out, "alcohol")
	}
	return out
}
