package spokes

import "math"

const (
	frame     = 0.020 // s, over which loudness is taken when the pluck is looked for (our choice)
	listen    = 0.45  // s of the ringing that are listened to (our choice: short rings are over, long ones are known by then)
	rise      = 0.004 // s in which the window opens, past the click of the finger (our choice)
	shortest  = 0.08  // s: a shorter ringing has no pitch to the per cent at 100 Hz (our choice)
	quietWave = 1e-6  // of full scale: below it there is nothing but a dead microphone
)

// ringing is the part of a recording that follows the loudest moment, faded in and out for the transform; nil when there is none.
// The window opens fast and closes slowly, since a pluck is loudest at its start.
func ringing(samples []float64, rate float64) []float64 {
	n, least := len(samples), int(shortest*rate)
	if n < least || least == 0 {
		return nil
	}
	mean := 0.0
	for _, x := range samples {
		mean += x / float64(n)
	}
	from := min(loudest(samples, mean, int(frame*rate)), n-least)
	out := make([]float64, min(int(listen*rate), n-from))
	loud := 0.0
	for i := range out {
		out[i] = (samples[from+i] - mean) * window(i, len(out), rate)
		loud = math.Max(loud, math.Abs(out[i]))
	}
	if loud < quietWave {
		return nil
	}
	return out
}

// loudest is where the loudest frame begins.
func loudest(samples []float64, mean float64, width int) int {
	sum, best, at := 0.0, 0.0, 0
	for i, x := range samples {
		sum += (x - mean) * (x - mean)
		if i < width {
			best = sum
			continue
		}
		gone := samples[i-width] - mean
		if sum -= gone * gone; sum > best {
			best, at = sum, i-width+1
		}
	}
	return at
}

func window(i, n int, rate float64) float64 {
	fall := 0.5 + 0.5*math.Cos(math.Pi*float64(i)/float64(n))
	if up := float64(i) / (rise * rate); up < 1 {
		return fall * (0.5 - 0.5*math.Cos(math.Pi*up))
	}
	return fall
}
