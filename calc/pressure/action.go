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
	ideal, err := air.Strokes(volume, in.Now.Stroke, rise, in.standing().Altitude)
	if err != nil {
		return nil, err
	}
	least, most := air.LikelyStrokes(ideal)
	middle := (least + most) / 2
	return &middle, nil
}

// act compares the gauge's reading, if there is one, with what it should be where the rider stands. Error: those of air.Carry.
func (d *decision) act(r *reckoned) error {
	reading, out := d.in.Now.of(r.side), d.answer.Wheel(r.side)
	if reading == nil {
		return nil
	}
	limit, err := air.Carry(r.top.at, d.in.Ride, d.in.standing())
	if err != nil {
		return err
	}
	over := *reading-d.in.GaugeError > limit
	if over {
		d.answer.tell(OverLimitNow, Care, r.side, key("limit", string(r.top.limit)), pressure("mark", r.top.max))
	}
	did, err := action(d.in, r.mounted, *reading, out.Advice.HereGauge, over)
	out.Advice.Action = did
	return err
}
