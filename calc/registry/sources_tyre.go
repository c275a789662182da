package registry

import (
	"math"
	"strconv"

	"rimside/calc/tyre"
)

const (
	groupRules = "Which tyre on which rim"
	groupTyre  = "Tyre"
)

func pairing() []source {
	return []source{
		{groupRules, "Never above this on a straight rim edge", "", one(tyre.HooklessCap.KPa(), "kPa"),
			"a tyre maker’s page quoting ETRTO; one rim maker prints 503 kPa, and the stricter one is used", published},
		{groupRules, "Narrowest printed width on a straight rim edge", "the larger of the two", []amount{
			{"any rim", tyre.HooklessLeastMM, "mm"}, {"wider than the inner width by", tyre.HooklessMarginMM, "mm"},
		}, "trade press; a rim maker’s statements of ETRTO 2022 and 2023 ask for less, and the stricter one is used", published},
		{groupRules, "Printed width from which a straight edge’s own table is asked for", "", one(tyre.WideHookless.MM(), "mm"),
			"makers’ limits for wide tyres are always below the general cap", ours},
		{groupRules, "Printed width over inner width: refused below, hooked", "", []amount{
			{"whatever is listed", tyre.StopBelowRatio, ""}, {"unless the rim’s maker lists the width", tyre.AskBelowRatio, ""},
		}, "the trade press rule refuses everyday pairs", memory},
		{groupRules, "Printed width over inner width: care below, hooked", "", one(tyre.CareBelowRatio, ""), "trade press", published},
		{groupRules, "Printed width over inner width: care above, and refused above", "", []amount{
			{"care", tyre.CareAboveRatio, ""}, {"refused", tyre.StopAboveRatio, ""},
		}, "no source at hand", memory},
	}
}

func tyreShape() []source {
	return []source{
		{groupTyre, "Inner width of the rim on which a tyre is measured, by printed width", "", measuringRims(),
			"ETRTO from January 2020, as a tyre maker’s page quotes it", published},
		{groupTyre, "Width on another rim", "arc = d (π − arcsin(inner / d)) stays the same", nil,
			"geometry of a circle cut off by the rim; expect it within 1.5 mm", ours},
		{groupTyre, "Volume of air in a tyre", "V = π² (bead seat + width) width² / 4", nil,
			"a torus; the true volume is within about 10 %", practice},
	}
}

func tyreSpring() []source {
	return []source{
		{groupTyre, "Load that squashes a tyre by d", "F = p β 4/3 √(2R) d^1.5", nil, "Renart and Roura-Grabulosa 2019, for the power", published},
		{groupTyre, "Shape factor β", "β = min(π, value × √(width / 28 mm))", []amount{
			{"value", tyre.BetaFitted, ""}, {"at a width of", tyre.BetaWidthMM, "mm"},
		}, "fitted to the 15 % drop chart, whose points are from memory", memory},
		{groupTyre, "Squash at which that fit is taken", "", one(percent(tyre.RestSquash), "%"), "the trade’s 15 % drop", published},
		{groupTyre, "Contact length against the chord of an undeformed circle", "L = value × 2 √(2 R d)", one(tyre.PatchShortening, ""),
			"real treads touch less", ours},
	}
}

func casingLoss() []source {
	return []source{
		{groupTyre, "Rolling loss of the casing", "F = W (a + b X), X the load over what carries it at 15 % squash", nil,
			"linear in 1/p: Clark 1978", published},
		{groupTyre, "Loss without squash a, by how the sidewall feels", "", perSidewall(func(c tyre.Casing) (float64, string) { return c.A, "" }),
			"inside the published range", ours},
		{groupTyre, "Growth of the loss with squash b", "", one(tyre.BendLoss, ""), "inside the published range", ours},
		{groupTyre, "Pressure that the casing’s own stiffness is worth", "",
			perSidewall(func(c tyre.Casing) (float64, string) { return c.Own.KPa(), "kPa" }), "inside the published range", ours},
	}
}

func measuringRims() []amount {
	var out []amount
	for _, row := range tyre.MeasuringRims() {
		out = append(out, amount{"up to " + strconv.Itoa(int(math.Round(row.UpTo.MM()))) + " mm", row.Inner.MM(), "mm"})
	}
	return out
}

var sidewallWords = map[tyre.Sidewall]string{tyre.Cloth: "like cloth", tyre.Glove: "like a rubber glove", tyre.Hose: "like a garden hose"}

func perSidewall(of func(tyre.Casing) (float64, string)) []amount {
	var out []amount
	for _, key := range tyre.Sidewalls() {
		s := tyre.Sidewall(key)
		casing, _ := tyre.CasingOf(s)
		value, unit := of(casing)
		out = append(out, amount{sidewallWords[s], value, unit})
	}
	return out
}

// tidy drops the noise that the conversion from SI leaves in the last digits.
func tidy(x float64) float64 {
	text := strconv.FormatFloat(x, 'g', 12, 64)
	out, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return x
	}
	return out
}
