package spokes

import (
	"math"

	"rimside/calc/unit"
)

// OutlierBeyond is how far a spoke may stand from the mean of its side, as a share of that mean (common practice).
const OutlierBeyond = 0.20

// Even is how evenly one side of a wheel is laced.
type Even struct {
	Mean       unit.Newton // of the spokes that sounded; 0 when none did
	Deviations []float64   // of each spoke from the mean, as a share of it
	Outliers   int         // how many stand further away than OutlierBeyond
	Spread     float64     // the standard deviation of the tensions, as a share of the mean; 0 for fewer than two
}

// Outlying says whether a deviation is too large.
func Outlying(deviation float64) bool { return math.Abs(deviation) > OutlierBeyond }

// Evenness compares the spokes of one side with each other.
func Evenness(side []unit.Newton) Even {
	out := Even{Deviations: make([]float64, len(side))}
	if len(side) == 0 {
		return out
	}
	for _, t := range side {
		out.Mean += t / unit.Newton(len(side))
	}
	sum := 0.0
	for i, t := range side {
		by := float64(t/out.Mean) - 1
		out.Deviations[i] = by
		if sum += by * by; Outlying(by) {
			out.Outliers++
		}
	}
	if len(side) > 1 {
		out.Spread = math.Sqrt(sum / float64(len(side)-1))
	}
	return out
}
