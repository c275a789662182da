package registry

import "rimside/calc/ground"

const groupMeasured = "Ground, measured with the phone"

func measuring() []source {
	return []source{
		{groupMeasured, "Spectrum of the acceleration", "mean of half-overlapping Hann windows", []amount{
			{"one window", ground.StretchSeconds, "s"}, {"from", ground.BandLow, "Hz"}, {"to", ground.BandHigh, "Hz"},
		}, "Welch 1967; window and band are our choice", published},
		{groupMeasured, "Classes of roughness: mean of class A; each further class is four times as rough", "", one(ground.ClassMeanA*1e6, "10⁻⁶ m³"), "ISO 8608", published},
		{groupMeasured, "Doubt about the machine that was told, as a deviation", "", []amount{
			{"tyre’s stiffness", percent(ground.TyreDoubt), "%"}, {"masses", percent(ground.MassDoubt), "%"},
		}, "what scales and tables leave open", ours},
		{groupMeasured, "Bars and stem may bend with the phone on them", "", []amount{
			{"from", ground.BarLeastHertz, "Hz"}, {"to", ground.BarMostHertz, "Hz"}, {"damping ratio", ground.BarDamping, ""},
		}, "bars shaken in workshops, from memory; damping with hands on is our choice", memory},
		{groupMeasured, "Departure from the model that is no surprise", "", []amount{
			{"one frequency", percent(ground.LineDoubt), "%"}, {"the whole", percent(ground.ModelDoubt), "%"},
		}, "the model’s own roughness", ours},
		{groupMeasured, "A frequency counts in proportion only, beyond so many deviations", "", one(ground.Stray, ""), "Huber 1964; the border is our choice", published},
		{groupMeasured, "Interval, in deviations of the logarithm", "", one(ground.IntervalDeviations, ""), "what simulated rides bear out", ours},
		{groupMeasured, "A record is taken with", "", []amount{
			{"seconds, at least", ground.ShortestSeconds, "s"}, {"samples a second, at least", ground.LowestHertz, "Hz"}, {"speed’s deviation, at most", percent(ground.SpeedSpread), "%"},
			{"shape’s misfit, at most", ground.MisfitMost, ""},
		}, "what simulated rides bear out", ours},
	}
}
