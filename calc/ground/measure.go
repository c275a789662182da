package ground

import (
	"math"

	"rimside/calc/road"
	"rimside/calc/unit"
)

// Answer is the roughness with its interval, or why there is none.
type Answer struct {
	Rough, Low, High road.Roughness
	Class            string  // of ISO 8608
	Kind             string  // the nearest ground by what the eye sees
	Misfit           float64 // of the spectrum's shape from the model's, as a logarithm
	Seconds          float64 // of the record that were used
	Refused          Refusal
}

const (
	IntervalDeviations = 1.5 // of the roughness's logarithm, nine in ten (our choice: what the simulated rides bear out)
	MisfitMost         = 0.5 // a shape further off is not that of a wheel on the ground: a pocket, a loose holder (our choice)
	levelLeast         = 0.2 // of the middle window's power: a window below it stood still (our choice)
	levelShare         = 0.1 // of the windows that may
)

// Measure compares what the phone felt with what the machine would do on a ground of roughness 1.
func Measure(r Record, m Machine) Answer {
	samples := ordered(r.Samples)
	if len(samples) < 3 {
		return Answer{Refused: TooShort}
	}
	seconds := float64(samples[len(samples)-1].At)
	out := Answer{Seconds: seconds}
	rate := rateOf(samples)
	v, refused := speedOf(r.Speeds, seconds)
	up, held := upright(samples)
	switch {
	case seconds < ShortestSeconds:
		out.Refused = TooShort
	case rate < LowestHertz:
		out.Refused = TooSlowRate
	case clipped(samples):
		out.Refused = Clipped
	case refused != "":
		out.Refused = refused
	case !held:
		out.Refused = Loose
	}
	if out.Refused != "" {
		return out
	}
	s := spectrumOf(samples, up, rate)
	if s.seconds < ShortestSeconds { // holes all over
		out.Refused = TooSlowRate
		return out
	}
	out.Seconds = s.seconds
	switch {
	case stopped(s.levels):
		out.Refused = SpeedVaries
		return out
	case s.turned > turnShare:
		out.Refused = Loose
		return out
	}
	f := fit(s, predictor{m, v, rate, s.hertz})
	out.Misfit = f.misfit
	if !(f.misfit <= MisfitMost) {
		out.Refused = Loose
		return out
	}
	out.Rough = road.Roughness(math.Exp(f.mean))
	out.Low = road.Roughness(math.Exp(f.mean - IntervalDeviations*f.spread))
	out.High = road.Roughness(math.Exp(f.mean + IntervalDeviations*f.spread))
	out.High *= road.Roughness(thrown(m.Front, v, out.Rough))
	out.Class, out.Kind = ClassOf(out.Rough), Nearest(out.Rough)
	return out
}

// stopped says that in some windows next to nothing shook, as where the bike stood.
func stopped(levels []float64) bool {
	sorted := append([]float64(nil), levels...)
	middle := median(sorted)
	still := 0
	for _, level := range levels {
		if level < levelLeast*middle {
			still++
		}
	}
	return !(middle > 0) || float64(still) > levelShare*float64(len(levels))
}

// thrown is how much rougher the ground may be than it seems where the wheel leaves it: what a wheel in the air does not feel is not in
// the record. Below a spread of half the load the wheel stays down (our choice of the bound and of twice at most).
func thrown(w Wheel, v unit.MetrePerSecond, g road.Roughness) float64 {
	shaken, patch := w.Shaken(w.Pressure)
	spread := shaken.Poles().Shake(g, v, unit.Second(float64(patch)/float64(v))).ForceSpread
	return min(2, max(1, 2*float64(spread/w.Load.Weight)))
}
