package registry

import "rimside/calc/pressure"

const groupDecision = "Deciding a pressure"

func deciding() []source {
	return []source{
		{groupDecision, "Custom: squash under the ride’s load, on air alone", "", []amount{
			{"front", percent(pressure.CustomFront), "%"}, {"rear", percent(pressure.CustomRear), "%"},
		}, "fitted to remembered set-ups", practice},
		{groupDecision, "Floor: the most a tyre may squash in braking or climbing", "", perSetup(), "no published figure was found", ours},
		{groupDecision, "Good range: what it may cost above the best, per wheel", "", one(float64(pressure.GoodWatts), "W"), "nobody feels less", ours},
		{groupDecision, "How far the curve may move custom", "", one(percent(pressure.MaxPull), "%"), "rough ground breaks rims, not records", ours},
		{groupDecision, "One step of softer or firmer", "", one(percent(pressure.FirmStep), "%"), "small enough to try; wet ground is one step softer, as is common", ours},
		{groupDecision, "Front with the rear’s tyre: at least this share of the rear", "", one(percent(pressure.SameTyreFront), "%"), "keeps the front from going far softer", ours},
		{groupDecision, "Hooked rim: both printed maxima are asked for above", "", one(pressure.AskAbove.KPa(), "kPa"), "missing knowledge is not permission", ours},
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
		{groupDecision, "After the ride: how much more air each answer asks for, in logarithms", "ln(ridden / custom) + value", perAnswer(),
			"steps and half steps that a rider can tell apart", ours},
		{groupDecision, "The personal shift from several rides", "the mean of what they say, with no shift as one more ride", []amount{
			{"spread of riders and of rides", pressure.ShiftSpread, ""}, {"most that counts", pressure.ShiftMost, ""},
		}, "a normal prior; in logarithms of pressure", ours},
	}
}

var feltWords = map[pressure.Felt]string{
	pressure.FeltTooHard: "much too harsh", pressure.FeltHard: "a bit harsh", pressure.FeltSoft: "a bit soft",
	pressure.FeltTooSoft: "squirmed, or the rim struck",
}

func perAnswer() []amount {
	var out []amount
	for _, felt := range []pressure.Felt{pressure.FeltTooHard, pressure.FeltHard, pressure.FeltSoft, pressure.FeltTooSoft} {
		by, _ := pressure.RideNote{Ridden: 1, Custom: 1, Felt: felt}.Observed()
		out = append(out, amount{feltWords[felt], by, ""})
	}
	return out
}

var setupWords = map[pressure.Setup]string{pressure.Tube: "tube", pressure.Tubeless: "tubeless", pressure.Insert: "tubeless with insert"}

func perSetup() []amount {
	var out []amount
	for _, key := range pressure.Setups() {
		s := pressure.Setup(key)
		out = append(out, amount{setupWords[s], percent(pressure.HardSquash(s)), "%"})
	}
	return out
}
