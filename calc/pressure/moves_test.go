package pressure_test

import (
	"fmt"
	"math"
	"testing"

	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/unit"
)

// numbers is the way to both numbers, or a copy of it that is broken on purpose.
type numbers func(pressure.Input) ([2]pressure.Brief, bool)

// law is a property of the number, with a copy of the rules that must not pass it.
type law struct {
	name   string
	check  func(dice, numbers) error
	broken numbers
}

// fell fails when b is less than a, by more than the last bits.
func fell(what string, a, b unit.Pascal) error {
	if !(b >= a*(1-1e-9)) {
		return fmt.Errorf("%s fell from %.6f to %.6f kPa", what, a.KPa(), b.KPa())
	}
	return nil
}

// both compares the numbers of two questions, wheel by wheel.
func both(ask numbers, a, b pressure.Input, compare func(side int, a, b pressure.Brief) error) error {
	one, ok := ask(a)
	other, too := ask(b)
	for i := range one {
		if !ok || !too {
			return nil
		}
		if err := compare(i, one[i], other[i]); err != nil {
			return err
		}
	}
	return nil
}

func heavierWantsMore(d dice, ask numbers) error {
	in := d.free()
	heavy := in
	heavy.Rider *= unit.Kilogram(d.between(1.001, 1.4))
	return both(ask, in, heavy, func(_ int, a, b pressure.Brief) error { return fell("number of a heavier rider", a.Number, b.Number) })
}

func widerWantsLess(d dice, ask numbers) error {
	in := d.free()
	in.Front.Tyre.Measured, in.Rear.Tyre.Measured = in.Front.Tyre.Label, in.Rear.Tyre.Label
	wide := in
	by := unit.FromMM(d.between(0.1, 5))
	wide.Front.Tyre.Measured += by
	wide.Rear.Tyre.Measured += by
	return both(ask, wide, in, func(_ int, a, b pressure.Brief) error { return fell("number of a narrower tyre", a.Number, b.Number) })
}

func rougherIsNotHarder(d dice, ask numbers) error {
	in := d.free()
	rough := in
	rough.Ground = append([]road.Stretch(nil), in.Ground...)
	factor := road.Roughness(d.between(1.01, 4))
	for i := range rough.Ground {
		rough.Ground[i].Rough *= factor
	}
	return both(ask, rough, in, func(_ int, a, b pressure.Brief) error { return fell("number on smoother ground", a.Number, b.Number) })
}

// softer is the same question with a share q of soft ground.
func softer(in pressure.Input, q float64) pressure.Input {
	var all float64
	for _, s := range in.Ground {
		all += s.Share
	}
	soft := stretchOf("soft", 12, all*q)
	out := in
	out.Ground = []road.Stretch{soft}
	for _, s := range in.Ground {
		s.Share *= 1 - q
		out.Ground = append(out.Ground, s)
	}
	return out
}

func softerIsNearerTheFloor(d dice, ask numbers) error {
	in := d.free()
	in.Wet, in.Firmness, in.Shift = false, 0, pressure.PerWheel{}
	in.Rear.Tyre.Sidewall, in.Front.Tyre.Sidewall = "cloth", "glove" // two tyres: no ratio
	q := d.between(0, 0.98)
	away := func(b pressure.Brief) float64 { return math.Abs(math.Log(float64(b.Want / b.Floor))) }
	return both(ask, softer(in, q), softer(in, q+0.02), func(_ int, a, b pressure.Brief) error {
		if away(b) > away(a)*(1+1e-9) && away(a) > 1e-6 {
			return fmt.Errorf("at q %.3f the want is %.4f from the floor, a little softer %.4f", q, away(a), away(b))
		}
		return nil
	})
}

// noStep fails when a hair of change moves a number by more than a hair allows.
func noStep(what string, hair float64) func(int, pressure.Brief, pressure.Brief) error {
	return func(_ int, a, b pressure.Brief) error {
		if by := math.Abs(math.Log(float64(b.Number / a.Number))); !(by < 30*hair) {
			return fmt.Errorf("%s jumps from %.4f to %.4f kPa", what, a.Number.KPa(), b.Number.KPa())
		}
		return nil
	}
}

