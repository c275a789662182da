package ground

import "math"

const (
	StretchSeconds = 2.56 // one window; its Hann lobe is 0.8 Hz wide (our choice)
	BandLow        = 3.0  // Hz: below are pedalling and the phone's turning in gravity (our choice)
	BandHigh       = 22.0 // Hz: above, bars and stem are no longer known (our choice)
	bandOfRate     = 0.42 // of the samples' rate, at most (our choice)
	hannPower      = 0.375
)

// spectrum is the mean power of the upright acceleration, (m/s2)2/Hz, at each hertz of the band.
type spectrum struct {
	hertz, power []float64
	windows      int       // that went into it
	levels       []float64 // power of each window over the whole band
	seconds      float64   // of the record that were used
	turned       float64   // share of the windows in which gravity stood otherwise
}

// spectrumOf is Welch's mean of half-overlapping windows, the sums taken at the samples' own times.
func spectrumOf(samples []Sample, up vector, rate float64) spectrum {
	var out spectrum
	top := min(BandHigh, bandOfRate*rate)
	first := int(math.Ceil(BandLow * StretchSeconds))
	for k := first; float64(k)/StretchSeconds <= top; k++ {
		out.hertz = append(out.hertz, float64(k)/StretchSeconds)
	}
	out.power = make([]float64, len(out.hertz))
	turned, from := 0, 0
	end := float64(samples[len(samples)-1].At)
	for start := 0.0; start+StretchSeconds <= end; start += StretchSeconds / 2 {
		for from < len(samples) && float64(samples[from].At) < start {
			from++
		}
		to := from
		for to < len(samples) && float64(samples[to].At) < start+StretchSeconds {
			to++
		}
		window := samples[from:to]
		if !whole(window, start) {
			continue
		}
		if math.Acos(min(1, upOf(window).unit().dot(up))) > turnMost {
			turned++
		}
		level := 0.0
		for i, p := range windowPower(window, up, start, first, len(out.hertz)) {
			out.power[i] += p
			level += p
		}
		out.levels = append(out.levels, level)
		out.windows++
	}
	for i := range out.power {
		out.power[i] /= float64(out.windows)
	}
	if out.windows > 0 {
		out.seconds = StretchSeconds / 2 * float64(out.windows+1)
		out.turned = float64(turned) / float64(out.windows)
	}
	return out
}

// whole says that a window has no hole in it.
func whole(window []Sample, start float64) bool {
	last := start
	for _, s := range window {
		if float64(s.At)-last > longestGap {
			return false
		}
		last = float64(s.At)
	}
	return len(window) > 2 && start+StretchSeconds-last <= longestGap
}

// windowPower is one window's power at count frequencies from the first on: 2 |sum w(t) a(t) e^(-2 pi i f t) dt|^2/(T mean w^2).
func windowPower(window []Sample, up vector, start float64, first, count int) []float64 {
	sums := make([]complex128, count)
	mean := upOf(window).dot(up)
	for i, s := range window {
		before, after := window[max(i-1, 0)].At, window[min(i+1, len(window)-1)].At
		t := (float64(s.At) - start) / StretchSeconds
		hann := 0.5 - 0.5*math.Cos(2*math.Pi*t)
		value := complex((s.Felt.dot(up)-mean)*hann*float64(after-before)/2, 0)
		turn := unitAt(t)
		at := unitAt(t * float64(first))
		for k := range sums {
			sums[k] += value * at
			at *= turn
		}
	}
	power := make([]float64, count)
	for k, s := range sums {
		power[k] = 2 * (real(s)*real(s) + imag(s)*imag(s)) / (StretchSeconds * hannPower)
	}
	return power
}

// unitAt is e^(-2 pi i turns).
func unitAt(turns float64) complex128 {
	sin, cos := math.Sincos(2 * math.Pi * turns)
	return complex(cos, -sin)
}
