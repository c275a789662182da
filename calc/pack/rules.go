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
)

func refuse(why string) Verdict { return Verdict{Cabin: No, Hold: No, Why: why} }

func (l load) cartridge(g Good) Verdict {
	switch {
	case l.usLeg == "yes":
		return refuse("Filled cartridges are refused in cabin and hold on any United States leg. Buy them there.")
	case l.usLeg != "no":
		return refuse("Legs not known. With one in the United States filled cartridges are refused: say yes or no.")
	case g.Grams == 0 && g.ML == 0:
		return refuse("Size not known: read the grams on it. Over " + short(CartridgeGrams) + " g (" + short(CartridgeML) + " mL) it never flies.")
	case !small(g):
		return refuse("Over " + short(CartridgeGrams) + " g (" + short(CartridgeML) + " mL) it never flies.")
	case l.count(func(o Good) bool { return o.ID == g.ID && small(o) }) > MostCartridges:
		return refuse("At most " + short(MostCartridges) + " for each person.")
	}
	return Verdict{Cabin: No, Hold: Ask, Why: "Hold only, with the airline’s approval to show: at most " + short(MostCartridges) + ", each up to " +
		short(CartridgeGrams) + " g (" + short(CartridgeML) + " mL)."}
}

func small(g Good) bool { return g.Grams <= CartridgeGrams && g.ML <= CartridgeML }

// asked says whether a spare needs approval. A battery that shifts gears or works a small pump is small without being told.
func asked(g Good) bool {
	unknown := g.Wh == 0 && (g.ID == "power_bank" || g.ID == "spare_battery")
	return isSpare(g) && (unknown || g.Wh > FreeWh) && !(g.Wh > AskWh)
}

func isSpare(g Good) bool {
	return g.ID == "power_bank" || g.ID == "spare_battery" || g.ID == "shifting_battery" || g.ID == "battery_pump"
}

func (l load) spare(g Good) Verdict {
	bank := func(o Good) bool { return o.ID == "power_bank" && !(o.Wh > AskWh) }
	switch {
	case g.Wh > AskWh:
		return refuse("Over " + short(AskWh) + " Wh, as most e-bike batteries: it does not fly.")
	case bank(g) && l.count(bank) > MostBanks:
		return refuse("At most " + short(MostBanks) + " power banks for each person, since 27 March 2026.")
	case asked(g) && l.count(asked) > MostAsked:
		return refuse("Over " + short(FreeWh) + " Wh, or not known: at most " + short(MostAsked) + " for each person.")
	case asked(g):
		return Verdict{Cabin: Ask, Hold: No, Why: "Over " + short(FreeWh) + " Wh, or not known: with the airline’s approval, at most " + short(MostAsked) +
			". Contacts covered, one by one."}
	case l.count(func(o Good) bool { return isSpare(o) && !(o.Wh > AskWh) }) > MostSpares:
		return refuse("At most " + short(MostSpares) + " spare batteries for each person.")
	case g.ID == "power_bank":
		return Verdict{Cabin: Yes, Hold: No, Why: "Cabin only, at most " + short(MostBanks) + ", never charged on board. Contacts covered."}
	}
	return Verdict{Cabin: Yes, Hold: No, Why: "Cabin only, off, contacts covered one by one."}
}

func installed(g Good) Verdict {
	switch {
	case g.Wh > AskWh:
		return refuse("Over " + short(AskWh) + " Wh, as most e-bike batteries: it does not fly.")
	case g.Wh == 0 || g.Wh > FreeWh:
		return Verdict{Cabin: Ask, Hold: Ask, Why: "Over " + short(FreeWh) + " Wh, or not known: ask the airline."}
	}
	return Verdict{Cabin: Yes, Hold: Yes, Why: "Cabin preferred. In the hold fully off, and guarded against switching on."}
}

// aerosol is one that does not burn, a tyre-repair can among them.
func (l load) aerosol(g Good) Verdict {
	var ml, grams float64
	for _, o := range l.goods {
		if o.ID == g.ID {
			ml += float64(o.Count) * o.ML
			grams += float64(o.Count) * o.Grams
		}
	}
	v := Verdict{Cabin: No, Hold: Yes, Why: "Capped, not flammable: up to " + short(CanML) + " mL each and " + short(CansML) + " mL in all; in the cabin " +
		short(CabinML) + " mL."}
	switch {
	case g.ML > CanML || g.Grams > CanGrams || ml > CansML || grams > CansGrams:
		v.Hold = No
	case g.ML == 0 && g.Grams == 0:
		v.Hold, v.Why = Ask, "Size not known. "+v.Why
	case g.ML > 0 && g.ML <= CabinML:
		v.Cabin = Yes
	}
	return v
}

func liquid(g Good) Verdict {
	v := Verdict{Cabin: No, Hold: Yes, Why: "Only if its safety sheet says: not dangerous goods. In the cabin up to " + short(CabinML) + " mL."}
	if g.ML > 0 && g.ML <= CabinML {
		v.Cabin = Yes
	}
	return v
}
