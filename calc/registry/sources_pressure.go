package registry

import "rimside/calc/pressure"

const groupDecision = "Deciding a pressure"

func deciding() []source {
	return []source{
		{groupDecision, "Usual practice: squash under the ride’s load, on air alone", "squash (width / w0)^power", []amount{
			{"front", percent(pressure.PracticeFront), "%"}, {"rear", percent(pressure.PracticeRear), "%"},
			{"power", pressure.PracticeGrowth, ""}, {"w0", pressure.PracticeWidth.MM(), "mm"},
		}, "fitted to remembered set-ups", practice},
		{groupDecision, "Usual practice: what the set-up makes of it", "", practicePerSetup(), "fitted to remembered set-ups", practice},
		{groupDecision, "The number: watts lost and distance from usual practice, weighed together",
			"the least of (1 − q) [watts above the best / unit + ln²(p / practice) / (2 spread²)] + q ln²(p / floor) / (2 spread²)", []amount{
				{"unit", float64(pressure.FeltWatts), "W"}, {"spread", percent(pressure.PracticeSpread), "%"},
			}, "how well practice is known, against what a rider would feel; q is the soft share of the distance", ours},
		{groupDecision, "Floor: the most a tyre may squash in braking or climbing", "", perSetup(), "no published figure was found", ours},
		{groupDecision, "Fine range: what it may cost more than the number, per wheel, and how far it may reach", "", []amount{
			{"cost", float64(pressure.FeltWatts), "W"}, {"reach", percent(pressure.FineShare), "%"},
		}, "nobody feels less", ours},
		{groupDecision, "One step of softer or firmer", "1.05^steps", one(percent(pressure.FirmStep), "%"), "small enough to try", ours},
		{groupDecision, "Wet ground", "", one(pressure.WetFactor, "×"), "a little softer, as is common", practice},
		{groupDecision, "Front with the rear’s tyre: at least this share of the rear", "", one(percent(pressure.SameTyreFront), "%"), "keeps the front from going far softer", ours},
		{groupDecision, "Hooked rim: what a maximum that nobody has read counts as", "", one(pressure.UnreadMax.KPa(), "kPa"), "missing knowledge is not permission", ours},
		{groupDecision, "A limit binds at the ride, where it is set and at the warmest hour", "the lowest of tyre, rim, table and cap, carried by the gas law", nil,
			"lower of tyre and rim marking: ISO 4210-1 in a national twin; the warmest hour is the stricter reading", published},
		{groupDecision, "A reading this near the aim is left alone", "the larger of the two", []amount{
			{"half a gauge’s step", pressure.LeaveWithin.KPa(), "kPa"}, {"share of the aim", percent(pressure.LeaveShare), "%"},
		}, "nobody’s gauge tells more", ours},
		{groupDecision, "Likely band: what may be off", "", []amount{
			{"ground rougher or smoother", pressure.BandRoughness, "×"}, {"load", percent(pressure.BandLoad), "%"},
			{"width as predicted", pressure.BandPredicted.MM(), "mm"}, {"width as measured", pressure.BandMeasured.MM(), "mm"},
		}, "each changed on its own", ours},
		{groupDecision, "Least that can be set in advance", "", one(pressure.MinLeft.KPa(), "kPa"), "below it the tyre would be flat where it is set", ours},
		{groupDecision, "Where the best is looked for", "", []amount{
			{"from", pressure.SearchLow.KPa(), "kPa"}, {"to", pressure.SearchHigh.KPa(), "kPa"},
		}, "wider than any tyre’s use", ours},
		{groupDecision, "The picture’s reach", "", []amount{
			{"from, of the floor", pressure.CurveBelow, "×"}, {"to, of what is asked for", pressure.CurveAbove, "×"},
		}, "room on both sides of the flat part", ours},
	}
}

func afterRide() []source {
	return []source{
		{groupDecision, "After the ride: how much more air each answer asks for, in logarithms", "ln(ridden / recommended) + value", perAnswer(),
			"steps and half steps that a rider can tell apart", ours},
		{groupDecision, "The personal shift from several rides", "the mean of what they say, with no shift as one more ride", []amount{
			{"spread of riders and of rides", pressure.ShiftSpread, ""}, {"most that counts", pressure.ShiftMost, ""},
		}, "a normal prior; in logarithms of pressure", ours},
		{groupDecision, "A settled trial counts for so many rides", "(difference / half its interval)²", one(pressure.TrialMost, "at most"), "one where the interval just clears zero; one stretch on one day is not all riding", ours},
	}
}

var feltWords = map[pressure.Felt]string{
	pressure.FeltTooHard: "much too harsh", pressure.FeltHard: "a bit harsh", pressure.FeltSoft: "a bit soft",
	pressure.FeltTooSoft: "squirmed",
}

func perAnswer() []amount {
	var out []amount
	for _, felt := range []pressure.Felt{pressure.FeltTooHard, pressure.FeltHard, pressure.FeltSoft, pressure.FeltTooSoft} {
		by, _ := pressure.FeltBy(felt)
		out = append(out, amount{feltWords[felt], by, ""})
	}
	return append(out, amount{"the rim struck, on no less than what was recommended", pressure.StruckBy, ""})
}

var setupWords = map[pressure.Setup]string{pressure.Tube: "tube", pressure.Tubeless: "tubeless", pressure.Insert: "tubeless with insert"}

func practicePerSetup() []amount {
	var out []amount
	for _, key := range pressure.Setups() {
		s := pressure.Setup(key)
		out = append(out, amount{setupWords[s], pressure.PracticeFactor(s), "×"})
	}
	return out
}

func perSetup() []amount {
	var out []amount
	for _, key := range pressure.Setups() {
		s := pressure.Setup(key)
		out = append(out, amount{setupWords[s], percent(pressure.HardSquash(s)), "%"})
	}
	return out
}
