package pack

import "slices"

// Whether something may travel.
const (
	Yes = "yes"
	No  = "no"
	Ask = "ask" // only with the airline's approval
)

// ReadOn is the day on which the published rules were read; they change.
const ReadOn = "2026-11-25"

// Good is something to travel with; a size of 0 is not known. Count is for each person, sizes are for each piece.
type Good struct {
	ID            string
	Count         int
	Grams, Wh, ML float64
}

// Verdict is whether it may go into cabin and hold, why, and of which day the rule is: "" where no published rule was read.
type Verdict struct{ ID, Cabin, Hold, Why, Dated string }

// GoodKinds lists what is known, as keys.
func GoodKinds() []string {
	return []string{
		"cartridge", "power_bank", "spare_battery", "lithium_installed", "shifting_battery", "shifting_built_in", "battery_pump", "aerosol",
		"flammable_spray", "solvent", "rubber_cement", "sealant", "mineral_oil", "brake_fluid", "tools", "pump",
	}
}

// JudgeGoods judges each of the goods in the company of the others, by the strictest rule that the way or any leg touches.
func JudgeGoods(goods []Good, way Way, usLeg string) []Verdict {
	all := load{goods: goods, usLeg: usLeg}
	out := make([]Verdict, len(goods))
	for i, g := range goods {
		v := all.judge(g)
		switch way {
		case Car:
			v = Verdict{Cabin: Yes, Hold: Yes, Why: "No flight. Cartridges, sprays and batteries not in a parked car in the sun: under 50 °C."}
		case Train:
			v = v.byTrain()
		case Courier:
			v = v.byCourier(g.ID == "lithium_installed")
		default:
			v.Dated = ReadOn
		}
		v.ID = g.ID
		out[i] = v
	}
	return out
}

// byTrain: no published rule was read, so what may not simply fly is asked about.
func (v Verdict) byTrain() Verdict {
	if v.Hold == Yes || v.Cabin == Yes {
		return Verdict{Cabin: Yes, Hold: Yes, Why: "No flight."}
	}
	return Verdict{Cabin: Ask, Hold: Ask, Why: "No flight, but it may not simply fly either: ask the railway."}
}

// byCourier: a parcel has no cabin, and may fly. Nobody said what a courier thinks of a battery.
func (v Verdict) byCourier(battery bool) Verdict {
	if v.Hold == Yes && battery {
		v.Hold = Ask
	}
	v.Cabin, v.Dated, v.Why = No, ReadOn, "A parcel may fly: the rules of a hold count. Ask the courier. "+v.Why
	return v
}

// load is all that one person takes along.
type load struct {
	goods []Good
	usLeg string
}

// count adds up those that pass.
func (l load) count(pass func(Good) bool) int {
	n := 0
	for _, g := range l.goods {
		if pass(g) {
			n += g.Count
		}
	}
	return n
}

func (l load) judge(g Good) Verdict {
	switch g.ID {
	case "cartridge":
		return l.cartridge(g)
	case "power_bank", "spare_battery", "shifting_battery", "battery_pump":
		return l.spare(g)
	case "lithium_installed":
		return installed(g)
	case "shifting_built_in":
		return Verdict{Cabin: No, Hold: Ask, Why: "It stays in the frame: switched off or unplugged, buttons guarded. Ask the airline."}
	case "aerosol":
		return l.aerosol(g)
	case "sealant", "mineral_oil", "brake_fluid":
		return liquid(g)
	case "tools", "pump":
		return Verdict{Cabin: No, Hold: Yes, Why: "Into the hold: what a cabin takes differs by country."}
	case "rubber_cement":
		return Verdict{Cabin: No, Hold: No, Why: "Flammable glue does not fly. Take glueless patches."}
	}
	return Verdict{Cabin: No, Hold: No, Why: "Flammable sprays, alcohol, solvents and fuel do not fly."}
}

func appendOnce(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}
