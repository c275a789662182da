package road

import (
	"math"

	"rimside/calc/unit"
)

// VelocitySpectrum is the one-sided spectrum of the vertical velocity under a wheel at this speed, in (m/s)2/Hz. With
// waviness 2 it is the same at every frequency: Sv = 4 pi^2 Gd(n0) n0^2 v (ISO 8608, its velocity form).
func (g Roughness) VelocitySpectrum(v unit.MetrePerSecond) float64 {
	return 4 * math.Pi * math.Pi * float64(g) * ReferenceWave * ReferenceWave * float64(v)
}

// PointForce is the mean force that roughness costs a wheel with a point contact, F = pi^2 k Gd(n0) n0^2, whatever the
// masses, springs and dampers behind the tyre (Zuo and Zhang 2013; Turner, arXiv 2405.00019).
func (g Roughness) PointForce(k unit.NewtonPerMetre) unit.Newton {
	return unit.Newton(math.Pi * math.Pi * float64(k) * float64(g) * ReferenceWave * ReferenceWave)
}

// Angular is the same roughness on the angular scale that some codes print, Gd(W0) at W0 = 1 rad/m:
// Gd(W) = Gd(n)/(2 pi) carried from n0 = 0.1 to n = 1/(2 pi) with waviness 2, in all 2 pi n0^2 Gd(n0).
func (g Roughness) Angular() float64 {
	return 2 * math.Pi * float64(g) * ReferenceWave * ReferenceWave
}

// The reference quarter car of the International Roughness Index at 80 km/h: tyre spring and damper per sprung mass
// (ASTM E1364; World Bank Technical Paper 46; constants from memory).
const (
	quarterCarTyre   = 653.0 // 1/s2
	quarterCarDamper = 6.0   // 1/s
	quarterCarSpeed  = 80 / 3.6
)

// IRI is the International Roughness Index of a road with this spectrum, in m/m, without the index's 250 mm filter. All
// the power that roughness costs the quarter car is burnt in its damper, so the suspension's speed has the variance
// pi^2 k Gd n0^2 v/c; the index is the mean of its magnitude, sqrt(2/pi) sigma, per travel speed.
func (g Roughness) IRI() float64 {
	power := float64(g.PointForce(quarterCarTyre)) * quarterCarSpeed
	return math.Sqrt(2/math.Pi) * math.Sqrt(power/quarterCarDamper) / quarterCarSpeed
}

// Averaging is the power of a moving average over the contact patch, (sin y/y)^2 with y = pi times the number of waves
// in the patch.
func Averaging(wavesInPatch float64) float64 {
	y := math.Pi * wavesInPatch
	if math.Abs(y) < 1e-8 {
		return 1
	}
	s := math.Sin(y) / y
	return s * s
}

// DailyVibration is the eight-hour equivalent of a vibration, A(8) = a sqrt(T/8 h) (Directive 2002/44/EC).
func DailyVibration(a unit.MetrePerSecond2, exposure unit.Second) unit.MetrePerSecond2 {
	return a * unit.MetrePerSecond2(math.Sqrt(float64(exposure)/(8*3600)))
}
