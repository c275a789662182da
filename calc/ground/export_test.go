package ground

import (
	"math"

	"rimside/calc/road"
)

// PlainMedian is the roughness by the middle ratio over 4 to 22 Hz with the machine as it was said: what the freedoms are measured against.
func PlainMedian(r Record, m Machine) road.Roughness {
	samples := ordered(r.Samples)
	rate := rateOf(samples)
	v, _ := speedOf(r.Speeds, float64(samples[len(samples)-1].At))
	up, _ := upright(samples)
	s := spectrumOf(samples, up, rate)
	f := freedom{tyre: 1, rigid: 1, body: 1}
	p := predictor{m, v, rate, s.hertz}
	front := p.motions(m.Front, f)
	var left []float64
	for i, shape := range p.spectrum(front, front, f) {
		if s.hertz[i] >= 4 {
			left = append(left, math.Log(s.power[i])-shape)
		}
	}
	return road.Roughness(math.Exp(median(left)))
}
