package spokes

import "math"

const (
	// Deepest and Shrillest notes that are looked for, in hertz: a long slack spoke and a short tight one (our choice).
	Deepest, Shrillest = 80.0, 1300.0
	// ApartBy is how far a tone may lie from its partial, as a share (our choice).
	ApartBy = 0.015
	// Softest and Stiffest are the range of B: a long thin spoke under load, and a short thick slack one (our choice).
	Softest, Stiffest = 2e-4, 0.2

	// Sure is the confidence from which a note is taken: above it one pluck in five hundred was wrong in the simulations of the tests.
	Sure = 0.5

	mostPartials = 6    // that a hypothesis is judged by (our choice: above, stiffness blurs what belongs together)
	missing      = 0.3  // what a partial that is not there costs, as a share of the tallest tone (our choice)
	stiffCosts   = 0.02 // what the stiffest spoke costs, likewise: of two that explain the same the simpler counts (our choice)
	stiffSteps   = 66   // between the softest and the stiffest (our choice)
	sameNote     = 0.04 // hypotheses closer than this are of one note, as a share (our choice)
	sureMargin   = 0.25 // how far ahead of every other note a sure one is, as a share of all tones (our choice)
)

// Note is the pitch of a pluck and how sure it is, 0 to 1.
type Note struct{ Hz, Confidence float64 }

// Pitch is the note of one plucked spoke: samples between -1 and 1, so many a second. ok is false where no note is heard.
//
// Tones are picked from the spectrum. Each in turn is taken for the first to the sixth partial of a string of every stiffness, and the
// string is chosen that leaves the fewest tones unexplained and the fewest of its own partials unheard: a note an octave too low has
// partials that nobody hears, one too high leaves tones over (the two-way mismatch of Maher and Beauchamp 1994, for stiff strings).
func Pitch(samples []float64, rate float64) (note Note, ok bool) {
	ring := ringing(samples, rate)
	if ring == nil {
		return Note{}, false
	}
	tones := peaks(ring, rate)
	best, rival := strongest(tones)
	if best.matched == 0 {
		return Note{}, false
	}
	heard := 0.0
	for _, t := range tones {
		heard += t.height
	}
	lead := (best.score - rival) / (sureMargin * heard)
	return Note{best.hz(), clamp(best.matched/heard) * clamp(lead)}, true
}

func clamp(x float64) float64 { return math.Max(0, math.Min(1, x)) }

// guess is a string that may have been heard.
type guess struct {
	first       float64 // Hz of its lowest partial
	score       float64
	matched     float64 // height of the tones that it explains
	lowestHeard float64 // Hz of the tone that is its lowest partial, 0 when that is not heard
}

// hz is the lowest partial as it was heard; as it is reckoned from the others where it was not.
func (g guess) hz() float64 {
	if g.lowestHeard > 0 {
		return g.lowestHeard
	}
	return g.first
}

// partials is where a string's partials lie over its first: f_k = k f_0 sqrt(1 + B k^2) (Fletcher 1964).
func partials(stiff float64) (over [mostPartials]float64) {
	for i := range over {
		k := float64(i + 1)
		over[i] = k * math.Sqrt((1+stiff*k*k)/(1+stiff))
	}
	return over
}

// strongest is the best guess, and the score of the best one of another note.
func strongest(tones []peak) (best guess, rival float64) {
	var all []guess
	most := tallest(tones)
	for step := 0; step <= stiffSteps; step++ {
		stands := partials(stiffAt(step))
		for _, tone := range tones {
			for _, stand := range stands {
				if first := tone.hz / stand; first >= Deepest && first <= Shrillest {
					g := judge(tones, most, first, stands)
					g.score -= stiffCosts * most * float64(step) / stiffSteps
					all = append(all, g)
				}
			}
		}
	}
	best.score, rival = math.Inf(-1), math.Inf(-1)
	for _, g := range all {
		if g.score > best.score {
			best = g
		}
	}
	for _, g := range all {
		if math.Abs(math.Log(g.first/best.first)) > sameNote && g.score > rival {
			rival = g.score
		}
	}
	return best, rival
}

// stiffAt runs from no stiffness over the softest to the stiffest, in even ratios.
func stiffAt(step int) float64 {
	if step == 0 {
		return 0
	}
	return Softest * math.Pow(Stiffest/Softest, float64(step-1)/(stiffSteps-1))
}

func tallest(tones []peak) float64 {
	out := 0.0
	for _, t := range tones {
		out = math.Max(out, t.height)
	}
	return out
}

// judge adds up the tones that a string explains, takes off those below its seventh partial that it leaves over, and those of its
// partials that are not heard although a higher one is.
func judge(tones []peak, most, first float64, stands [mostPartials]float64) guess {
	g := guess{first: first}
	over, unheard, waiting := 0.0, 0.0, 0
	for _, t := range tones {
		if t.hz < first*(stands[mostPartials-1]+0.5) {
			over += t.height
		}
	}
	for i, stand := range stands {
		tone, far := nearest(tones, first*stand)
		if far > ApartBy {
			waiting++
			continue
		}
		g.matched += tone.height * (1 - far/ApartBy/4)
		over -= tone.height
		unheard += missing * most * float64(waiting)
		waiting = 0
		if i == 0 {
			g.lowestHeard = tone.hz
		}
	}
	g.score = g.matched - over - unheard
	return g
}

// nearest is the tone next to a frequency, and how far it is as a share of that.
func nearest(tones []peak, hz float64) (peak, float64) {
	found, far := peak{}, math.Inf(1)
	for _, t := range tones {
		if by := math.Abs(t.hz/hz - 1); by < far {
			found, far = t, by
		}
	}
	return found, far
}
