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
}

// mount puts a tyre of this width on the rim under its load. Error: a sidewall or set-up that is not one of the keys.
func mount(in Input, side Side, width unit.Metre) (mounted, error) {
	setup := in.wheel(side)
	section := tyre.Mounted(setup.Rim.BeadSeat, width)
	casing, known := tyre.CasingOf(setup.Tyre.Sidewall)
	if !known {
		return mounted{}, inputError(string(side), " sidewall must be one of ", strings.Join(tyre.Sidewalls(), ", "))
	}
	if HardSquash(setup.Tyre.Setup) == 0 {
		return mounted{}, inputError(string(side), " set-up must be one of ", strings.Join(Setups(), ", "))
	}
	if test := setup.Tyre.Test; test != nil {
		casing = casing.Measured(section, *test)
	}
	load := ride.LoadOf(in.carried(side), in.Rider, in.Bike)
	return mounted{side: side, setup: setup, Wheel: ride.Wheel{Section: section, Casing: casing, Load: load}}, nil
}

// widened is the same wheel with a wider or narrower tyre than believed.
func (m mounted) widened(by unit.Metre) mounted {
	m.Section = tyre.Mounted(m.setup.Rim.BeadSeat, m.Section.Width+by)
	return m
}

// loaded is the same wheel under a heavier or lighter load than believed.
func (m mounted) loaded(factor float64) mounted {
	m.Load = m.Load.Scaled(factor)
	return m
}

// custom is the trade's pressure: the load squashes the tyre to 14 % in front, 16.5 % behind, on air alone; times e^shift.
func (m mounted) custom(shift float64) unit.Pascal {
	squash := CustomRear
	if m.side == Front {
		squash = CustomFront
	}
	return m.Section.PressureFor(m.Load.Weight, squash) * unit.Pascal(math.Exp(shift))
}

// floor is the pressure that keeps the tyre off the rim in braking (front) and seated climbing (rear), on air alone, and
// never under the tyre's printed minimum.
func (m mounted) floor(all unit.Kilogram) unit.Pascal {
	share := ride.ClimbingRear
	if m.side == Front {
		share = ride.BrakingFront
	}
	hard := all.Weight() * unit.Newton(share)
	return max(m.Section.PressureFor(hard, HardSquash(m.setup.Tyre.Setup)), m.setup.Tyre.Min)
}
