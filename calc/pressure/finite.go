package pressure

import (
	"math"

	"rimside/calc/unit"
)

var errTogether = inputError("these values together lie outside what can be computed")

// finite refuses an answer in which a number was lost on the way: values that pass the checks one by one can still be absurd
// together, and nobody may be shown a NaN. Error: ErrInput.
func (a Answer) finite() error {
	for _, side := range Sides {
		for _, x := range a.Wheel(side).numbers() {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return errTogether
			}
		}
	}
	for _, b := range a.Bigger {
		if p := float64(b.Recommended); math.IsNaN(p) || math.IsInf(p, 0) {
			return errTogether
		}
	}
	return nil
}

// numbers lists every number of a wheel's answer.
func (w *Wheel) numbers() []float64 {
	out := []float64{float64(w.Width), float64(w.Load)}
	add := func(ps ...unit.Pascal) {
		for _, p := range ps {
			out = append(out, float64(p))
		}
	}
	if f := w.Figures; f != nil {
		add(f.Custom, f.Floor)
		if f.Optimum != nil {
			add(*f.Optimum)
		}
		if f.Good != nil {
			add(f.Good.Low, f.Good.High)
		}
		if f.Ceiling != nil {
			add(*f.Ceiling)
		}
		for _, c := range f.Curve {
			out = append(out, float64(c.Pressure), float64(c.Casing), float64(c.Roughness))
		}
	}
	if a := w.Advice; a != nil {
		add(a.Recommended, a.Set, a.Gauge, a.AtRide, a.Likely.Low, a.Likely.High)
		out = append(out, a.Squash)
		if c := a.Cost; c != nil {
			out = append(out, float64(c.Casing), float64(c.Roughness), float64(c.AboveBest), c.Light, float64(c.Acceleration))
		}
		if a.Action != nil {
			add(a.Action.By)
			if a.Action.Strokes != nil {
				out = append(out, *a.Action.Strokes)
			}
		}
	}
	return out
}
