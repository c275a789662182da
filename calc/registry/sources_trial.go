package registry

import "rimside/calc/trial"

const groupTrial = "Trials"

func trialSources() []source {
	looks := []amount{}
	for n := 1; n <= trial.MostLooks; n++ {
		looks = append(looks, amount{lookWords[n-1], percent(trial.Level(2, n)), "%"})
	}
	return []source{
		{groupTrial, "The difference of two means and its interval", "d ± t s, s² = s1²/n1 + s2²/n2", one(percent(trial.MostWrong), "%"), "Welch 1947, degrees of freedom after Satterthwaite 1946, of few runs lowered until no ratio of scatters exceeds the share (Wang 1971); the share is how often a difference is called where there is none", published},
		{groupTrial, "How often one of several looks may be wrong", "", looks, "Pocock 1977, group sequential methods", published},
		{groupTrial, "Three arms: each pair may be wrong a third as often", "α / 3", nil, "Bonferroni’s inequality", published},
		{groupTrial, "Runs that would settle it", "|d| = (t1 + t2) s √(2/n)", one(percent(trial.Power), "%"), "usual estimate of a sample’s size; the share is how likely a difference as large as it looks is then shown", practice},
		{groupTrial, "Order of runs", "ABBA; Latin square", nil, "balanced against a steady drift of wind, warmth and rider", practice},
	}
}

var lookWords = [trial.MostLooks]string{"one look", "two looks", "three looks", "four looks", "five looks"}
