package registry

import "rimside/calc/spokes"

const groupSpokes = "Spokes"

func spokesSources() []source {
	return []source{
		{groupSpokes, "Tension of a spoke from its pitch", "T = ρ π d² / 4 (2 L f)²", one(spokes.SteelDensity, "kg/m3"), "string equation, as in a published note on spoke pitch; density of stainless steel from a standard table", published},
		{groupSpokes, "Partials of a stiff string", "f_k = k f0 √(1 + B k²)", []amount{
			{"B at the least", spokes.Softest, ""}, {"B at the most", spokes.Stiffest, ""},
		}, "Fletcher 1964; the range of B is our choice", published},
		{groupSpokes, "Which note a pluck is", "the fewest tones left over and the fewest partials missing", []amount{
			{"lowest", spokes.Deepest, "Hz"}, {"highest", spokes.Shrillest, "Hz"}, {"a tone belongs to a partial within", percent(spokes.ApartBy), "%"}, {"a note is taken from this confidence", spokes.Sure, ""},
		}, "after the two-way mismatch of Maher and Beauchamp 1994; its numbers are our choice", published},
		{groupSpokes, "A spoke stands out beyond this from its side’s mean", "", one(percent(spokes.OutlierBeyond), "%"), "wheel builders", practice},
		{groupSpokes, "Usual tension where the rim’s maker prints none", "", []amount{
			{"at most", spokes.UsualMost, "N"}, {"on the slack side at least", spokes.UsualLeast, "N"},
		}, "trade pages", published},
	}
}
