package ground

import (
	"math"

	"rimside/calc/road"
)

// ClassMeanA is the geometric mean of class A of ISO 8608, m3; each further class is four times as rough, and a class ends at twice its
// mean.
const ClassMeanA = 16e-6

// Classes lists the letters.
func Classes() []string { return []string{"A", "B", "C", "D", "E", "F", "G", "H"} }

// ClassOf is the class of a roughness; what is smoother than A is A, what is rougher than H is H.
func ClassOf(g road.Roughness) string {
	letters := Classes()
	n := int(math.Floor(math.Log2(float64(g)/(ClassMeanA/2)) / 2))
	return letters[max(0, min(n, len(letters)-1))]
}

// Nearest is the ground that the eye tells apart whose roughness is nearest by ratio; of two the unsealed one.
func Nearest(g road.Roughness) string {
	best, off := "", math.Inf(1)
	for _, key := range Surfaces() {
		kind, _ := road.KindOf(key)
		if d := math.Abs(math.Log(float64(g / kind.Rough))); d <= off+1e-9 {
			best, off = key, d
		}
	}
	return best
}

// Surfaces lists the keys that Nearest may give.
func Surfaces() []string {
	var out []string
	for _, key := range road.Kinds() {
		if kind, _ := road.KindOf(key); !kind.Soft {
			out = append(out, key)
		}
	}
	return out
}
