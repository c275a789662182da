package ground

import (
	"math"
	"slices"

	"rimside/calc/unit"
)

// Sample is one reading of the accelerometer, gravity included, in m/s2 along the phone's own axes.
type Sample struct {
	At   unit.Second
	Felt vector
}

// Speed is one reading of the speed.
type Speed struct {
	At unit.Second
	V  unit.MetrePerSecond
}

// Record is a ride over one kind of ground. A speed that was typed is one Speed.
type Record struct {
	Samples []Sample
	Speeds  []Speed
}

// Refusal is why a record tells nothing, "" where it does.
type Refusal string

// The refusals.
const (
	TooShort     Refusal = "too_short"
	TooSlowRate  Refusal = "too_slow_rate"
	Clipped      Refusal = "clipped"
	SpeedMissing Refusal = "speed_missing"
	SpeedVaries  Refusal = "speed_varies"
	Loose        Refusal = "loose"
)

// Refusals lists them.
func Refusals() []string {
	return []string{string(TooShort), string(TooSlowRate), string(Clipped), string(SpeedMissing), string(SpeedVaries), string(Loose)}
}

// What a record must be (our choice).
const (
	ShortestSeconds = 20.0 // less leaves the roughness too open
	LowestHertz     = 40.0 // samples a second: below, the band that phone and model both know is too narrow
	longestGap      = 0.1  // s: a stretch with a longer hole is left out
	clippedFrom     = 11.0 // m/s2 on one axis: no phone stops before, gravity alone reaches 9.8
	clippedShare    = 2e-3 // of the samples at the very end of an axis: chance puts one or two there
	clippedLeast    = 5
	clippedWidth    = 1e-3 // of an axis's range, taken as one value
	SpeedSpread     = 0.15 // standard deviation of the speed over its mean, at most
	speedLowest     = 1.5  // m/s; below it the bike stands or is pushed
)

// ordered are the samples by time, those of one moment counted once, from 0 s on.
func ordered(samples []Sample) []Sample {
	list := slices.Clone(samples)
	slices.SortStableFunc(list, func(a, b Sample) int {
		switch {
		case a.At < b.At:
			return -1
		case a.At > b.At:
			return 1
		}
		return 0
	})
	list = slices.CompactFunc(list, func(a, b Sample) bool { return a.At == b.At })
	for i := len(list) - 1; i >= 0; i-- {
		list[i].At -= list[0].At
	}
	return list
}

// rateOf is how many samples come in a second, by the middle one of all the steps.
func rateOf(samples []Sample) float64 {
	steps := make([]float64, 0, len(samples))
	for i := 1; i < len(samples); i++ {
		steps = append(steps, float64(samples[i].At-samples[i-1].At))
	}
	return 1 / median(steps)
}

// clipped says that many samples stand at the very end of an axis, as where the sensor can show no more.
func clipped(samples []Sample) bool {
	for axis := range 3 {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, s := range samples {
			lo, hi = min(lo, s.Felt[axis]), max(hi, s.Felt[axis])
		}
		var low, high int
		for _, s := range samples {
			if s.Felt[axis] <= lo+clippedWidth*(hi-lo) {
				low++
			}
			if s.Felt[axis] >= hi-clippedWidth*(hi-lo) {
				high++
			}
		}
		most := max(clippedLeast, int(clippedShare*float64(len(samples))))
		if hi > clippedFrom && high >= most || lo < -clippedFrom && low >= most {
			return true
		}
	}
	return false
}

// speedOf is the mean speed and whether it was steady enough.
func speedOf(speeds []Speed, seconds float64) (unit.MetrePerSecond, Refusal) {
	if len(speeds) == 0 {
		return 0, SpeedMissing
	}
	var sum, square float64
	for _, s := range speeds {
		sum += float64(s.V)
		square += float64(s.V * s.V)
	}
	n := float64(len(speeds))
	mean := sum / n
	switch spread := math.Sqrt(max(0, square/n-mean*mean)); {
	case mean < speedLowest || spread > SpeedSpread*mean:
		return 0, SpeedVaries
	case len(speeds) > 1 && holes(speeds) > seconds/2:
		return 0, SpeedMissing
	}
	return unit.MetrePerSecond(mean), ""
}

// holes is the longest time without a speed, s.
func holes(speeds []Speed) (longest float64) {
	at := make([]float64, len(speeds))
	for i, s := range speeds {
		at[i] = float64(s.At)
	}
	slices.Sort(at)
	for i := 1; i < len(at); i++ {
		longest = max(longest, at[i]-at[i-1])
	}
	return longest
}

// median is the middle one of the values, NaN of none. It sorts them.
func median(values []float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}
