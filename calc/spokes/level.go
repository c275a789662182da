package spokes

import "rimside/calc/unit"

// Level is how a side's mean stands against what is usual. It is a hint: stiff ends make the reading high.
type Level string

// The three levels.
const (
	Below Level = "below" // under UsualLeast
	Usual Level = "usual"
	Above Level = "above" // over the rim's maximum, or over UsualMost where none is known
)

// Levels lists the keys.
func Levels() []string { return []string{string(Below), string(Usual), string(Above)} }

// LevelOf places a side's mean between UsualLeast and the most that the rim takes.
func LevelOf(mean, most unit.Newton) Level {
	switch {
	case mean > most:
		return Above
	case mean < UsualLeast:
		return Below
	}
	return Usual
}
