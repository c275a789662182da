package tyre

import (
	"errors"
	"math"

	"rimside/calc/unit"
)

// ErrImpossible says that no circular section of this casing exists on so wide a rim.
var ErrImpossible = errors.New("the casing is too short for a rim this wide")

// RimRow is one row of the ETRTO table: printed widths up to UpTo are measured on a rim of this inner width.
type RimRow struct{ UpTo, Inner unit.Metre }

// ETRTO measuring rims from January 2020, as a tyre maker's page quotes them. Before 2020 they were narrower.
var measuringRims = []RimRow{
	{0.021, 0.015}, {0.024, 0.017}, {0.028, 0.019}, {0.034, 0.021}, {0.046, 0.023}, {0.057, 0.025},
	{0.065, 0.030}, {0.071, 0.035}, {0.083, 0.045}, {0.113, 0.076}, {0.132, 0.094},
}

// MeasuringRims is the whole table, narrowest first.
func MeasuringRims() []RimRow { return append([]RimRow(nil), measuringRims...) }

// Printed widths that the table of measuring rims covers, in whole millimetres.
const (
	MinLabelMM = 18
	MaxLabelMM = 132
)

// MeasuringRim is the inner width of the rim on which a tyre of this printed width is measured (ETRTO 2020). The label
// is rounded to whole millimetres, as it is printed; widths outside the table take its nearest row.
func MeasuringRim(label unit.Metre) unit.Metre {
	whole := math.Round(label.MM())
	for _, row := range measuringRims {
		if whole <= math.Round(row.UpTo.MM()) {
			return row.Inner
		}
	}
	return measuringRims[len(measuringRims)-1].Inner
}

// Arc is the length of the casing from bead to bead: a circle of diameter d cut off by the rim's inner width,
// arc = d (pi - asin(inner/d)). It needs d >= inner.
func Arc(d, inner unit.Metre) unit.Metre {
	return d * unit.Metre(math.Pi-math.Asin(float64(inner/d)))
}

// SectionOnRim is the inverse of Arc: the diameter of the section that a casing of this arc makes on a rim of this inner
// width. Error: ErrImpossible when arc <= pi inner/2, the arc of d = inner.
func SectionOnRim(arc, inner unit.Metre) (unit.Metre, error) {
	if !(arc > inner*math.Pi/2) {
		return 0, ErrImpossible
	}
	// Arc grows with d: from pi inner/2 at d = inner to more than d pi/2, so the root lies between these two.
	lo, hi := inner, arc*2/math.Pi
	for range 64 {
		mid := (lo + hi) / 2
		if Arc(mid, inner) < arc {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, nil
}

// PredictedWidth is the width a tyre of this printed width takes on a rim of this inner width: the casing keeps the arc
// it has on its measuring rim. Expect +/- 1.5 mm (our choice). Error: ErrImpossible.
func PredictedWidth(label, inner unit.Metre) (unit.Metre, error) {
	whole := unit.FromMM(math.Round(label.MM()))
	return SectionOnRim(Arc(whole, MeasuringRim(whole)), inner)
}

// WidthSlope is the growth of the section per growth of the rim, dd/dw = (1/s)/(pi - asin r + r/s) with r = inner/d and
// s = sqrt(1 - r^2): the derivative of Arc held constant.
func WidthSlope(d, inner unit.Metre) float64 {
	r := float64(inner / d)
	s := math.Sqrt(1 - r*r)
	return (1 / s) / (math.Pi - math.Asin(r) + r/s)
}

// OuterRadius is the radius of the inflated wheel, bead seat diameter/2 + width (section height taken as width).
func OuterRadius(beadSeat, width unit.Metre) unit.Metre { return beadSeat/2 + width }

// Volume of air in the tyre, taken as a torus: pi^2 (bead seat + width) width^2 / 4. The true volume is within about
// 10 % (common practice).
func Volume(beadSeat, width unit.Metre) unit.CubicMetre {
	return unit.CubicMetre(math.Pi * math.Pi / 4 * float64(beadSeat+width) * float64(width) * float64(width))
}
