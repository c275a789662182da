package pressure_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// moved is the gas law at constant volume in the ISO 2533 air, written out again as the judge; gauge kPa.
func moved(kPa float64, from, to air.State) float64 {
	ambient := func(s air.State) float64 { return 101.325 * math.Pow(1-0.0065*float64(s.Altitude)/288.15, 5.25588) }
	return (kPa+ambient(from))*float64(to.Temperature)/float64(from.Temperature) - ambient(to)
}

// lowestMax is the lowest true maximum of a wheel in kPa: what is printed, what the rim's table says, 500 on any edge that is not
// known to be hooked (a tyre maker's page quoting ETRTO), and 250 where a hooked rim's limits are not wholly known.
func lowestMax(w pressure.WheelSetup) float64 {
	low := math.Inf(1)
	for _, p := range []float64{w.Tyre.Max.KPa(), w.Rim.Max.KPa(), w.Rim.Table.Max.KPa()} {
		if p > 0 {
			low = math.Min(low, p)
		}
	}
	if w.Rim.Profile != tyre.Hooked {
		low = math.Min(low, 500)
	}
	if w.Tyre.Max == 0 || (w.Rim.Max == 0 && w.Rim.Table.Max == 0) {
		low = math.Min(low, 250)
	}
	return low
}

func sideOf(in pressure.Input, side pressure.Side) pressure.WheelSetup {
	if side == pressure.Front {
		return in.Front
	}
	return in.Rear
}

const hair = 1e-6 // kPa, for the last bits of the gas law

// underLimits fails when any number that a wheel is told to hold passes its lowest maximum at the ride, where it is set, or at the
// warmest hour.
func underLimits(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		advice := a.Wheel(side).Advice
		if advice == nil {
			continue
		}
		most := lowestMax(sideOf(in, side)) + hair
		states := map[string]air.State{"ride": in.Ride, "set": in.Set}
		if in.Warmest != nil {
			states["warmest"] = air.State{Temperature: *in.Warmest, Altitude: in.Ride.Altitude}
		}
		for name, p := range map[string]float64{
			"recommended": advice.Recommended.KPa(), "at ride": advice.AtRide.KPa(), "likely": advice.Likely.High.KPa(),
			"set": moved(advice.Set.KPa(), in.Set, in.Ride),
		} {
			for when, state := range states {
				if got := moved(p, in.Ride, state); !(got <= most) {
					return fmt.Errorf("%s %s is %.6f kPa at %s, over %.6f", side, name, got, when, most)
				}
			}
		}
	}
	return nil
}

// floorKPa is the least that braking (0.60 of all weight in front) or seated climbing (0.65 behind) allows: squash of 18 % with a
// tube, 20 % tubeless, 24 % with an insert, by F = p beta 4/3 sqrt(2R) d^1.5; never under the printed minimum.
func floorKPa(in pressure.Input, side pressure.Side, width unit.Metre) float64 {
	w := sideOf(in, side)
	all, share := float64(in.Rider+in.Bike), 0.65
	if in.FrontLoad > 0 && in.RearLoad > 0 {
		all = float64(in.FrontLoad + in.RearLoad)
	}
	if side == pressure.Front {
		share = 0.60
	}
	squash := map[pressure.Setup]float64{"tube": 0.18, "tubeless": 0.20, "insert": 0.24}[w.Tyre.Setup]
	beta := math.Min(math.Pi, 2.8*math.Sqrt(width.MM()/28))
	radius := float64(w.Rim.BeadSeat)/2 + float64(width)
	p := share * all * 9.80665 / (beta * 4 / 3 * math.Sqrt(2*radius) * math.Pow(squash*float64(width), 1.5)) / 1e3
	return math.Max(p, w.Tyre.Min.KPa())
}

// aboveFloor fails when a number lies below what keeps the tyre off the rim, or when a floor above the ceiling still gives advice.
func aboveFloor(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w := a.Wheel(side)
		if w.Figures == nil {
			continue
		}
		floor := floorKPa(in, side, w.Width)
		if math.Abs(w.Figures.Floor.KPa()-floor) > 1e-6*floor {
			return fmt.Errorf("%s floor is %v kPa, want %v", side, w.Figures.Floor.KPa(), floor)
		}
		if w.Advice != nil && !(w.Advice.Recommended.KPa() >= floor-hair) {
			return fmt.Errorf("%s %v kPa is below the floor of %v", side, w.Advice.Recommended.KPa(), floor)
		}
		if c := w.Figures.Ceiling; c != nil && *c < w.Figures.Floor {
			if w.Advice != nil || !told(a, side, pressure.FloorOverLimit, pressure.Stop) {
				return fmt.Errorf("%s floor above ceiling, but no stop", side)
			}
		}
	}
	return nil
}

