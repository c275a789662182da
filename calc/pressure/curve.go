package pressure

import (
	"math"

	"rimside/calc/unit"
)

// curve is the picture's loss curve, evenly spaced in ln p from below the floor to above what is asked for.
func curve(c curveOf, a *asked, floor unit.Pascal) []Curve {
	if a.best == nil {
		return nil
	}
	top := a.want
	if a.best.optimum != nil {
		top = max(top, *a.best.optimum)
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