func softShareMakesNoStep(d dice, ask numbers) error {
	const hair = 1e-4
	in, q := d.free(), pick(d, []float64{d.Float64(), 0, 0.5, 1})
	return both(ask, softer(in, math.Max(0, q-hair)), softer(in, math.Min(1, q+hair)), noStep(fmt.Sprintf("at soft share %.3f the number", q), 2*hair))
}

func groundShareMakesNoStep(d dice, ask numbers) error {
	const hair = 1e-3
	in := d.free()
	share := d.Float64() * (1 - 2*hair)
	mixed := func(x float64) pressure.Input {
		out := in
		out.Ground = []road.Stretch{stretchOf("smooth", 33, 1-x), stretchOf("fist", 12, x)}
		return out
	}
	return both(ask, mixed(share), mixed(share+hair), noStep("with a little more rough ground the number", hair/2))
}

func weightMakesNoStep(d dice, ask numbers) error {
	in := d.any()
	hair := in
	hair.Rider *= 1 + 1e-6
	return both(ask, in, hair, noStep("with a gram more weight the number", 1e-6))
}

func moreInFrontWantsMoreInFront(d dice, ask numbers) error {
	in := d.free()
	in.Wet = false
	in.Rear.Tyre.Sidewall, in.Front.Tyre.Sidewall = "cloth", "glove" // two tyres: the want before the ratio
	more := in
	more.FrontShare += d.between(0.001, 0.2)
	return both(ask, in, more, func(i int, a, b pressure.Brief) error {
		if i == 1 {
			return nil
		}
		return fell("want of a front with more weight", a.Want, b.Want)
	})
}

// ratioHolds: the same tyre at both ends stays between 0.85 and the greater of 1 and the loads' ratio, unless the front's limits
// do not let it.
func ratioHolds(d dice, ask numbers) error {
	in := d.any()
	in.Rear.Tyre.Label, in.Rear.Tyre.Sidewall, in.Rear.Tyre.Setup = in.Front.Tyre.Label, in.Front.Tyre.Sidewall, in.Front.Tyre.Setup
	b, ok := ask(in)
	if !ok {
		return nil
	}
	most := math.Max(1, in.FrontShare/(1-in.FrontShare))
	if in.FrontLoad > 0 {
		most = math.Max(1, float64(in.FrontLoad/in.RearLoad))
	}
	front, ratio := b[0], float64(b[0].P0/b[1].P0)
	if wants := float64(b[0].Want / b[1].Want); wants < 0.85-1e-9 || wants > most+1e-9 {
		return fmt.Errorf("wants stand as %.4f, the most is %.4f", wants, most)
	}
	if ratio < 0.85-1e-9 && front.P0 < front.Top*(1-1e-12) || ratio > most+1e-9 && front.P0 > front.Floor*(1+1e-12) {
		return fmt.Errorf("numbers stand as %.4f, the most is %.4f; front %.1f in %.1f..%.1f kPa", ratio, most, front.P0.KPa(), front.Floor.KPa(), front.Top.KPa())
	}
	return nil
}

// changed is the rules asked another question than was meant.
func changed(change func(*pressure.Input)) numbers {
	return func(in pressure.Input) ([2]pressure.Brief, bool) {
		change(&in)
		return pressure.InBrief(in)
	}
}

// halfSoft are the rules of the first version: from half soft on, the floor.
func halfSoft(in pressure.Input) ([2]pressure.Brief, bool) {
	b, ok := pressure.InBrief(in)
	var soft, all float64
	for _, s := range in.Ground {
		all += s.Share
		if s.Soft {
			soft += s.Share
		}
	}
	for i := range b {
		if soft > all/2 {
			b[i].Number, b[i].Want = b[i].Floor, b[i].Floor
		}
	}
	return b, ok
}