func told(a pressure.Answer, side pressure.Side, code pressure.Code, severity pressure.Severity) bool {
	for _, n := range a.Notices {
		if n.Side == side && n.Code == code && n.Severity == severity {
			return true
		}
	}
	return false
}

// unusable says, by the rules as published, that no number may be shown for a wheel: refused or not known well enough.
func unusable(w pressure.WheelSetup) bool {
	label, inner := w.Tyre.Label.MM(), w.Rim.Inner.MM()
	table := w.Rim.Table
	listed := table.MinLabel > 0 && w.Tyre.Label >= table.MinLabel && w.Tyre.Label <= table.MaxLabel
	unread := w.Tyre.Max == 0 || (w.Rim.Max == 0 && table.Max == 0)
	hookless := w.Rim.Profile != tyre.Hooked
	narrow := label < math.Max(28, inner+5)-1e-6 && !(listed && label >= 29 && inner <= 25)
	return hookless && (!w.Tyre.ForHookless || narrow || unread) ||
		!hookless && label/inner < 1.15 || label/inner > 2.5 && !listed || table.MinLabel > 0 && !listed
}

// silentWhenUnusable fails when a refused or unknown pair shows a number anywhere, or when silence is not explained by a stop.
func silentWhenUnusable(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w := a.Wheel(side)
		stopped := false
		for _, n := range a.Notices {
			stopped = stopped || n.Side == side && n.Severity == pressure.Stop
			if w.Figures == nil && n.Side == side && (strings.Contains(n.Text, " bar") || n.Code == pressure.AtFloor) {
				return fmt.Errorf("%s has no figures, but is told %q", side, n.Text)
			}
		}
		if unusable(sideOf(in, side)) && (w.Figures != nil || w.Advice != nil) {
			return fmt.Errorf("%s pair must not be used, but has figures", side)
		}
		if stopped != (w.Advice == nil) {
			return fmt.Errorf("%s stopped %v, advice %v", side, stopped, w.Advice)
		}
		for _, b := range a.Bigger {
			if b.Side == side && w.Figures == nil {
				return fmt.Errorf("%s has no figures, but a bigger tyre at %v", side, b.Recommended)
			}
		}
	}
	return nil
}

type rule struct {
	name  string
	check func(pressure.Input, pressure.Answer) error
}

var rules = []rule{{"under limits", underLimits}, {"above floor", aboveFloor}, {"silent when unusable", silentWhenUnusable}}

func TestLimitsHoldForAnyQuestion(t *testing.T) {
	wheels, advised := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		in := drawAny(t)
		a := decide(t, in)
		for _, r := range rules {
			if err := r.check(in, a); err != nil {
				t.Errorf("%s: %v", r.name, err)
			}
		}
		for _, side := range pressure.Sides {
			wheels++
			if a.Wheel(side).Advice != nil {
				advised++
			}
		}
	})
	if advised*10 < wheels {
		t.Errorf("only %d of %d wheels had advice: the properties test little", advised, wheels)
	}
}

// The rules can fail: each is broken in one way, and must say so.
func TestTheRulesHaveTeeth(t *testing.T) {
	wheel := setupOf(40, "glove", "tubeless")
	in := inputOf(wheel, stretchOf("pea", 25, 1))
	for name, breakIt := range map[string]func(*pressure.Input, *pressure.Answer) rule{
		"over the tyre's maximum": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Tyre.Max = a.Front.Advice.Recommended - 1
			return rules[0]
		},
		"over it at the warmest hour": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Tyre.Max = a.Front.Advice.Likely.High + 1
			warm := unit.FromCelsius(21)
			in.Warmest = &warm
			return rules[0]
		},
		"over 250 kPa with a maximum not read": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Rear.Rim.Max = 0
			return rules[0]
		},
		"under the floor": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Rear.Advice.Recommended = a.Rear.Figures.Floor - 1
			return rules[1]
		},
		"a floor of nothing": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Rear.Figures.Floor *= 0.99
			return rules[1]
		},
		"a floor above the ceiling": func(_ *pressure.Input, a *pressure.Answer) rule {
			*a.Rear.Figures.Ceiling = a.Rear.Figures.Floor - 1
			return rules[1]
		},
		"a refused pair with figures": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Rim.Profile, in.Front.Tyre.ForHookless = tyre.Unknown, false
			return rules[2]
		},
		"silence without a stop": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Front.Advice = nil
			return rules[2]
		},
	} {
		in := in
		a, err := pressure.Decide(in)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rules {
			if err := r.check(in, a); err != nil {
				t.Fatalf("before breaking: %v", err)
			}
		}
		if r := breakIt(&in, &a); r.check(in, a) == nil {
			t.Errorf("%q passes for %s", r.name, name)
		}
	}
}
