package air

import (
	"math"
	"slices"

	"rimside/calc/unit"
)

// Found is a tyre that was read again before it was set anew: what it was set to, what was found, and the days between.
type Found struct {
	Set, Later Reading
	Days       float64
}

// What counts when a leak is taken from how a tyre was found (our choice).
const (
	// ShortestLeak is the least time between two readings, days: over a shorter one a gauge's scatter is larger than the loss.
	ShortestLeak = 0.5
	// MostFound is how many times count, newest first: older ones are another tyre's habits.
	MostFound = 5
)

// TypicalLoss is the middle of the losses per day of the newest times that a tyre was found, newest first. Times that tell of
// no leak (too short, flat, pumped in between) are passed over; ok is false when none is left.
func TypicalLoss(found []Found) (lossPerDay float64, ok bool) {
	var losses []float64
	for _, f := range found {
		if f.Days < ShortestLeak || len(losses) == MostFound {
			continue
		}
		if loss, err := LeakPerDay(f.Set, f.Later, f.Days); err == nil {
			losses = append(losses, loss)
		}
	}
	if len(losses) == 0 {
		return 0, false
	}
	slices.Sort(losses)
	n := len(losses)
	return (losses[(n-1)/2] + losses[n/2]) / 2, true
}

// Expected is what a tyre that was set some days ago holds now, in the air of here: what the leak left of it, carried by the
// gas law. A tyre holds no less than nothing, and a day that lies ahead is no day. Errors: those of Carry.
func Expected(set Reading, lossPerDay, days float64, here State) (unit.Pascal, error) {
	left, err := AfterLeak(set, lossPerDay, math.Max(0, days), here)
	if err != nil {
		return 0, err
	}
	return max(0, left), nil
}
