package registry

import (
	"rimside/calc/air"
	"rimside/calc/unit"
)

const groupAir = "Air"

func atmosphere() []source {
	return []source{
		{groupAir, "Air pressure at an altitude", "p = p0 (1 − L H / T0)^n", []amount{
			{"p0, at sea level", unit.Pascal(air.SeaLevelPressure).KPa(), "kPa"},
			{"L, cooling with altitude", air.LapseRate, "K/m"},
			{"T0, at sea level", air.SeaLevelKelvin, "K"},
			{"n", air.PressureExponent, ""},
		}, "ISO 2533, the standard atmosphere; the day’s weather moves it by about 3 kPa", published},
		{groupAir, "A closed tyre at another temperature and altitude", "p2 = (p1 + pa1) T2 / T1 − pa2, in kelvin", []amount{
			{"0 °C", unit.ZeroCelsius, "K"},
		}, "gas law at constant volume; SI brochure", published},
	}
}

func leaking() []source {
	return []source{
		{groupAir, "A tyre’s slow leak", "share lost in a day = 1 − (p2 / p1)^(1 / days)", nil,
			"two readings of the same tyre; no published rate fits all tyres", practice},
		{groupAir, "A later reading may lie higher by this and still count as no leak", "", one(air.ReadingScatter.KPa(), "kPa"),
			"two readings of an ordinary gauge", ours},
		{groupAir, "A tyre’s usual leak, from how it was found", "the middle of the newest times", []amount{
			{"times that count", air.MostFound, ""}, {"days between, at the least", air.ShortestLeak, ""},
		}, "over a shorter time a gauge’s scatter is larger than the loss; older ones are another tyre’s habits", ours},
	}
}

func pumping() []source {
	return []source{
		{groupAir, "Strokes of an ideal pump", "n = V Δp / (pa Vs)", nil, "gas law, the stroke filled with the air around", published},
		{groupAir, "Share of a stroke that reaches the tyre", "", []amount{
			{"poor pump", percent(air.PumpWorst), "%"}, {"good pump", percent(air.PumpBest), "%"},
		}, "a range for real pumps, isothermal", practice},
	}
}

func gasSources() []source {
	return []source{
		{groupAir, "CO2 in a tyre", "p = n R T / (V − n b) − a n² / V²", []amount{
			{"a", air.CO2Attraction, "Pa m6/mol2"}, {"b", air.CO2Volume, "m3/mol"}, {"R", air.GasConstant, "J/(mol K)"}, {"mass of a mole", air.CO2Molar, "kg/mol"},
		}, "van der Waals, constants of the CRC Handbook; not for the inside of a cartridge", published},
		{groupAir, "How much warmer the gas gets after it was let in", "", one(air.CO2Warming, "K"), "a filling 20 K colder than the air", ours},
		{groupAir, "CO2 leaves a butyl tube: half its pressure is gone in", "", one(air.CO2HalfDays, "days"), "one report in the trade press", published},
	}
}
