package pressure

import (
	"math"

	"rimside/calc/unit"
)

// Felt is what a rider says of a wheel after the ride.
type Felt string

// The five answers, from too harsh to too soft.
const (
	FeltTooHard Felt = "too_hard"
	FeltHard    Felt = "hard"
	FeltRight   Felt = "right"
	FeltSoft    Felt = "soft"
	FeltTooSoft Felt = "too_soft"
)

// RideNote is one wheel after one ride.
type RideNote struct {
	Ridden   unit.Pascal // true, at the ride
	Custom   unit.Pascal // what custom was on that day, before any personal shift
	Firmness int         // steps asked for on that day, wet ground as one softer
	Felt     Felt
	Struck   bool // the rim hit something
}

const (
	// ShiftSpread is how far riders stand from custom, and how far one note stands from what the rider would settle on: the
	// standard deviation of both, in logarithms of pressure (our choice).
	ShiftSpread = 0.12
	// ShiftMost is how far one note counts, and how far all of them move custom (our choice): more is a slip of the thumb.
	ShiftMost = 0.5
)

// feltBy is how much more air, as a logarithm, each answer asks for (our choice).
var feltBy = map[Felt]float64{FeltTooHard: -0.10, FeltHard: -0.05, FeltRight: 0, FeltSoft: 0.05, FeltTooSoft: 0.10}

// Observed is the shift that one note alone speaks for: ln(ridden/custom) plus what was felt. A rim that hit something
// counts as too soft, whatever was felt. What the firmness buttons asked for on that day is no part of it: they stay
// pressed, and "right" must not move what was right. ok is false for a note that says nothing.
func (n RideNote) Observed() (shift float64, ok bool) {
	felt, known := feltBy[n.Felt]
	if n.Struck {
		felt, known = feltBy[FeltTooSoft], true
	}
	asked := n.Custom * unit.Pascal(1+FirmStep*float64(n.Firmness))
	if !known || !(n.Ridden > 0) || !(asked > 0) || math.IsInf(float64(n.Ridden), 0) || math.IsInf(float64(asked), 0) {
		return 0, false
	}
	return heldShift(math.Log(float64(n.Ridden/asked)) + felt), true
}

// Shift is the personal shift after these notes: the mean of a normal prior round 0 and one normal observation a note,
// weighted by their variances.
func Shift(notes []RideNote) float64 {
	const weight = 1 / (ShiftSpread * ShiftSpread) // of the prior and of each note
	sum, weights := 0.0, weight
	for _, note := range notes {
		if observed, ok := note.Observed(); ok {
			sum += weight * observed
			weights += weight
		}
	}
	return heldShift(sum / weights)
}

func heldShift(s float64) float64 { return max(-ShiftMost, min(ShiftMost, s)) }
