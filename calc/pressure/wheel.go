package pressure

import (
	"math"
	"strings"

	"rimside/calc/ride"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// mounted is one wheel ready to be computed: its section, its casing and its load.
type mounted struct {
	side  Side
	setup WheelSetup
	ride.Wheel
	hardest unit.Newton // what it carries in braking (front) or seated climbing (rear)
}

// mount puts a tyre of this width on the rim under its load. Error: a sidewall or set-up that is not one of the keys.
func mount(in Input, side Side, width unit.Metre) (mounted, error) {
	setup := in.wheel(side)
	if _, known := tyre.CasingOf(setup.Tyre.Sidewall); !known {
		return mounted{}, inputError(string(side), " sidewall must be one of ", strings.Join(tyre.Sidewalls(), ", "))
	}
	if HardSquash(setup.Tyre.Setup) == 0 {
		return mounted{}, inputError(string(side), " set-up must be one of ", strings.Join(Setups(), ", "))
	}
	share := ride.ClimbingRear
	if side == Front {
		share = ride.BrakingFront
	}
	m := mounted{side: side, setup: setup, hardest: in.allMass().Weight() * unit.Newton(share)}
	m.Load = ride.LoadOf(in.carried(side), in.Rider, in.Bike)
	return m.ofWidth(width), nil
}

// ofWidth is the same wheel with a tyre of another width.
func (m mounted) ofWidth(width unit.Metre) mounted {
	m.Section = tyre.Mounted(m.setup.Rim.BeadSeat, width)
	m.Casing, _ = tyre.CasingOf(m.setup.Tyre.Sidewall)
	if test := m.setup.Tyre.Test; test != nil {
		m.Casing = m.Casing.Measured(m.Section, *test)
	}
	return m
}

// loaded is the same wheel under a heavier or lighter load than believed.
func (m mounted) loaded(factor float64) mounted {
	m.Load = m.Load.Scaled(factor)
	m.hardest *= unit.Newton(factor)
	return m
}

// practice is the trade's usual practice: the load squashes the tyre, on air alone, to 14 % in front and 16.5 % behind times
// (width/40 mm)^0.15; a little more pressure with a tube, a little less with an insert (common practice, fitted to remembered
// set-ups).
func (m mounted) practice() unit.Pascal {
	squash := PracticeRear
	if m.side == Front {
		squash = PracticeFront
	}
	squash *= math.Pow(float64(m.Section.Width/PracticeWidth), PracticeGrowth)
	return m.Section.PressureFor(m.Load.Weight, squash) * unit.Pascal(PracticeFactor(m.setup.Tyre.Setup))
}

// squashFloor is the pressure that keeps the rim off the ground in braking (front) and seated climbing (rear), on air alone.
func (m mounted) squashFloor() unit.Pascal {
	return m.Section.PressureFor(m.hardest, HardSquash(m.setup.Tyre.Setup))
}

// floor is the least a wheel may hold, and which of its two reasons binds: the squash floor or the tyre's printed minimum.
func (m mounted) floor() (unit.Pascal, Limit) {
	if squash := m.squashFloor(); squash >= m.setup.Tyre.Min {
		return squash, LimitFloor
	}
	return m.setup.Tyre.Min, LimitPrintedMinimum
}
