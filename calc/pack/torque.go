package pack

import (
	"math"

	"rimside/calc/unit"
)

// Torque is the range of a joint in N m, for parts that carry no number of their own.
type Torque struct {
	Joint    string
	Low, Top float64
}

type joint int

const (
	rotorBolts joint = iota
	rotorRing
	derailleurBolt
	axle
	topCap
	steerer
	faceplate
	postClamp
	pedalThread
)

// torques are published, trade tables, makers' tables and owner's manuals; of two ranges the one that the others agree with or the lower.
var torques = [...]Torque{
	rotorBolts:     {"rotor_bolts", 5, 6},
	rotorRing:      {"rotor_lockring", 40, 40},
	derailleurBolt: {"derailleur", 8, 9.6},
	axle:           {"through_axle", 12, 15},
	topCap:         {"top_cap", 1, 2},
	steerer:        {"steerer", 5, 6},
	faceplate:      {"faceplate", 4, 6},
	postClamp:      {"post_clamp", 4, 5},
	pedalThread:    {"pedals", 35, 39},
}

// Torques lists the ranges.
func Torques() []Torque { return torques[:] }

// values are the range, and what to do without a wrench: a pull at a handle that the tool is likely to have.
func (j joint) values(prefix string) []Value {
	t := torques[j]
	handle := t.handle()
	return []Value{
		{prefix + "low_nm", t.Low}, {prefix + "high_nm", t.Top}, {prefix + "pull_kg", Pull(t.Low, handle)}, {prefix + "handle_cm", handle},
	}
}

// handle is in cm: 10 N m are 10 kg at 10 cm, within 2 %.
func (t Torque) handle() float64 {
	switch {
	case t.Low >= 20:
		return 25
	case t.Low >= 10:
		return 20
	}
	return 10
}

// Pull is the pull in whole kg that gives a torque in N m at the end of a handle in cm.
func Pull(newtonMetres, handleCM float64) float64 {
	return math.Round(newtonMetres / (unit.Gravity * handleCM / 100))
}
