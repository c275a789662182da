package icon

import (
	"math"
	"slices"
)

// All lengths below are shares of the tyre's radius.
const (
	tyreInside = 0.76 // where the tyre meets the rim
	rimInside  = 0.66
	hubRadius  = 0.11
	spokes     = 12
	spokeHalf  = 0.014
	flatAt     = 0.93 // the ground's height below the hub: the tyre gives way by the rest
	bulge      = 0.05 // how much wider the tyre gets beside the ground
	groundHalf = 0.88
	groundDeep = 0.09
	steps      = 360
)

// wheel draws the wheel with a tyre of the given radius around the sheet's centre, the ground line below it.
func (s *sheet) wheel(radius float64) {
	lift := (1 - flatAt) / 2 * radius // centres the drawing between its top and the ground
	at := func(x, y float64) point { return point{0.5 + x*radius, 0.5 + lift + y*radius} }
	circle := func(r float64) []point {
		return around(func(angle float64) point { return at(r*math.Cos(angle), r*math.Sin(angle)) })
	}
	tyre := around(func(angle float64) point { x, y := tyreEdge(angle); return at(x, y) })

	s.paint(ink, tyre, reversed(circle(tyreInside)))
	s.paint(accent, circle(tyreInside-0.03), reversed(circle(rimInside)))
	for i := range spokes {
		s.paint(ink, spoke(at, float64(i)*2*math.Pi/spokes))
	}
	s.paint(ink, circle(hubRadius))
	s.paint(paper, circle(hubRadius*0.4))
	s.paint(ink, []point{at(-groundHalf, flatAt), at(groundHalf, flatAt), at(groundHalf, flatAt+groundDeep), at(-groundHalf, flatAt+groundDeep)})
}

// tyreEdge is the tyre's outside: a circle cut by the ground, pushed outwards just above it.
func tyreEdge(angle float64) (x, y float64) {
	x, y = math.Cos(angle), math.Sin(angle)
	if y > 0 {
		nearGround := math.Pow(y, 6)
		x *= 1 + bulge*nearGround/math.Max(math.Abs(x), 0.3)
	}
	return x, math.Min(y, flatAt+0.01)
}

func spoke(at func(x, y float64) point, angle float64) []point {
	sin, cos := math.Sincos(angle)
	corner := func(along, across float64) point { return at(along*cos-across*sin, along*sin+across*cos) }
	return []point{
		corner(hubRadius/2, -spokeHalf), corner(rimInside+0.02, -spokeHalf),
		corner(rimInside+0.02, spokeHalf), corner(hubRadius/2, spokeHalf),
	}
}

func around(edge func(angle float64) point) []point {
	outline := make([]point, steps)
	for i := range outline {
		outline[i] = edge(float64(i) * 2 * math.Pi / steps)
	}
	return outline
}

func reversed(outline []point) []point {
	slices.Reverse(outline)
	return outline
}
