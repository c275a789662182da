package registry

import (
	"rimside/calc/check"
	"rimside/calc/due"
	"rimside/calc/pressure"
	"rimside/calc/spokes"
	"rimside/calc/tyre"
)

// Contract is what a calculation takes and gives, for whoever makes types, forms or words of it. The tables are those that
// decode and that answers are held to.
type Contract struct {
	Name    string
	Request []*Field
	Answer  *Field
	Example string // a body that it answers
}

// Contracts lists the contract of every calculation, in the order in which they are published.
func Contracts() []Contract {
	out := make([]Contract, len(all))
	for i, c := range all {
		out[i] = Contract{c.name, c.table, answerOf(c.name), c.example}
	}
	return out
}

// Constant is a number that those who show answers need besides them.
type Constant struct {
	Name  string // as Go writes it: HooklessCap
	Value float64
	Unit  string
	About string
}

// Constants lists them. Each is taken from the package that computes with it.
func Constants() []Constant {
	return []Constant{
		{"HooklessCapKpa", tyre.HooklessCap.KPa(), "kPa", "the most that any tyre may hold on a hookless rim"},
		{"UnreadHoldKpa", pressure.UnreadMax.KPa(), "kPa", "a pair with a maximum that nobody has read is held to this until somebody has"},
		{"MaxFirmness", pressure.MaxFirmness, "", "steps softer or firmer at most"},
		{"SureNote", spokes.Sure, "", "a note that is less sure than this is asked for again"},
		{"SpokeLeastN", spokes.UsualLeast, "N", "a side whose mean is below it reads loose"},
		{"SpokeOutlier", spokes.OutlierBeyond, "", "a spoke further from its side's mean than this share stands out"},
		{"RotorMinMm", check.RotorMinMM, "mm", "a rotor without a readable mark is not ridden below this"},
		{"RotorRunOutMm", check.RotorRunOutMM, "mm", "care above this run-out of a rotor"},
		{"RimRunOutMm", check.RimRunOutMM, "mm", "care above this run-out of a rim, full reading in one turn"},
		{"RoomStopMm", check.RoomStopMM, "mm", "not ridden with less beside the tyre"},
		{"RoomRoadMm", check.RoomRoadMM, "mm", "care with less beside the tyre on the road"},
		{"GrowDays", due.GrowDays, "days", "a tyre grows for so long after it was fitted"},
		{"RoomOtherMm", check.RoomOtherMM, "mm", "care with less beside the tyre off the road"},
	}
}
