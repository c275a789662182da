package tyre

import (
	"math"

	"rimside/calc/unit"
)

// RestSquash is the squash at which Area15 is taken, as a share of the width: the trade's 15 % drop.
const RestSquash = 0.15

// Section is a mounted tyre: its width and the outer radius of the wheel.
type Section struct{ Width, Radius unit.Metre }

// Mounted is the section of a tyre of this width on a rim of this bead seat diameter.
func Mounted(beadSeat, width unit.Metre) Section {
	return Section{Width: width, Radius: OuterRadius(beadSeat, width)}
}

// The fit of Beta (chart points from memory).
const (
	// BetaFitted is the shape factor of a tyre as wide as BetaWidthMM.
	BetaFitted = 2.8
	// BetaWidthMM is the width at which BetaFitted holds.
	BetaWidthMM = 28
)

// Beta is the shape factor of the load-deflection law, min(pi, 2.8 sqrt(width/28 mm)): a fit to the 15 % drop chart, whose
// points obey pressure ~ load/width^2 (chart points from memory).
func (s Section) Beta() float64 {
	return math.Min(math.Pi, BetaFitted*math.Sqrt(s.Width.MM()/BetaWidthMM))
}

// LoadAt is the load that deflects the tyre by d at this pressure: F = p beta 4/3 sqrt(2R) d^1.5, a thin inextensible
// torus pressed on a flat (Renart and Roura-Grabulosa 2019 for the power; Beta for the factor).
func (s Section) LoadAt(p unit.Pascal, beta float64, d unit.Metre) unit.Newton {
	return unit.Newton(float64(p) * beta * 4 / 3 * math.Sqrt(2*float64(s.Radius)) * math.Pow(float64(d), 1.5))
}

// DeflectionAt is the inverse of LoadAt.
func (s Section) DeflectionAt(p unit.Pascal, beta float64, load unit.Newton) unit.Metre {
	return unit.Metre(math.Pow(float64(load)/(float64(p)*beta*4/3*math.Sqrt(2*float64(s.Radius))), 2.0/3))
}

// Area15 is the area on which pressure alone carries the load at 15 % squash:
// A15 = beta 4/3 sqrt(2R) (0.15 w)^1.5.
func (s Section) Area15() unit.SquareMetre {
	return unit.SquareMetre(s.LoadAt(1, s.Beta(), RestSquash*s.Width))
}

// Fill is the load as a share of what carries it at 15 % squash: X = W/((p + pc) A15), pc the casing's own pressure.
func (s Section) Fill(load unit.Newton, p, casing unit.Pascal) float64 {
	return float64(load) / (float64(p+casing) * float64(s.Area15()))
}

// SquashOf is the deflection as a share of the width, 0.15 X^(2/3).
func SquashOf(fill float64) float64 { return RestSquash * math.Cbrt(fill*fill) }

// FillOf is the inverse of SquashOf.
func FillOf(squash float64) float64 { return math.Pow(squash/RestSquash, 1.5) }

// PressureFor is the pressure at which the load squashes the tyre to this share of its width, carried by air alone.
func (s Section) PressureFor(load unit.Newton, squash float64) unit.Pascal {
	return unit.Pascal(float64(load) / (FillOf(squash) * float64(s.Area15())))
}

// Stiffness is the tangent of the load-deflection law at a load and deflection, k = 1.5 W/d.
func Stiffness(load unit.Newton, d unit.Metre) unit.NewtonPerMetre {
	return unit.NewtonPerMetre(1.5 * float64(load) / float64(d))
}

// PatchShortening is how much shorter a real tread's contact is than the chord (our choice).
const PatchShortening = 0.8

// PatchLength is the length of the contact, L = 0.8 * 2 sqrt(2 R d): the chord of the undeformed circle, shortened as
// real treads are (our choice of 0.8).
func (s Section) PatchLength(d unit.Metre) unit.Metre {
	return unit.Metre(PatchShortening * 2 * math.Sqrt(2*float64(s.Radius)*float64(d)))
}
