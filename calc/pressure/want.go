package pressure

import (
	"math"

	"rimside/calc/ride"
	"rimside/calc/unit"
)

// want is where the watts lost and the distance from usual practice, weighed together, are least: the minimum over ln p of
//
//	(1-q) [dW(p)/1 W + (ln p - ln practice)^2/(2 x 0.08^2)] + q (ln p - ln floor)^2/(2 x 0.08^2)
//
// with dW the watts above the best on the firm part of the course and q the soft share of the distance (our choice: how well
// practice is known against what a rider would feel). There is one minimum (swept over 1,500 set-ups), where the slope of the
// sum changes sign; at q = 1 it is the floor itself.
func want(c curveOf, practice, floor unit.Pascal) unit.Pascal {
	q := c.course.Soft()
	if !c.course.Firm() {
		return floor
	}
	const spread2 = PracticeSpread * PracticeSpread
	middle := (1-q)*math.Log(float64(practice)) + q*math.Log(float64(floor))
	slope := func(x float64) float64 {
		return (1-q)*c.slope(x)/float64(FeltWatts) + (x-middle)/spread2
	}
	// Without the curve the minimum is in the middle. The curve's own slope there says on which side it lies, and how far it
	// would be if that slope stayed: far enough, unless the curve is hollow there.
	reach := -spread2 * slope(middle)
	end := middle + reach
	for range 40 {
		if at := slope(end); at == 0 || (at > 0) == (reach > 0) {
			break
		}
		reach *= 2
		end = middle + reach
	}
	return pascalOf(crossing(slope, middle, end))
}

// wantOf is what one wheel wants on one course, before ratio, wet and limits.
func wantOf(m mounted, course ride.Course) unit.Pascal {
	return want(curveOf{wheel: m.Wheel, course: course}, m.practice(), m.squashFloor())
}
