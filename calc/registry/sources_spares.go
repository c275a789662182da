package registry

import "rimside/calc/spares"

const groupSpares = "Spare wheels"

func spareSources() []source {
	return []source{
		{groupSpares, "Hub width and axle diameter must be the bike’s; bead seat, brake and rotor diameter too", "", []amount{{"as far apart and still the same", spares.SameWithin.MM(), "mm"}},
			"trade axle guides; swap rule: common practice", practice},
		{groupSpares, "How long a change takes at the roadside", "", []amount{
			{"looking first", spares.LookMinutes, "min"}, {"moving rotor and sprockets", spares.MoveMinutes, "min"}, {"adding a spacer", spares.SpacerMinutes, "min"},
			{"fitting a tyre", spares.TyreMinutes, "min"},
		}, "what a practised hand needs", ours},
		{groupSpares, "Which wheels to take along", "largest sum of the weights of what is covered", nil, "weighted maximum coverage; greedy, then branch and bound (Nemhauser, Wolsey and Fisher 1978)", published},
		{groupSpares, "One pressure for several riders", "p = √(softest · firmest), inside every floor and limit", nil, "least largest distance in ln p", ours},
	}
}

func spareBikeSources() []source {
	return []source{
		{groupSpares, "Which spare bike is nearest", "|Δ saddle| + 2 · |Δ reach|, what is not known behind", []amount{{"nearer than a saddle is set", spares.SetWithin.MM(), "mm"}, {"a millimetre of reach counts", spares.ReachWeight, ""}},
			"saddle height takes one screw, reach another stem", ours},
		{groupSpares, "How long a whole bike takes to set", "", []amount{{"saddle", spares.SaddleMinutes, "min"}, {"moving pedals", spares.PedalMinutes, "min"}}, "what a practised hand needs", ours},
	}
}

func tagSources() []source {
	return []source{{groupSpares, "The square on a wheel’s tag", "byte mode, error correction M, sizes 1 to 6, mask 0", nil, "ISO/IEC 18004", published}}
}
