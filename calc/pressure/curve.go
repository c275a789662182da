package pressure

import (
	"math"

	"rimside/calc/unit"
)

// points is the picture's loss curve, evenly spaced in ln p from below the floor to above the want and the computed best.
func (c curveOf) points(want unit.Pascal, optimum *unit.Pascal, floor unit.Pascal) []Curve {
	top := want
	if optimum != nil {
		top = max(top, *optimum)
	}
	lo := math.Log(CurveBelow * float64(floor))
	hi := math.Log(CurveAbove * float64(max(top, floor/CurveAbove)))
	points := make([]Curve, curvePoints)
	for i := range points {
		p := pascalOf(lo + (hi-lo)*float64(i)/(curvePoints-1))
		loss := c.course.Loss(c.wheel, p)
		points[i] = Curve{Pressure: p, Casing: power(loss.Casing, c.course.Speed()), Roughness: power(loss.Roughness, c.course.Speed())}
	}
	return points
}
