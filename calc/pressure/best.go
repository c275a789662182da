package pressure

import (
	"math"

	"rimside/calc/ride"
	"rimside/calc/unit"
)

// curveOf is one wheel on one course, asked for watts at a pressure given as its logarithm (on which the curve is about
// as wide for soft tyres as for hard ones).
type curveOf struct {
	wheel  ride.Wheel
	course ride.Course
}

func (c curveOf) watts(logP float64) float64 {
	p := unit.Pascal(math.Exp(logP))
	return float64(c.course.Loss(c.wheel, p).Total()) * float64(c.course.Speed())
}

// best is the bottom of a loss curve.
type best struct {
	optimum *unit.Pascal // nil when the curve has no minimum inside the search range
	least   unit.Watt
	good    Range
}

// slopeStep is half the distance, in ln p, over which the curve's slope is taken.
const slopeStep = 1e-3

// solve finds the computed best and the good range. The curve falls, then rises (one minimum, swept over 20,000 set-ups), so
// the minimum is where its slope changes sign and each end of the range is one crossing.
func (c curveOf) solve() best {
	lo, hi := math.Log(float64(SearchLow)), math.Log(float64(SearchHigh))
	slope := func(x float64) float64 { return c.watts(x+slopeStep) - c.watts(x-slopeStep) }
	bottom := lo
	if slope(lo) < 0 {
		bottom = crossing(slope, lo, hi)
	}
	least := c.watts(bottom)
	above := func(x float64) float64 { return c.watts(x) - least - float64(GoodWatts) }
	b := best{
		least: unit.Watt(least),
		good: Range{
			Low:  pascalOf(crossing(above, bottom, lo)),
			High: pascalOf(crossing(above, bottom, hi)),
		},
	}
	if p := pascalOf(bottom); p-SearchLow > searchEdge && SearchHigh-p > searchEdge {
		b.optimum = &p
	}
	return b
}

func pascalOf(logP float64) unit.Pascal { return unit.Pascal(math.Exp(logP)) }

// crossing finds where f changes sign between a and b by regula falsi with the Illinois correction (Dowell and Jarratt
// 1971). Where both ends have the same sign there is no crossing before b, and b is returned.
func crossing(f func(float64) float64, a, b float64) float64 {
	fa, fb := f(a), f(b)
	if (fa > 0) == (fb > 0) {
		return b
	}
	x := a
	for range 80 {
		next := (a*fb - b*fa) / (fb - fa)
		if math.Abs(next-x) < 1e-11 {
			return next
		}
		x = next
		fx := f(x)
		switch {
		case fx == 0:
			return x
		case (fx > 0) == (fb > 0):
			b, fb = x, fx
			fa /= 2
		default:
			a, fa = b, fb
			b, fb = x, fx
		}
	}
	return x
}
