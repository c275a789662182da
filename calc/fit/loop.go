package fit

import (
	"cmp"
	"math"
	"slices"

	"rimside/calc/unit"
)

// Point is a place in the rim's plane, in metres from the axle; x to the right, y up.
type Point struct{ X, Y float64 }

// at is the place at an angle, in radians from straight up, clockwise, and a radius in metres.
func at(angle, radius float64) Point {
	return Point{X: radius * math.Sin(angle), Y: radius * math.Cos(angle)}
}

// Loop is the shortest closed way round the well's floor, the valve at valveAt and an arc of the flange from offFrom to offTo
// (radians, clockwise; equal for one point; NaN for none): the convex hull of them, since a taut loop is convex. Its points go
// round once, steps of them to a whole turn of the floor. This is what a drawing shows, and the judge of the closed forms.
func Loop(r Rim, valveAt, offFrom, offTo float64, steps int) []Point {
	points := make([]Point, 0, 2*steps+4)
	for i := range steps {
		points = append(points, at(2*math.Pi*float64(i)/float64(steps), r.floor()))
	}
	if r.ValveHeight > 0 && !math.IsNaN(valveAt) {
		corner, half := math.Hypot(r.top(), float64(r.ValveWidth)/2), math.Atan2(float64(r.ValveWidth)/2, r.top())
		points = append(points, at(valveAt-half, corner), at(valveAt+half, corner))
	}
	if !math.IsNaN(offFrom) {
		count := max(1, int(math.Ceil((offTo-offFrom)/(2*math.Pi)*float64(steps))))
		for i := range count + 1 {
			points = append(points, at(offFrom+(offTo-offFrom)*float64(i)/float64(count), r.edge()))
		}
	}
	return hull(points)
}

// Length is how long a closed way is.
func Length(loop []Point) unit.Metre {
	var sum float64
	for i, p := range loop {
		q := loop[(i+1)%len(loop)]
		sum += math.Hypot(q.X-p.X, q.Y-p.Y)
	}
	return unit.Metre(sum)
}

// BeadLength is how long the bead is, as a loop: pi Db.
func BeadLength(r Rim) unit.Metre { return unit.Metre(math.Pi) * (r.BeadSeat - r.Undersize) }

// hull is the convex hull, counter-clockwise, by Andrew's monotone chain (1979).
func hull(points []Point) []Point {
	points = slices.Clone(points)
	slices.SortFunc(points, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	points = slices.Compact(points)
	if len(points) < 3 {
		return points
	}
	below := chain(points)
	slices.Reverse(points)
	above := chain(points)
	return append(below[:len(below)-1], above[:len(above)-1]...)
}

// chain is one side of the hull, from the first point to the last.
func chain(points []Point) []Point {
	var out []Point
	for _, p := range points {
		for len(out) >= 2 && turn(out[len(out)-2], out[len(out)-1], p) <= 0 {
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	return out
}

// turn is above 0 where a, b, c turn to the left.
func turn(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
