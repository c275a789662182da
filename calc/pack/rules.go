package pack

// Limits of the published rules, each for one person; where sources conflict the stricter one.
const (
	MostCartridges = 4
	CartridgeGrams = 28 // "50 mL = 28 g", the air regulators' own
	CartridgeML    = 50
	FreeWh         = 100
	AskWh          = 160
	MostSpares     = 20
	MostBanks      = 2 // since 27 March 2026
	MostAsked      = 2 // spares over 100 Wh
	CabinML        = 100
	CanML          = 500
	CanGrams       = 500
	CansML         = 2000
	CansGrams      = 2000
	HotCar         = 50 // °C, for cartridges: common practice
)

// Whys lists the reasons of verdicts.
func Whys() []string {
	return []string{
		"us_leg", "legs_unknown", "grams_unknown", "cartridge_size", "cartridge_count", "cartridge_hold",
		"wh_size", "bank_count", "over_free_count", "over_free_ask", "wh_unknown", "spare_count", "bank_cabin", "spare_cabin",
		"fitted_unknown", "fitted_ask", "fitted_off", "built_in", "can_size", "can_unknown", "can", "liquid", "tools", "cement", "burns",
		"no_flight_heat", "no_flight", "railway",
	}
}

func refuse(why string, values ...Value) Verdict {
	return Verdict{Cabin: No, Hold: No, Why: why, Values: values}
}

var cartridgeSize = []Value{{"most_g", CartridgeGrams}, {"most_ml", CartridgeML}}

func (l load) cartridge(g Good) Verdict {
	switch {
	case l.usLeg == "yes":
		v := refuse("us_leg")
		v.Dated = usRules
		return v
	case l.usLeg != "no":
		v := refuse("legs_unknown")
		v.Asks, v.Dated = "legs_us", usRules
		return v
	case g.Grams == 0 && g.ML == 0:
		v := refuse("grams_unknown", cartridgeSize...)
		v.Asks = "grams"
		return v
	case !small(g):
		return refuse("cartridge_size", cartridgeSize...)
	case l.count(g, func(o Good) bool { return o.ID == g.ID && small(o) }) > MostCartridges:
		return refuse("cartridge_count", Value{"most", MostCartridges})
	}
	return Verdict{Cabin: No, Hold: Ask, Why: "cartridge_hold", Values: append([]Value{{"most", MostCartridges}}, cartridgeSize...)}
}

func small(g Good) bool { return g.Grams <= CartridgeGrams && g.ML <= CartridgeML }

// asked says whether a spare needs approval. A battery that shifts gears or works a small pump is small without being told.
func asked(g Good) bool { return isSpare(g) && (unread(g) || g.Wh > FreeWh) && !(g.Wh > AskWh) }

func unread(g Good) bool { return g.Wh == 0 && (g.ID == "power_bank" || g.ID == "spare_battery") }

func isSpare(g Good) bool {
	return g.ID == "power_bank" || g.ID == "spare_battery" || g.ID == "shifting_battery" || g.ID == "battery_pump"
}

func (l load) spare(g Good) Verdict {
	bank := func(o Good) bool { return o.ID == "power_bank" && !(o.Wh > AskWh) }
	free := Value{"free_wh", FreeWh}
	switch {
	case g.Wh > AskWh:
		return refuse("wh_size", Value{"most_wh", AskWh})
	case bank(g) && l.count(g, bank) > MostBanks:
		return refuse("bank_count", Value{"most", MostBanks})
	case asked(g) && l.count(g, asked) > MostAsked:
		v := refuse("over_free_count", free, Value{"most", MostAsked})
		v.Asks = asks(g)
		return v
	case unread(g):
		return Verdict{Cabin: Ask, Hold: No, Why: "wh_unknown", Asks: "wh", Values: []Value{free, {"most_wh", AskWh}}}
	case asked(g):
		return Verdict{Cabin: Ask, Hold: No, Why: "over_free_ask", Values: []Value{free, {"most", MostAsked}}}
	case l.count(g, func(o Good) bool { return isSpare(o) && !(o.Wh > AskWh) }) > MostSpares:
		return refuse("spare_count", Value{"most", MostSpares})
	case g.ID == "power_bank":
		return Verdict{Cabin: Yes, Hold: No, Why: "bank_cabin", Values: []Value{{"most", MostBanks}}}
	}
	return Verdict{Cabin: Yes, Hold: No, Why: "spare_cabin"}
}

func asks(g Good) string {
	if unread(g) {
		return "wh"
	}
	return ""
}

func installed(g Good) Verdict {
	switch {
	case g.Wh > AskWh:
		return refuse("wh_size", Value{"most_wh", AskWh})
	case g.Wh == 0:
		return Verdict{Cabin: Ask, Hold: Ask, Why: "fitted_unknown", Asks: "wh", Values: []Value{{"free_wh", FreeWh}}}
	case g.Wh > FreeWh:
		return Verdict{Cabin: Ask, Hold: Ask, Why: "fitted_ask", Values: []Value{{"free_wh", FreeWh}}}
	}
	return Verdict{Cabin: Yes, Hold: Yes, Place: InCabin, Why: "fitted_off"} // cabin preferred
}

// aerosol is one that does not burn, a tyre-repair can among them.
func (l load) aerosol(g Good) Verdict {
	cans := func(size func(Good) float64) float64 {
		return l.sum(g, func(o Good) float64 {
			if o.ID == g.ID {
				return size(o)
			}
			return 0
		})
	}
	ml, grams := cans(func(o Good) float64 { return o.ML }), cans(func(o Good) float64 { return o.Grams })
	v := Verdict{Cabin: No, Hold: Yes, Why: "can", Values: []Value{{"most_ml", CanML}, {"all_ml", CansML}, {"cabin_ml", CabinML}}}
	switch {
	case g.ML > CanML || g.Grams > CanGrams || ml > CansML || grams > CansGrams:
		v.Hold, v.Why = No, "can_size"
	case g.ML == 0 && g.Grams == 0:
		v.Hold, v.Why, v.Asks = Ask, "can_unknown", "ml"
	case g.ML > 0 && g.ML <= CabinML:
		v.Cabin = Yes
	}
	return v
}

func liquid(g Good) Verdict {
	v := Verdict{Cabin: No, Hold: Yes, Why: "liquid", Values: []Value{{"cabin_ml", CabinML}}}
	switch {
	case g.ML == 0:
		v.Asks = "ml"
	case g.ML <= CabinML:
		v.Cabin = Yes
	}
	return v
}
