package pressure

import (
	"math"

	"rimside/calc/air"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// reading is what the gauge says of one wheel, or nil.
func (n Readings) of(side Side) *unit.Pascal {
	if side == Front {
		return n.Front
	}
	return n.Rear
}

// action compares a reading with the aim. A reading within half a gauge step or 2 % is left alone, unless the tyre is over
// its ceiling: limits win. Errors: those of air.Strokes.
func action(in Input, m mounted, reading, aim unit.Pascal, overLimit bool) (*Action, error) {
	gap := aim - reading
	switch {
	case gap < 0 && (overLimit || -gap > near(aim)):
		return &Action{Do: LetOut, By: -gap}, nil
	case gap > near(aim):
		strokes, err := strokesFor(in, m, gap)
		return &Action{Do: Add, By: gap, Strokes: strokes}, err
	}
	return &Action{Do: Leave}, nil
}

func near(aim unit.Pascal) unit.Pascal {
	return max(LeaveWithin, unit.Pascal(math.Abs(float64(aim)))*LeaveShare)
}

// strokesFor is the middle of what real pumps need, nil without a pump.
func strokesFor(in Input, m mounted, rise unit.Pascal) (*float64, error) {
	if in.Now.Stroke <= 0 {
		return nil, nil
	}
	volume := tyre.Volume(m.setup.Rim.BeadSeat, m.Section.Width)
	ideal, err := air.Strokes(volume, in.Now.Stroke, rise, in.Set.Altitude)
	if err != nil {
		return nil, err
	}
	least, most := air.LikelyStrokes(ideal)
	middle := (least + most) / 2
	return &middle, nil
}
