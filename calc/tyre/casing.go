package tyre

import (
	"math"

	"rimside/calc/unit"
)

// Sidewall is how the casing feels between the fingers.
type Sidewall string

// The three sidewalls.
const (
	Cloth Sidewall = "cloth" // like cloth
	Glove Sidewall = "glove" // like a rubber glove
	Hose  Sidewall = "hose"  // like a garden hose
)

// Sidewalls lists the keys in order of stiffness.
func Sidewalls() []string { return []string{string(Cloth), string(Glove), string(Hose)} }

// Casing is the rolling loss of a casing, F = W (A + B X) with X the fill at pressure + Own (linear in 1/p: Clark 1978).
type Casing struct {
	Own  unit.Pascal // the pressure that the casing's stiffness is worth
	A, B float64     // loss at no squash, and its growth per fill
}

// BendLoss is b of the casing loss for every sidewall: our choice inside the published range.
const BendLoss = 0.0022

var casings = map[Sidewall]Casing{ // our choice inside the published range
	Cloth: {Own: unit.FromKPa(10), A: 0.0018, B: BendLoss},
	Glove: {Own: unit.FromKPa(20), A: 0.0030, B: BendLoss},
	Hose:  {Own: unit.FromKPa(35), A: 0.0048, B: BendLoss},
}

// CasingOf is the loss of a sidewall; ok is false for a key that is not one of Sidewalls.
func CasingOf(s Sidewall) (c Casing, ok bool) {
	c, ok = casings[s]
	return c, ok
}

// RollingTest is a measured rolling coefficient at a known pressure and load.
type RollingTest struct {
	Coefficient float64
	Pressure    unit.Pascal
	Load        unit.Newton
}

// Coefficient is the casing loss per load at a fill, a + b X.
func (c Casing) Coefficient(fill float64) float64 { return c.A + c.B*fill }

// Measured scales both terms so that the casing shows the tested coefficient in the test's own state.
func (c Casing) Measured(s Section, test RollingTest) Casing {
	scale := test.Coefficient / c.Coefficient(s.Fill(test.Load, test.Pressure, c.Own))
	return Casing{Own: c.Own, A: c.A * scale, B: c.B * scale}
}

// RoadTyreCoefficient is a published fit of rolling resistance against pressure, Cr = 0.1071 P^-0.477 with P in kPa
// (Grappe et al. 1999; coefficients from memory). It judges the shape of Casing and is not used for any answer.
func RoadTyreCoefficient(p unit.Pascal) float64 { return 0.1071 * math.Pow(p.KPa(), -0.477) }
