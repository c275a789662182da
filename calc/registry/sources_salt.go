package registry

import "rimside/calc/salt"

const groupSalt = "Sweat, salt and metals"

func saltSources() []source {
	return []source{
		{groupSalt, "Anodic index", "gap = the distance between two", perMetal(func(m salt.Metal) float64 { return m.Index }), "two trade reference tables; carbon stands at 0", published},
		{groupSalt, "Potential in flowing sea water, lowest", "gap = the widest distance between two ranges", perMetal(func(m salt.Metal) float64 { return m.Low }),
			"a corrosion society’s print of the ASTM G82 set, against calomel; signs restored", published},
		{groupSalt, "Potential in flowing sea water, highest", "gap = the widest distance between two ranges", perMetal(func(m salt.Metal) float64 { return m.High }),
			"a corrosion society’s print of the ASTM G82 set, against calomel; signs restored", published},
		{groupSalt, "Two metals may lie this far apart in wet or salted use; the larger gap counts", "", one(salt.GapLimit, "V"),
			"trade references; another chart says 0.20 V, and the stricter one is used", published},
		{groupSalt, "Sweat of an indoor hour", "", one(salt.SweatRate, "L/h"), "Baker et al. 2016, 506 athletes", published},
		{groupSalt, "Salt in sweat", "sodium as sodium chloride", []amount{
			{"low", salt.SaltLow, "g/L"}, {"mean", salt.SaltMean, "g/L"}, {"high", salt.SaltHigh, "g/L"}, {"molar mass", salt.NaClMolar, "g/mol"},
		}, "Baker et al. 2016, whole body: lowest, mean, highest", published},
		{groupSalt, "Share of the sweat that lands on the bike", "", one(percent(salt.DripShare), "%"), "an assumption, not measured", ours},
		{groupSalt, "Salt that a ride outdoors leaves", "", []amount{{"wet", salt.WetRate, "g/h"}, {"salted road", salt.SaltedRate, "g/h"}},
			"an assumption, not measured", ours},
		{groupSalt, "A ride whose hours were not noted counts as", "", one(salt.UnknownHours, "h"), "an assumption", ours},
		{groupSalt, "What cleaning leaves", "", []amount{{"a wipe-down: it misses the crevices", percent(salt.WipeLeaves), "%"}, {"a wet wash", percent(salt.WashLeaves), "%"}},
			"an assumption, not measured", ours},
		{groupSalt, "Salt on the bike at which a wash is due, by the worst pair of metals", "", []amount{
			{"mild", salt.WashAtMild, "g"}, {"usual", salt.WashAtUsual, "g"}, {"strong, or not known", salt.WashAtStrong, "g"},
		}, "set so that five hours a week indoors ask for a wash every one to two weeks, as is common practice", ours},
		{groupSalt, "Volts above the limit from which a pair counts as", "", []amount{{"usual", salt.UsualFromV, "V"}, {"strong", salt.StrongFromV, "V"}},
			"stainless spokes in an aluminium hub are usual; aluminium in carbon is a known failure", ours},
	}
}

func perMetal(of func(salt.Metal) float64) []amount {
	var out []amount
	for _, m := range salt.Metals() {
		if value := of(m); value != 0 {
			out = append(out, amount{m.Name, value, "V"})
		}
	}
	return out
}
