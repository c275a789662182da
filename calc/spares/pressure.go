package spares

import (
	"errors"
	"math"

	"rimside/calc/unit"
)

// Rider is what the pressure model says of one rider on one spare.
type Rider struct {
	ID             string
	Recommended    unit.Pascal
	Floor, Ceiling unit.Pascal
}

// Shared is one pressure for several riders.
type Shared struct {
	Pressure unit.Pascal
	Spread   float64  // the largest |ln p - ln recommended|
	Worst    []string // the riders for whom it is that far off
}

// ErrNoShared says that no pressure is above every floor and under every limit.
var ErrNoShared = errors.New("no single pressure keeps every rider above the floor and under the limit: pump it for fewer riders")

// ErrNoRiders says that there is nobody to pump for.
var ErrNoRiders = errors.New("nobody is to be given this wheel")

// Share finds the pressure with the least largest |ln p - ln recommended|: the geometric mean of the softest and the firmest,
// held above every floor and under every ceiling. The distance to the farther end is convex in ln p, so the nearest allowed
// pressure to its minimum is the best one. Errors: ErrNoRiders, ErrNoShared.
func Share(riders []Rider) (Shared, error) {
	if len(riders) == 0 {
		return Shared{}, ErrNoRiders
	}
	low, high := math.Inf(1), math.Inf(-1)
	floor, ceiling := 0.0, math.Inf(1)
	for _, r := range riders {
		low, high = math.Min(low, float64(r.Recommended)), math.Max(high, float64(r.Recommended))
		floor, ceiling = math.Max(floor, float64(r.Floor)), math.Min(ceiling, float64(r.Ceiling))
	}
	if !(low > 0) || floor > ceiling {
		return Shared{}, ErrNoShared
	}
	p := math.Max(floor, math.Min(ceiling, math.Sqrt(low*high)))
	out := Shared{Pressure: unit.Pascal(p)}
	for _, r := range riders {
		off := math.Abs(math.Log(p / float64(r.Recommended)))
		switch {
		case off > out.Spread+1e-9:
			out.Spread, out.Worst = off, []string{r.ID}
		case off > out.Spread-1e-9:
			out.Spread, out.Worst = math.Max(out.Spread, off), append(out.Worst, r.ID)
		}
	}
	return out, nil
}
