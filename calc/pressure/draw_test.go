package pressure_test

import (
	"flag"
	"math/rand/v2"
	"testing"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// setups is how many random set-ups each rule is held to; the whole sweep is -setups 20000.
var setups = flag.Int("setups", 400, "random set-ups for each rule")

// dice draws set-ups, always the same ones.
type dice struct{ *rand.Rand }

func newDice() dice { return dice{rand.New(rand.NewPCG(1, 2))} }

func (d dice) between(lo, hi float64) float64 { return lo + (hi-lo)*d.Float64() }
func (d dice) oneIn(n int) bool               { return d.IntN(n) == 0 }

func pick[T any](d dice, list []T) T { return list[d.IntN(len(list))] }

// maybe is a pressure in kPa, or 0 for "not given".
func (d dice) maybe(lo, hi float64) unit.Pascal {
	if d.oneIn(4) {
		return 0
	}
	return unit.FromKPa(d.between(lo, hi))
}

var labels = []float64{23, 25, 28, 29, 30, 32, 35, 38, 40, 45, 50, 57, 63}

// wheel is a wheel as people have them: mostly pairs that may be used, some that may not.
func (d dice) wheel() pressure.WheelSetup {
	label := pick(d, labels)
	w := pressure.WheelSetup{
		Tyre: pressure.Tyre{
			Label: unit.FromMM(label), Sidewall: tyre.Sidewall(pick(d, tyre.Sidewalls())), Setup: pressure.Setup(pick(d, pressure.Setups())),
			Max: d.maybe(200, 1000), ForHookless: !d.oneIn(5),
		},
		Rim: pressure.Rim{
			BeadSeat: unit.FromMM(pick(d, []float64{622, 584, 406})), Inner: unit.FromMM(label / d.between(0.95, 2.6)),
			Profile: tyre.Profile(pick(d, []string{"hooked", "hooked", "hookless", "unknown"})), Max: d.maybe(200, 1000),
		},
	}
	if d.oneIn(2) {
		w.Tyre.Measured = unit.FromMM(label + d.between(-2, 3))
	}
	if d.oneIn(5) {
		w.Tyre.Min = unit.FromKPa(d.between(50, 500))
	}
	if d.oneIn(3) {
		w.Rim.Table = tyre.Table{MinLabel: unit.FromMM(25), MaxLabel: unit.FromMM(57), Max: d.maybe(150, 600)}
	}
	return w
}

func (d dice) stretch(key string) road.Stretch {
	s := stretchOf(key, d.between(8, 45), d.between(0.5, 40))
	if !s.Soft && d.oneIn(2) {
		s.Rough = road.Roughness(d.between(10, 3000) * 1e-6)
	}
	return s
}

func (d dice) ground(soft bool) []road.Stretch {
	keys := []string{"smooth", "patched", "chips", "rice", "pea", "walnut", "egg", "setts", "fist"}
	if soft {
		keys = append(keys, "soft", "soft")
	}
	out := make([]road.Stretch, 1+d.IntN(3))
	for i := range out {
		out[i] = d.stretch(pick(d, keys))
	}
	return out
}

func (d dice) state() air.State {
	return air.State{Temperature: unit.FromCelsius(d.between(-10, 40)), Altitude: unit.Metre(d.between(-50, 2800))}
}

// any is any valid question.
func (d dice) any() pressure.Input {
	in := pressure.Input{
		Rider: unit.Kilogram(d.between(35, 125)), Bike: unit.Kilogram(d.between(6, 30)), FrontShare: d.between(0.35, 0.5),
		Front: d.wheel(), Rear: d.wheel(), Ground: d.ground(true), Set: d.state(), Ride: d.state(), Here: pressure.Here(pick(d, pressure.Heres())),
		GaugeError: unit.FromKPa(d.between(-20, 20)), Wet: d.oneIn(2), Firmness: d.IntN(5) - pressure.MaxFirmness,
		Shift: pressure.PerWheel{Front: d.between(-0.3, 0.3), Rear: d.between(-0.3, 0.3)},
	}
	if d.oneIn(2) {
		in.Rear = in.Front
	}
	if d.oneIn(2) {
		warm := unit.FromCelsius(d.between(0, 60))
		in.Warmest = &warm
	}
	if d.oneIn(4) {
		in.FrontLoad, in.RearLoad = (in.Rider+in.Bike)*0.46, (in.Rider+in.Bike)*0.53
	}
	if d.oneIn(2) {
		front, rear := unit.FromKPa(d.between(0, 700)), unit.FromKPa(d.between(0, 700))
		in.Now = pressure.Readings{Front: &front, Rear: &rear, Stroke: unit.FromML(d.between(30, 400))}
	}
	return in
}

// free is a question on firm ground that no limit but the floor holds back.
func (d dice) free() pressure.Input {
	in := d.any()
	in.Ground, in.FrontLoad, in.RearLoad, in.Now = d.ground(false), 0, 0, pressure.Readings{}
	for _, w := range []*pressure.WheelSetup{&in.Front, &in.Rear} {
		w.Tyre.Max, w.Rim.Max, w.Tyre.Min = unit.FromKPa(1e4), unit.FromKPa(1e4), 0
		w.Rim.Profile, w.Rim.Table = tyre.Hooked, tyre.Table{}
		w.Rim.Inner = w.Tyre.Label / unit.Metre(d.between(1.3, 2.2))
	}
	return in
}

func sideOf(in pressure.Input, side pressure.Side) pressure.WheelSetup {
	if side == pressure.Front {
		return in.Front
	}
	return in.Rear
}

func TestTheDiceDrawWhatPeopleHave(t *testing.T) {
	d := newDice()
	wheels, advised := 0, 0
	for range 300 {
		a := mustDecide(t, d.any())
		for _, side := range pressure.Sides {
			wheels++
			if a.Wheel(side).Advice != nil {
				advised++
			}
		}
	}
	if advised*4 < wheels {
		t.Errorf("only %d of %d wheels have advice: the rules test little", advised, wheels)
	}
}
