package pressure_test

import (
	"testing"

	"rimside/calc/pressure"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// The rules can fail: each is broken in one way, and must say so.
func TestTheRulesHaveTeeth(t *testing.T) {
	for name, breakIt := range map[string]func(*pressure.Input, *pressure.Answer) rule{
		"over the tyre's maximum": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Tyre.Max = a.Front.Advice.Recommended - 1
			return limitsRule
		},
		"over it at the warmest hour": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Tyre.Max = max(a.Front.Advice.Good.High, a.Front.Advice.Likely.High) + 1
			warm := unit.FromCelsius(21)
			in.Warmest = &warm
			return limitsRule
		},
		"over it where it is set": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Tyre.Max = max(a.Front.Advice.Good.High, a.Front.Advice.Likely.High) + 1
			in.Set.Temperature += 2
			return limitsRule
		},
		"over 250 kPa with a maximum not read": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Rear.Rim.Max = 0
			return limitsRule
		},
		"under the floor": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Rear.Advice.Recommended = a.Rear.Figures.Floor - 1
			return floorRule
		},
		"a floor of nothing": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Rear.Figures.Floor *= 0.99
			return floorRule
		},
		"a floor above the ceiling": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Rear.Figures.Ceiling = a.Rear.Figures.Floor - 1
			return floorRule
		},
		"held by a floor that it does not touch": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Rear.Figures.Limited = pressure.LimitFloor
			return floorRule
		},
		"a refused pair with figures": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Front.Rim.Profile, in.Front.Tyre.ForHookless = tyre.Unknown, false
			return silentRule
		},
		"silence without a stop": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Front.Advice = nil
			return silentRule
		},
		"a hooked rim without a number": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Front.Advice = nil
			return numberRule
		},
		"a range that misses its number": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Front.Advice.Good.Low = a.Front.Advice.Recommended + 1
			return fineRule
		},
		"a range of the first version, round the computed best": func(_ *pressure.Input, a *pressure.Answer) rule {
			*a.Front.Advice.Good = pressure.Range{Low: 89e3, High: 236e3}
			return fineRule
		},
		"a range cut short": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Front.Advice.Good.High = a.Front.Advice.Recommended
			return fineRule
		},
		"a band that misses its number": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Front.Advice.Likely.High = a.Front.Advice.Recommended - 1
			return fineRule
		},
		"the reading of another place": func(in *pressure.Input, a *pressure.Answer) rule {
			in.Here, in.Ride.Temperature = pressure.HereRide, in.Ride.Temperature-10
			a.Front.Advice.Set = unit.FromKPa(moved(a.Front.Advice.AtRide.KPa(), in.Ride, in.Set))
			return hereRule
		},
		"left over a gap": func(in *pressure.Input, a *pressure.Answer) rule {
			reading := unit.FromKPa(100)
			in.Now.Front, a.Front.Advice.Action = &reading, &pressure.Action{Do: pressure.Leave}
			return hereRule
		},
		"a mark that is too low": func(_ *pressure.Input, a *pressure.Answer) rule {
			a.Bigger = []pressure.Bigger{{Side: pressure.Front, Label: unit.FromMM(45), Recommended: 185e3, NeedsMark: 100e3}}
			return biggerRule
		},
	} {
		in := inputOf(setupOf(40, "glove", "tubeless"), stretchOf("pea", 25, 1))
		in.Front.Tyre.Sidewall = "cloth" // no ratio between the ends
		a := mustDecide(t, in)
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
