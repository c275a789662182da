package registry

import (
	"rimside/calc/fit"
	"rimside/calc/pressure"
	"rimside/calc/unit"
)

const groupFit = "Fitting"

func fitSources() []source {
	return []source{
		{groupFit, "Room to spare, the bead in the well all round", "s = 2 π h − π (BSD − Db)", nil, "plane geometry; rim dimensions as ISO 5775-2 names them", published},
		{groupFit, "What lifting one point over the edge takes", "n = 2 [√((R+G)² − (R−h)²) − (R−h) acos((R−h)/(R+G))]", nil, "plane geometry", published},
		{groupFit, "So much of the bead still off goes on easily", "", one(fit.EasyArc.MM(), "mm"), "two hands side by side", ours},
	}
}

func seatSources() []source {
	return []source{
		{groupFit, "Most while seating a tyre that was not made tubeless, without a tube", "", one(pressure.ConvertedCap.KPa(), "kPa"), "a workshop page, 40 psi", published},
		{groupFit, "Sealant by printed width: road to 32 mm, gravel to 50 mm, mountain", "", sealantAmounts(), "sources vary", practice},
	}
}

func sealantAmounts() []amount {
	var out []amount
	for _, each := range []struct {
		words string
		label unit.Metre
	}{{"road", unit.FromMM(32)}, {"gravel", unit.FromMM(50)}, {"mountain", unit.FromMM(51)}} {
		least, most := fit.Sealant(each.label)
		out = append(out, amount{each.words + ", least", tidy(least.ML()), "mL"}, amount{each.words + ", most", tidy(most.ML()), "mL"})
	}
	return out
}
