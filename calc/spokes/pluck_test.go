package spokes_test

import (
	"math"
	"math/rand/v2"
)

// plucked is how one invented spoke is plucked and recorded. It knows nothing of how pitch is found.
type plucked struct {
	hz, stiff, place, decay float64 // lowest partial; B; where along the spoke it is plucked, 0 to 0.5; s
	rate, seconds, start    float64 // of the recording; when the pluck comes
	noise                   float64 // dB of the ringing's power over the noise, taken over the first 0.3 s
	thin                    float64 // how much of the lowest partial a small microphone hears, 0 to 1
	hum                     float64 // a mains hum at 50 Hz and three times that, as a share of the ringing's height
	beside                  float64 // another spoke ringing along, likewise, a sixth higher
}

func (p plucked) record(d *rand.Rand) []float64 {
	n := int(p.seconds * p.rate)
	wave, power, within := make([]float64, n), 0.0, 0
	for k := 1; k <= 10; k++ {
		order := float64(k)
		f := p.hz * order * math.Sqrt((1+p.stiff*order*order)/(1+p.stiff))
		if f > 0.45*p.rate {
			break
		}
		height := math.Abs(math.Sin(order*math.Pi*p.place)) / order // a string drawn aside at one place
		if k == 1 {
			height *= p.thin
		}
		phase, fade := 2*math.Pi*d.Float64(), p.decay/(1+0.15*order*order)
		for i := range wave {
			if t := float64(i)/p.rate - p.start; t >= 0 {
				wave[i] += height * math.Exp(-t/fade) * math.Sin(2*math.Pi*f*t+phase)
			}
		}
	}
	for i := range wave {
		if t := float64(i)/p.rate - p.start; t >= 0 && t < 0.3 {
			power += wave[i] * wave[i]
			within++
		}
	}
	loud := math.Sqrt(power / float64(within))
	for i := range wave {
		t := float64(i) / p.rate
		if s := t - p.start; s >= 0 {
			wave[i] += loud * p.beside * math.Exp(-s/p.decay) * math.Sin(2*math.Pi*p.hz*1.19*s)
		}
		wave[i] += loud * p.hum * (math.Sin(2*math.Pi*50*t) + 0.5*math.Sin(2*math.Pi*150*t))
		wave[i] += loud * math.Pow(10, -p.noise/20) * d.NormFloat64()
	}
	return full(wave)
}

// full brings a wave to half of full scale.
func full(wave []float64) []float64 {
	most := 0.0
	for _, x := range wave {
		most = math.Max(most, math.Abs(x))
	}
	for i := range wave {
		wave[i] *= 0.5 / most
	}
	return wave
}

func between(d *rand.Rand, lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }

// anyPluck is one out of the whole of what spokes do: long and slack to short and tight, thin to thick.
func anyPluck(d *rand.Rand) plucked {
	return plucked{
		hz: 120 * math.Pow(900.0/120, d.Float64()), stiff: 1e-4 * math.Pow(300, d.Float64()), place: between(d, 0.08, 0.5), decay: 0.08 * math.Pow(10, d.Float64()),
		rate: []float64{16000, 44100, 48000}[d.IntN(3)], seconds: between(d, 0.7, 2), start: between(d, 0, 0.25), noise: 10, thin: 1,
	}
}
