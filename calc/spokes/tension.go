package spokes

import (
	"math"

	"rimside/calc/unit"
)

const (
	// SteelDensity of a spoke in kg/m3 (standard table for stainless steel).
	SteelDensity = 8000.0
	// UsualMost and UsualLeast are the tensions in newtons that trade pages name for the tight and the slack side where a rim's maker
	// prints none: 120 and 60 kgf.
	UsualMost, UsualLeast = 1176.0, 588.0
)

// Spoke is one round spoke: its free length, to the crossing, its diameter, and its density in kg/m3.
type Spoke struct {
	Free, Diameter unit.Metre
	Density        float64
}

// Tension of a spoke that sounds at so many hertz: T = rho A (2 L f)^2 (string equation, facts 7).
func (s Spoke) Tension(hz float64) unit.Newton {
	d, wave := float64(s.Diameter), 2*float64(s.Free)*hz
	return unit.Newton(s.Density * math.Pi * d * d / 4 * wave * wave)
}

// Pitch in hertz of a spoke under tension: f = 1/(2 L) sqrt(T/mu), the inverse of Tension.
func (s Spoke) Pitch(tension unit.Newton) float64 {
	d := float64(s.Diameter)
	return math.Sqrt(float64(tension)/(s.Density*math.Pi*d*d/4)) / (2 * float64(s.Free))
}
