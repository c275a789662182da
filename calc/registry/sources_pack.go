package registry

import (
	"rimside/calc/pack"
	"rimside/calc/unit"
)

const (
	groupPacking = "Packing"
	groupFlying  = "What may fly"
)

// read tells the day on which the published rules were read.
const read = ", as read on " + pack.ReadOn

func packSources() []source {
	return []source{
		{groupPacking, "Order of taking apart and of putting together", "as the lists say", nil, "in agreement with several published packing guides", practice},
		{groupPacking, "A tyre travels in a hold this far below the lower maximum of tyre and rim", "", one(pack.HoldMarginKPa, "kPa"),
			"14 CFR 25.841: 15 000 ft after a probable failure is a gain of 44.1 kPa, rounded up", published},
		{groupPacking, "Torque where the part carries no number", "", torqueAmounts(), "trade tables, makers’ tables and owner’s manuals", published},
		{groupPacking, "Pull at the end of a handle", "torque / (g × length)", one(unit.Gravity, "m/s²"), "standard gravity, by definition", published},
		{groupPacking, "Run-out of a rotor on arrival", "as written down before the journey, no more", nil, "a rotor that was true enough before is held to itself", practice},
		{groupPacking, "Cartridges in a parked car: at most", "", one(pack.HotCar, "°C"), "common practice", practice},
		{groupPacking, "Weight that most airlines’ desks take", "", one(pack.DeskKG, "kg"), "trade survey of 19 airlines, 2017: 23 to 50 kg", published},
		{groupPacking, "Weight that one pair of hands takes", "", one(pack.HandsKG, "kg"), "a common ceiling; ask the airline", practice},
		{groupFlying, "Gas cartridges without another hazard, for each person; none on a United States leg", "", []amount{
			{"at most", pack.MostCartridges, "pieces"}, {"fill of each", pack.CartridgeGrams, "g"}, {"capacity of each", pack.CartridgeML, "mL"},
		}, "ICAO Doc 9284 as an airline page applies it, 49 CFR 175.10, airport security rule" + read, published},
		{groupFlying, "Lithium batteries, for each person", "", []amount{
			{"free up to", pack.FreeWh, "Wh"}, {"asked about up to", pack.AskWh, "Wh"}, {"spares", pack.MostSpares, "pieces"},
			{"spares over the free size", pack.MostAsked, "pieces"},
		}, "press on IATA DGR 2026, airline pages" + read, published},
		{groupFlying, "Power banks, for each person, since 27 March 2026", "", one(pack.MostBanks, "pieces"), "regulator, on the ICAO Doc 9284 addendum" + read, published},
		{groupFlying, "Aerosols that do not burn, for each person", "", []amount{
			{"each", pack.CanML, "mL"}, {"each", pack.CanGrams, "g"}, {"in all", pack.CansML, "mL"}, {"in all", pack.CansGrams, "g"},
		}, "49 CFR 175.10(a)(1)" + read, published},
		{groupFlying, "A liquid or can in the cabin", "", one(pack.CabinML, "mL"), "49 CFR 175.10(a)(1) and airport security rules" + read, published},
		{groupFlying, "Sealant and fluids; batteries that shift gears; workshop alcohol", "hold if the safety sheet allows; as a spare battery; not at all", nil,
			"the verdicts stand to be confirmed: ask the airline", memory},
		{groupFlying, "Tools and pump", "hold, not cabin", nil, "cabin length limits differ by country", practice},
	}
}

var jointWords = map[string]string{
	"rotor_bolts": "six rotor bolts", "rotor_lockring": "rotor lockring", "derailleur": "rear derailleur to its hanger", "through_axle": "through axle",
	"top_cap": "top cap, preload only", "steerer": "stem on steerer", "faceplate": "stem faceplate", "post_clamp": "seatpost clamp", "pedals": "pedals",
}

func torqueAmounts() []amount {
	var out []amount
	for _, t := range pack.Torques() {
		out = append(out, amount{jointWords[t.Joint] + ", from", t.Low, "N m"}, amount{jointWords[t.Joint] + ", to", t.Top, "N m"})
	}
	return out
}
