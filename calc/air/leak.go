package air

import (
	"errors"
	"math"

	"rimside/calc/unit"
)

// What can be wrong with two readings of a leaking tyre.
var (
	ErrDays   = errors.New("no_days_between")
	ErrFlat   = errors.New("flat_tyre")
	ErrRising = errors.New("pumped_between")
)

// Reading is a true gauge pressure and the state it was read in.
type Reading struct {
	Pressure unit.Pascal
	State    State
}

// ReadingScatter is how far a later reading may lie above the earlier one and still count as "no leak": two readings of an
// ordinary gauge (our choice).
const ReadingScatter = unit.Pascal(5e3)

// LeakPerDay is the share of its excess over the air around that a tyre loses in a day, from two readings: the first is
// carried to the second's state, then the loss is exponential, 1 - (p2/p1)^(1/days) (common practice; no published rate
// fits all tyres). Errors: ErrDays, ErrFlat, ErrRising and those of Carry.
func LeakPerDay(first, second Reading, days float64) (float64, error) {
	if !positive(days) {
		return 0, ErrDays
	}
	before, err := Carry(first.Pressure, first.State, second.State)
	if err != nil {
		return 0, err
	}
	if !(before > 0 && second.Pressure > 0) { // a NaN reading is refused here too
		return 0, ErrFlat
	}
	if second.Pressure > before+ReadingScatter {
		return 0, ErrRising
	}
	return 1 - math.Pow(math.Min(1, float64(second.Pressure/before)), 1/days), nil
}

// AfterLeak is the reading to expect some days later in another state. Errors: those of Carry.
func AfterLeak(now Reading, lossPerDay, days float64, then State) (unit.Pascal, error) {
	left := now.Pressure * unit.Pascal(math.Pow(1-lossPerDay, days))
	return Carry(left, now.State, then)
}
