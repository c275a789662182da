package ground

import (
	"math"
	"math/cmplx"

	"rimside/calc/ride"
	"rimside/calc/road"
	"rimside/calc/unit"
)

// Mount is where the phone is.
type Mount string

// The two mounts.
const (
	OnBar   Mount = "bar"
	OnFrame Mount = "frame"
)

// Mounts lists the keys.
func Mounts() []string { return []string{string(OnBar), string(OnFrame)} }

// Wheel is one end of the bike: its wheel and the pressure in it.
type Wheel struct {
	ride.Wheel
	Pressure unit.Pascal
}

// Machine is the bike, its rider on it, and where the phone is.
type Machine struct {
	Front, Rear Wheel
	Mount       Mount
}

// Where bars and stem may bend with the phone on them; the bending lifts what lies below it.
const (
	// BarLeastHertz and BarMostHertz are the lowest and highest such bending tried, Hz (from memory: bars shaken in workshops bend there).
	BarLeastHertz, BarMostHertz = 42.0, 95.0
	barSteps                    = 5
)

// barHertz are the bendings tried, in equal ratios, and 0 for bars too stiff to show any.
func barHertz() []float64 {
	out := []float64{0}
	for i := range barSteps {
		out = append(out, BarLeastHertz*math.Pow(BarMostHertz/BarLeastHertz, float64(i)/(barSteps-1)))
	}
	return out
}

// BarDamping is the damping ratio of the bars' bending with hands on them (our choice).
const BarDamping = 0.15

// freedom is what is not known about the machine, each as a factor on what was said, and what the phone makes of it.
type freedom struct {
	tyre, rigid, body float64
	bar               float64 // where bars and stem bend, Hz; 0 for stiff
	folded            float64 // share of what lies above half the sampling rate and is folded back into the band
	rear, wheelbase   float64 // how much of the rear wheel's motion the phone has; m
}

// predictor predicts the spectrum at the phone for a roughness of 1 m3.
type predictor struct {
	machine Machine
	v       unit.MetrePerSecond
	rate    float64
	hertz   []float64
}

const foldedTo = 200.0 // Hz; the contact's averaging leaves nothing above (our choice)

// images are the frequencies that show up at this one: itself, and those that the sampling folds onto it.
func (p predictor) images(hertz float64) []float64 {
	out := []float64{hertz}
	for n := 1.0; n*p.rate-hertz <= foldedTo; n++ {
		out = append(out, n*p.rate-hertz, n*p.rate+hertz)
	}
	return out
}

// motions are one wheel's end of the frame: its acceleration per velocity at the ground, with the contact's averaging, at each
// frequency of the band and its images.
func (p predictor) motions(w Wheel, f freedom) [][]complex128 {
	shaken, patch := w.Shaken(w.Pressure)
	shaken.Tyre *= unit.NewtonPerMetre(f.tyre)
	shaken.Rigid *= unit.Kilogram(f.rigid)
	shaken.Body *= unit.Kilogram(f.body)
	shaken = shaken.SeatedBody()
	out := make([][]complex128, len(p.hertz))
	for i, hertz := range p.hertz {
		for _, image := range p.images(hertz) {
			averaged := math.Sqrt(road.Averaging(image * float64(patch) / float64(p.v)))
			out[i] = append(out[i], complex(averaged*2*math.Pi*image, 0)*shaken.FrameMotion(image))
		}
	}
	return out
}

// spectrum is the logarithm of the power at the phone, at each frequency of the band.
func (p predictor) spectrum(front, rear [][]complex128, f freedom) []float64 {
	return seen(p.powers(front, rear, p.late(f.wheelbase), f.rear), p.bends(f.bar), f.folded)
}

// late is how the rear wheel's motion is turned by meeting the same ground a wheelbase later, at each frequency and its images.
func (p predictor) late(wheelbase float64) [][]complex128 {
	out := make([][]complex128, len(p.hertz))
	for i, hertz := range p.hertz {
		for _, image := range p.images(hertz) {
			out[i] = append(out[i], cmplx.Exp(complex(0, -2*math.Pi*image*wheelbase/float64(p.v))))
		}
	}
	return out
}

// powers are those of a stiff frame where the phone sits, which has a share of the rear wheel's motion.
func (p predictor) powers(front, rear, late [][]complex128, share float64) [][]float64 {
	sv := road.Roughness(1).VelocitySpectrum(p.v)
	out := make([][]float64, len(front))
	for i := range front {
		out[i] = make([]float64, len(front[i]))
		for n, motion := range front[i] {
			motion *= complex(1-share, 0)
			if share > 0 {
				motion += complex(share, 0) * late[i][n] * rear[i][n]
			}
			out[i][n] = sv * (real(motion)*real(motion) + imag(motion)*imag(motion))
		}
	}
	return out
}

// bends are what bars that bend make of the power, at each frequency and its images.
func (p predictor) bends(resonance float64) [][]float64 {
	out := make([][]float64, len(p.hertz))
	for i, hertz := range p.hertz {
		for _, image := range p.images(hertz) {
			out[i] = append(out[i], bend(image, resonance))
		}
	}
	return out
}

// seen is the logarithm of the power that the sampling shows, with a share of what it folds back.
func seen(powers, bends [][]float64, folded float64) []float64 {
	out := make([]float64, len(powers))
	for i, at := range powers {
		power := at[0] * bends[i][0]
		for n := 1; n < len(at) && folded > 0; n++ {
			power += folded * at[n] * bends[i][n]
		}
		out[i] = math.Log(power)
	}
	return out
}

// bend is the power that a mass on a damped spring passes on.
func bend(hertz, resonance float64) float64 {
	if resonance == 0 {
		return 1
	}
	r := hertz / resonance
	damper := 2 * BarDamping * r
	return (1 + damper*damper) / ((1-r*r)*(1-r*r) + damper*damper)
}
