package trial

import "math"

const (
	// MostWrong is how often a difference may be called where there is none (usual practice in statistics).
	MostWrong = 0.05
	// Power is how likely a difference that is as large as it looks will be shown after the further runs that are named (usual practice).
	Power = 0.80
	// MostLooks is how often one trial may be looked at.
	MostLooks = 5
	// mostRuns of one arm: who needs more will not ride them (our choice).
	mostRuns = 60
)

// levels are how sure each of so many looks has to be for all together to be wrong at most MostWrong: two-sided, Pocock 1977.
var levels = [MostLooks + 1]float64{1: MostWrong, 2: 0.0294, 3: 0.0221, 4: 0.0182, 5: 0.0158}

// Level is how often one comparison may be wrong, where a trial has so many arms and is looked at so often.
func Level(arms, looks int) float64 {
	pairs := arms * (arms - 1) / 2
	return levels[max(1, min(looks, MostLooks))] / float64(max(1, pairs))
}

// Result compares two arms, second minus first.
type Result struct {
	Difference float64 // of the means
	Low, High  float64 // between which the difference lies; the whole line when an arm has fewer than two runs
	Above      float64 // how likely the true difference is above 0
	Shown      bool    // whether the interval leaves 0 out
}

// Compare compares two arms, to be wrong at the given level at most. ok is false when an arm has fewer than two runs.
func Compare(first, second Arm, level float64) (r Result, ok bool) {
	if first.Runs < 2 || second.Runs < 2 {
		return Result{Difference: second.Mean - first.Mean}, false
	}
	return compare(first, second, level, freedom(first, second, level))
}

// compare does so with these degrees of freedom. ok is false where the error is nothing: nobody times like that.
func compare(first, second Arm, level, freedom float64) (r Result, ok bool) {
	r.Difference = second.Mean - first.Mean
	error2 := first.Variance/float64(first.Runs) + second.Variance/float64(second.Runs)
	if !(error2 > 0) || math.IsInf(error2, 0) {
		return r, false
	}
	wide := Quantile(1-level/2, freedom) * math.Sqrt(error2)
	r.Low, r.High = r.Difference-wide, r.Difference+wide
	r.Above = Below(r.Difference/math.Sqrt(error2), freedom)
	r.Shown = r.Low > 0 || r.High < 0
	return r, true
}

// RunsToSettle is how many more runs in all would show a difference as large as this one with the power named: so many of each arm, as
// unlike as these are, that |d| >= (t_(1-level/2) + t_power) s (the usual estimate of a sample's size). 0 when it is shown already; ok is
// false when it cannot be said, or is more than anybody rides.
func RunsToSettle(first, second Arm, level float64) (runs int, ok bool) {
	r, known := Compare(first, second, level)
	if !known {
		return 0, false
	}
	if r.Shown {
		return 0, true
	}
	for n := max(2, min(first.Runs, second.Runs)); n <= mostRuns; n++ {
		noise := math.Sqrt((first.Variance + second.Variance) / float64(n))
		enough := func(freedom float64) bool {
			return math.Abs(r.Difference) >= (Quantile(1-level/2, freedom)+Quantile(Power, freedom))*noise
		}
		if !enough(float64(2*n - 2)) { // never more than these, which are soon known
			continue
		}
		if enough(freedom(Arm{Runs: n, Variance: first.Variance}, Arm{Runs: n, Variance: second.Variance}, level)) {
			return max(0, n-first.Runs) + max(0, n-second.Runs), true
		}
	}
	return 0, false
}
