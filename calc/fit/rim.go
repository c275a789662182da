package fit

import (
	"errors"
	"math"

	"rimside/calc/unit"
)

// What can be wrong with the measures.
var (
	ErrMeasure = errors.New("measure_not_above_zero")
	ErrTape    = errors.New("tape_fills_well")
	ErrInsert  = errors.New("insert")
	ErrValve   = errors.New("valve_above_flange")
)

// Rim is what the bead has to go round, with the bead that goes round it.
type Rim struct {
	BeadSeat  unit.Metre // D, the bead seat's diameter
	Well      unit.Metre // depth of the bare well below the bead seat
	Flange    unit.Metre // G, the edge's height above the bead seat
	Tape      unit.Metre // all layers together
	Undersize unit.Metre // how much smaller the bead's own diameter is than the bead seat
	Second    unit.Metre // how far the other bead, in a narrow well, holds this one up
	// The valve's foot as it stands in the well: how wide, and how high above the tape.
	ValveWidth, ValveHeight unit.Metre
}

// check tells what is wrong with the measures, or nil.
func (r Rim) check() error {
	for _, measure := range []unit.Metre{r.BeadSeat, r.Well, r.Flange} {
		if !(measure > 0) || math.IsInf(float64(measure), 0) {
			return ErrMeasure
		}
	}
	for _, measure := range []unit.Metre{r.Tape, r.Undersize, r.Second, r.ValveWidth, r.ValveHeight} {
		if !(measure >= 0) || math.IsInf(float64(measure), 0) {
			return ErrMeasure
		}
	}
	if r.depth() < 0 {
		return ErrTape
	}
	if r.top() > r.edge() {
		return ErrValve
	}
	return nil
}

// depth is h: how far the taped well, with whatever lies in it, is below the bead seat.
func (r Rim) depth() float64 { return float64(r.Well - r.Tape - r.Second) }

// floor, edge and top are radii, in metres: of the well's floor, of the flange, and of the valve's flat top.
func (r Rim) floor() float64 { return float64(r.BeadSeat)/2 - r.depth() }
func (r Rim) edge() float64  { return float64(r.BeadSeat)/2 + float64(r.Flange) }
func (r Rim) top() float64   { return r.floor() + float64(r.ValveHeight) }

// Stacked is how far a second bead of that thickness is held up by the first in a well of that width: two circles between two
// walls, sqrt(d2 - (W - d)2); 0 where both lie side by side.
func Stacked(bead, well unit.Metre) unit.Metre {
	d, w := float64(bead), float64(well)
	if w >= 2*d {
		return 0
	}
	aside := math.Max(0, w-d)
	return unit.Metre(math.Sqrt(d*d - aside*aside))
}
