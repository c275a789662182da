package pack

import (
	"math"
	"strconv"

	"rimside/calc/unit"
)

// Torque is the range of a joint in N m, for parts that carry no number of their own.
type Torque struct {
	Joint    string
	Low, Top float64
}

const (
	rotorBolts = iota
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
	rotorBolts:     {"six rotor bolts", 5, 6},
	rotorRing:      {"rotor lockring", 40, 40},
	derailleurBolt: {"rear derailleur to its hanger", 8, 9.6},
	axle:           {"through axle", 12, 15},
	topCap:         {"top cap, preload only", 1, 2},
	steerer:        {"stem on steerer", 5, 6},
	faceplate:      {"stem faceplate", 4, 6},
	postClamp:      {"seatpost clamp", 4, 5},
	pedalThread:    {"pedals", 35, 39},
}

// Torques lists the ranges.
func Torques() []Torque { return torques[:] }

func newtonMetres(joint int) string {
	t := torques[joint]
	if t.Low == t.Top {
		return short(t.Low) + " N m"
	}
	return short(t.Low) + " to " + short(t.Top) + " N m"
}

// tighten tells a torque with what stands above it, and what to do without a wrench.
func tighten(joint int) string {
	return newtonMetres(joint) + "; the number on the part wins. " + byHand(torques[joint].Low)
}

// byHand is a torque as a pull at a handle that the tool is likely to have: 10 N m are 10 kg at 10 cm, within 2 %.
func byHand(newtonMetres float64) string {
	handle := 10.0
	switch {
	case newtonMetres >= 20:
		handle = 25
	case newtonMetres >= 10:
		handle = 20
	}
	return "Without a wrench: " + Pull(newtonMetres, handle) + " kg at the end of " + short(handle) + " cm."
}

// Pull is the pull in whole kg that gives a torque at the end of a handle.
func Pull(newtonMetres, handleCM float64) string {
	return short(math.Round(newtonMetres / (unit.Gravity * handleCM / 100)))
}

func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
