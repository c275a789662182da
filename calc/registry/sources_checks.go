package registry

import (
	"rimside/calc/check"
	"rimside/calc/due"
	"rimside/calc/ready"
)

const (
	groupChecks = "Checks"
	groupDue    = "What is due"
)

func checkSources() []source {
	return []source{
		{groupChecks, "Least thickness of a rotor without a readable mark; its own mark wins", "", one(check.RotorMinMM, "mm"),
			"trade pages: 1.50, 1.52 and 1.55 are printed, and the strictest is used; thicker rotors carry higher marks", published},
		{groupChecks, "Run-out of a rotor: care above", "", one(check.RotorRunOutMM, "mm"), "nothing published was found", memory},
		{groupChecks, "Run-out of a rim, full reading in one turn: care above", "", []amount{
			{"any bike", check.RimRunOutMM, "mm"}, {"racing", check.RacingRunOutMM, "mm"},
		}, "TBIS 15194 Table 22, measured after TBIS 4210-7; used for rim and disc brakes alike", published},
		{groupChecks, "Friction left on a disc pad", "", []amount{
			{"do not ride at or under", check.PadsStopMM, "mm"}, {"replace before an event at or under", check.PadsCareMM, "mm"},
		}, "trade page", published},
		{groupChecks, "Friction left on a road bike’s disc pad: replace before an event at or under", "", one(check.PadsCareRoadMM, "mm"),
			"a new road pad has about 2 mm, so half is left", ours},
		{groupChecks, "How many rows of a walk-around stand before the rest", "", one(check.MostFirst, "rows"), "what is looked at, not clicked away", ours},
		{groupChecks, "Wall of a rim for rim brakes: replace at or under", "", one(check.WallMM, "mm"), "trade page; failure was seen near 0.7 mm", published},
		{groupChecks, "Room beside the tyre: do not ride under", "", one(check.RoomStopMM, "mm"), "16 CFR 1512.11", published},
		{groupChecks, "Room beside the tyre, road: care under", "", one(check.RoomRoadMM, "mm"), "EN 14781, 4.10.2, superseded by parts of ISO 4210, as a forum quotes it", published},
		{groupChecks, "Room beside the tyre, other bikes: care under", "", one(check.RoomOtherMM, "mm"), "ISO 4210-2", memory},
	}
}

func intervals() []source {
	return []source{
		{groupDue, "Days between looks at the sealant", "", []amount{{"usual", due.SealantDays, "days"}, {"in heat", due.SealantHotDays, "days"}},
			"it lasts 2 to 7 months, 1 to 3 where it is hot and dry; sources vary", practice},
		{groupDue, "A fitted tyre’s width is measured again after", "", one(due.GrowDays, "days"), "it grows at first", practice},
		{groupDue, "A new wheel’s spokes are tensioned again after", "", one(due.NewSpokesKM, "km"), "owner’s manual", published},
		{groupDue, "Days between other looks, until edited", "", []amount{
			{"rotor thickness", due.RotorDays, "days"}, {"pads", due.PadsDays, "days"}, {"spoke tension", due.SpokesDays, "days"},
			{"bolts", due.BoltsDays, "days"}, {"walk-around", due.LookDays, "days"},
		}, "no source to quote: make them your own", ours},
	}
}

func readySources() []source {
	return []source{
		{groupChecks, "How long a walk-around counts", "", one(ready.LookDays, "days"), "a bike that stands changes little, one that is ridden is looked at", ours},
		{groupChecks, "Whether a bike may be ridden", "the worst of: open findings, values beyond their limits, a pair that is refused, an arrival that is not " +
			"finished, a crash or a journey that no walk-around has answered, rows left out; else what the last whole walk-around has seen", nil,
			"missing knowledge is not permission", ours},
	}
}
