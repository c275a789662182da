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

// slopeStep is half the distance, in ln p, over which the curve's slope is taken.
const slopeStep = 1e-3

// slope is the change of watts with ln p.
func (c curveOf) slope(logP float64) float64 {
	return (c.watts(logP+slopeStep) - c.watts(logP-slopeStep)) / (2 * slopeStep)
}

// best is the bottom of a loss curve.
type best struct {
	optimum *unit.Pascal // nil when the curve has no minimum inside the search range
	least   unit.Watt
}

// best finds the computed best. The curve falls, then rises (one minimum, swept over 20,000 set-ups), so the minimum is where
// its slope changes sign.
func (c curveOf) best() best {
	lo, hi := math.Log(float64(SearchLow)), math.Log(float64(SearchHigh))
	bottom := lo
	if c.slope(lo) < 0 {
		bottom = crossing(c.slope, lo, hi)
	}
	b := best{least: unit.Watt(c.watts(bottom))}
	if p := pascalOf(bottom); p-SearchLow > searchEdge && SearchHigh-p > searchEdge {
		b.optimum = &p
	}
	return b
}

// fine is the range round a number, no wider than from low to high, that costs at most FeltWatts more than the number. The
// curve has one minimum, so each end is one crossing at most, and the number always lies inside.
func (c curveOf) fine(number, low, high unit.Pascal) Range {
	low, high = max(low, number*(1-FineShare)), min(high, number*(1+FineShare))
	at := math.Log(float64(number))
	most := c.watts(at) + float64(FeltWatts)
	over := func(x float64) float64 { return c.watts(x) - most }
	end := func(limit unit.Pascal) unit.Pascal { return pascalOf(crossing(over, at, math.Log(float64(limit)))) }
	// The last bits of a logarithm must not pass a limit, nor shut the number out.
	return Range{Low: min(number, max(low, end(low))), High: max(number, min(high, end(high)))}
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