var laws = []law{
	{"a heavier rider wants more", heavierWantsMore, changed(func(in *pressure.Input) { in.Rider = 200 - in.Rider })},
	{"a wider tyre wants less", widerWantsLess, changed(func(in *pressure.Input) {
		in.Front.Tyre.Measured = unit.FromMM(100) - in.Front.Tyre.Measured
		in.Rear.Tyre.Measured = unit.FromMM(100) - in.Rear.Tyre.Measured
	})},
	{"rougher ground wants no more", rougherIsNotHarder, changed(func(in *pressure.Input) {
		in.Ground = append([]road.Stretch(nil), in.Ground...)
		for i := range in.Ground {
			in.Ground[i].Rough = 1e-7 / in.Ground[i].Rough
		}
	})},
	{"softer ground is nearer the floor", softerIsNearerTheFloor, func(in pressure.Input) ([2]pressure.Brief, bool) {
		b, ok := pressure.InBrief(in)
		for i := range b { // drawn to usual practice instead
			b[i].Want = b[i].Practice * b[i].Practice / b[i].Want
		}
		return b, ok
	}},
	{"the soft share makes no step", softShareMakesNoStep, halfSoft},
	{"the share of a ground makes no step", groundShareMakesNoStep, func(in pressure.Input) ([2]pressure.Brief, bool) {
		b, ok := pressure.InBrief(in)
		for i := range b { // in steps of 5 kPa
			b[i].Number = unit.Pascal(math.Round(float64(b[i].Number)/5e3) * 5e3)
		}
		return b, ok
	}},
	{"a gram makes no step", weightMakesNoStep, func(in pressure.Input) ([2]pressure.Brief, bool) {
		b, ok := pressure.InBrief(in)
		b[0].Number += unit.Pascal(1e9 * math.Mod(float64(in.Rider)*1e6, 1))
		return b, ok
	}},
	{"more weight in front wants more there", moreInFrontWantsMoreInFront, changed(func(in *pressure.Input) { in.FrontShare = 0.9 - in.FrontShare })},
	{"the same tyre keeps its ratio", ratioHolds, func(in pressure.Input) ([2]pressure.Brief, bool) {
		one := in
		one.Rear.Tyre.Sidewall = "cloth" // as if the rear were another tyre
		if in.Front.Tyre.Sidewall == "cloth" {
			one.Rear.Tyre.Sidewall = "hose"
		}
		return pressure.InBrief(one)
	}},
}

func TestLawsOfTheNumber(t *testing.T) {
	for _, l := range laws {
		t.Run(l.name, func(t *testing.T) {
			d := newDice()
			for n := range *setups {
				if err := l.check(d, pressure.InBrief); err != nil {
					t.Fatalf("set-up %d: %v", n, err)
				}
			}
			d = newDice()
			for range 2000 {
				if l.check(d, l.broken) != nil {
					return
				}
			}
			t.Error("a copy of the rules that is broken passes: the law cannot fail")
		})
	}
}

// The solver's want is the least of the formula as it is written, looked for on a fine grid, and the only dip in it.
func TestTheWantIsTheOnlyMinimum(t *testing.T) {
	d := newDice()
	for range *setups / 10 {
		in := d.free()
		in = softer(in, pick(d, []float64{0, 0, d.Float64()}))
		at := math.Log(float64(pressure.Bare(in, pressure.Front)))
		const step = 0.02
		dips := 0
		for i := -100; i <= 100; i++ {
			x := at + float64(i)*step
			here := pressure.Weighed(in, x)
			if here < pressure.Weighed(in, at)-1e-9 {
				t.Fatalf("less at %.1f kPa than at the want of %.1f", math.Exp(x)/1e3, math.Exp(at)/1e3)
			}
			if here < pressure.Weighed(in, x-step) && here <= pressure.Weighed(in, x+step) {
				dips++
			}
		}
		if dips != 1 {
			t.Fatalf("%d dips round a want of %.1f kPa", dips, math.Exp(at)/1e3)
		}
	}
}
