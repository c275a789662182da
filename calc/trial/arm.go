package trial

import "math"

// Arm is one of the things compared, with what its runs gave.
type Arm struct {
	Runs     int
	Mean     float64
	Variance float64 // of one run; 0 for fewer than two runs
}

// Summarise takes an arm's runs together. step is what the readings were rounded to, 0 for not at all: runs that are all the same have
// shown no more than that they lie within it, so the variance is never below that of the rounding, step^2/12.
func Summarise(values []float64, step float64) Arm {
	a := Arm{Runs: len(values)}
	for _, v := range values {
		a.Mean += v / float64(len(values))
	}
	if a.Runs < 2 {
		return a
	}
	for _, v := range values {
		a.Variance += (v - a.Mean) * (v - a.Mean) / float64(a.Runs-1)
	}
	a.Variance = math.Max(a.Variance, step*step/12) // variance of an even distribution over one step
	return a
}

// StepOf is the coarsest of 1, 0.1, 0.01 and 0.001 that all values are whole multiples of; 0 when none is.
func StepOf(values []float64) float64 {
	for _, parts := range []float64{1, 10, 100, 1000} {
		whole := true
		for _, v := range values {
			near := math.Round(v * parts)
			whole = whole && math.Abs(v*parts-near) <= 1e-9*math.Max(1, math.Abs(near))
		}
		if whole {
			return 1 / parts
		}
	}
	return 0
}
