package spokes

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/dsp/fourier"
)

const (
	lowest, highest = 70.0, 6000.0 // Hz, where partials are looked for (our choice: below is the hand, above is the click)
	overNoise       = 20.0         // power of a peak over the noise round it (our choice: noise alone reaches it once in a hundred recordings)
	underLoudest    = 1e-5         // power of a peak under the loudest one (our choice: the window's own skirts lie below)
	mostPeaks       = 18           // loudest first (our choice)
	band            = 1.26         // width of a stretch over which the noise is taken: a third of an octave
)

// peak is one tone of the spectrum: where, and how far it stands above the noise, as a logarithm from 1 up.
type peak struct{ hz, height float64 }

// peaks are the tones of a ringing from low to high.
func peaks(ring []float64, rate float64) []peak {
	power, step := spectrum(ring, rate)
	lo, hi := int(lowest/step)+1, min(int(highest/step), int(0.45*rate/step), len(power)-2)
	if hi <= lo+2 {
		return nil
	}
	noise := noiseOf(power, lo, hi)
	loudest := slices.Max(power[lo:hi])
	apart := int(math.Ceil(2 * rate / (step * float64(len(ring))))) // the width of the window's main lobe
	var found []peak
	for k := lo; k < hi; k++ {
		p := power[k]
		if p < overNoise*noise[k-lo] || p < underLoudest*loudest || p < slices.Max(power[max(k-apart, 0):min(k+apart+1, len(power))]) {
			continue
		}
		found = append(found, peak{(float64(k) + offset(power, k)) * step, 1 + math.Log(p/(overNoise*noise[k-lo]))})
	}
	return highestOf(found)
}

// highestOf keeps the highest peaks, in their order.
func highestOf(found []peak) []peak {
	if len(found) <= mostPeaks {
		return found
	}
	heights := make([]float64, len(found))
	for i, p := range found {
		heights[i] = p.height
	}
	slices.Sort(heights)
	least := heights[len(heights)-mostPeaks]
	return slices.DeleteFunc(found, func(p peak) bool { return p.height < least })
}

// spectrum is the power at every step, and the step in hertz. Zeros behind the ringing make the steps finer than its own.
func spectrum(ring []float64, rate float64) (power []float64, step float64) {
	size := 1
	for size < 2*len(ring) {
		size *= 2
	}
	padded := make([]float64, size)
	copy(padded, ring)
	lines := fourier.NewFFT(size).Coefficients(nil, padded)
	power = make([]float64, len(lines))
	for k, c := range lines {
		power[k] = real(c)*real(c) + imag(c)*imag(c)
	}
	return power, rate / float64(size)
}

// noiseOf is the noise at every step from lo to hi: the median over a third of an octave, in which tones are few.
func noiseOf(power []float64, lo, hi int) []float64 {
	out := make([]float64, hi-lo)
	for from := lo; from < hi; {
		to := min(hi, max(from+40, int(float64(from)*band)))
		if hi-to < 40 {
			to = hi
		}
		stretch := slices.Clone(power[from:to])
		slices.Sort(stretch)
		for k := from; k < to; k++ {
			out[k-lo] = stretch[len(stretch)/2] + math.SmallestNonzeroFloat64
		}
		from = to
	}
	return out
}

// offset is how far a peak lies beside its step: the vertex of the parabola through three logarithms (usual in signal processing).
func offset(power []float64, k int) float64 {
	const tiny = 1e-300
	a, b, c := math.Log(power[k-1]+tiny), math.Log(power[k]+tiny), math.Log(power[k+1]+tiny)
	bend := a - 2*b + c
	if bend >= 0 {
		return 0
	}
	return math.Max(-0.5, math.Min(0.5, 0.5*(a-c)/bend))
}
