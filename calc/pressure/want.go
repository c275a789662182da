package pressure

import (
	"rimside/calc/ride"
	"rimside/calc/unit"
)

// asked is what one wheel asks for, before any limit.
type asked struct {
	custom unit.Pascal
	best   *best // nil on mostly soft ground
	want   unit.Pascal
}

// ask works out a wheel's custom, its computed best and what it wants from both.
func ask(m mounted, course ride.Course, in Input) asked {
	a := asked{custom: m.custom(in.Shift)}
	if mostlySoft(course) {
		a.want = m.floor(in.allMass()) * unit.Pascal(in.firmness())
		return a
	}
	b := curveOf{wheel: m.Wheel, course: course}.solve()
	a.best = &b
	a.want = pulled(a.custom, b.good) * unit.Pascal(in.firmness())
	return a
}

// pulled moves custom into the good range, but never by more than MaxPull.
func pulled(custom unit.Pascal, good Range) unit.Pascal {
	switch {
	case custom < good.Low:
		return min(good.Low, custom*(1+MaxPull))
	case custom > good.High:
		return max(good.High, custom*(1-MaxPull))
	}
	return custom
}

// firmness is the factor of the two buttons, with wet ground one step softer.
func (in Input) firmness() float64 {
	steps := in.Firmness
	if in.Wet {
		steps--
	}
	return 1 + FirmStep*float64(steps)
}

// mostlySoft says that no curve describes this day: over half the distance sinks. The slack keeps an exact half, whose shares
// rarely add up to the last bit, on one side of the line.
func mostlySoft(course ride.Course) bool { return course.Soft() > 0.5+1e-9 || !course.Firm() }

// balance keeps the front of a bike with the same tyre at both ends from going far softer than its rear; a scale at both
// wheels knows better.
func balance(in Input, front, rear *asked) bool {
	if in.Weighed() || !sameTyre(in.Front.Tyre, in.Rear.Tyre) {
		return false
	}
	least := rear.want * SameTyreFront
	if front.want >= least {
		return false
	}
	front.want = least
	return true
}
