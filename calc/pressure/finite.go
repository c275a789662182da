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
			if !isFinite(x) {
				return errTogether
			}
		}
	}
	for _, b := range a.Bigger {
		if !isFinite(float64(b.Recommended)) || !isFinite(float64(b.NeedsMark)) {
			return errTogether
		}
	}
	for _, n := range a.Notices {
		for _, v := range n.Values {
			if !isFinite(v.Number) {
				return errTogether
			}
		}
	}
	return nil
}

func isFinite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// numbers lists every number of a wheel's answer.
func (w *Wheel) numbers() []float64 {
	out := []float64{float64(w.Width), float64(w.Load)}
	add := func(ps ...unit.Pascal) {
		for _, p := range ps {
			out = append(out, float64(p))
		}
	}
	if f := w.Figures; f != nil {
		add(f.Practice, f.Want, f.Floor, f.Ceiling)
		if f.Optimum != nil {
			add(*f.Optimum)
		}
		for _, c := range f.Curve {
			out = append(out, float64(c.Pressure), float64(c.Casing), float64(c.Roughness))
		}
	}
	if a := w.Advice; a != nil {
		add(a.P0, a.Recommended, a.Set, a.Gauge, a.HereGauge, a.AtRide, a.Likely.Low, a.Likely.High)
		if a.Good != nil {
			add(a.Good.Low, a.Good.High)
		}
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
