package registry

import "rimside/calc/fit"

const groupFit = "Fitting"

func fitSources() []source {
	return []source{
		{groupFit, "Room to spare, the bead in the well all round", "s = 2 π h − π (BSD − Db)", nil, "plane geometry; rim dimensions as ISO 5775-2 names them", published},
		{groupFit, "What lifting one point over the edge takes", "n = 2 [√((R+G)² − (R−h)²) − (R−h) acos((R−h)/(R+G))]", nil, "plane geometry", published},
		{groupFit, "So much of the bead still off goes on easily", "", one(fit.EasyArc.MM(), "mm"), "two hands side by side", ours},
	}
}
