package pressure_test

import (
	"flag"
	"os"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// TestMain keeps the property tests short unless a number of checks is asked for.
func TestMain(m *testing.M) {
	flag.Parse()
	asked := false
	flag.Visit(func(f *flag.Flag) { asked = asked || f.Name == "rapid.checks" })
	if !asked {
		if err := flag.Set("rapid.checks", "60"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}

var labels = []float64{23, 25, 28, 29, 30, 32, 35, 38, 40, 45, 50, 57, 63}

func between(t *rapid.T, lo, hi float64, what string) float64 {
	return rapid.Float64Range(lo, hi).Draw(t, what)
}

// maybe is a drawn pressure in kPa, or 0 for "not given".
func maybe(t *rapid.T, lo, hi float64, what string) unit.Pascal {
	if rapid.IntRange(0, 3).Draw(t, what+" not given") == 0 {
		return 0
	}
	return unit.FromKPa(between(t, lo, hi, what))
}

func yes(t *rapid.T, what string) bool { return rapid.Bool().Draw(t, what) }

// drawWheel is a wheel as people have them: mostly pairs that may be used, some that may not.
func drawWheel(t *rapid.T, side string) pressure.WheelSetup {
	label := rapid.SampledFrom(labels).Draw(t, side+" label")
	w := pressure.WheelSetup{
		Tyre: pressure.Tyre{
			Label: unit.FromMM(label), Sidewall: tyre.Sidewall(rapid.SampledFrom(tyre.Sidewalls()).Draw(t, side+" sidewall")),
			Setup: pressure.Setup(rapid.SampledFrom(pressure.Setups()).Draw(t, side+" setup")),
			Max:   maybe(t, 200, 1000, side+" tyre max"), ForHookless: rapid.IntRange(0, 4).Draw(t, side+" named") > 0,
		},
		Rim: pressure.Rim{
			BeadSeat: unit.FromMM(rapid.SampledFrom([]float64{622, 584, 406}).Draw(t, side+" bead seat")),
			Inner:    unit.FromMM(label / between(t, 1.1, 2.6, side+" ratio")),
			Profile:  tyre.Profile(rapid.SampledFrom([]string{"hooked", "hooked", "hookless", "unknown"}).Draw(t, side+" edge")),
			Max:      maybe(t, 200, 1000, side+" rim max"),
		},
	}
	if yes(t, side+" calliper") {
		w.Tyre.Measured = unit.FromMM(label + between(t, -2, 3, side+" measured"))
	}
	if rapid.IntRange(0, 4).Draw(t, side+" minimum") == 0 {
		w.Tyre.Min = unit.FromKPa(between(t, 50, 500, side+" tyre min"))
	}
	if rapid.IntRange(0, 3).Draw(t, side+" table") == 0 {
		w.Rim.Table = tyre.Table{MinLabel: unit.FromMM(25), MaxLabel: unit.FromMM(57), Max: maybe(t, 150, 600, side+" table max")}
	}
	return w
}

func drawGround(t *rapid.T, soft bool) []road.Stretch {
	keys := []string{"smooth", "patched", "chips", "rice", "pea", "walnut", "egg", "setts"}
	if soft {
		keys = append(keys, "soft")
	}
	out := make([]road.Stretch, rapid.IntRange(1, 3).Draw(t, "stretches"))
	for i := range out {
		out[i] = stretchOf(rapid.SampledFrom(keys).Draw(t, "kind"), between(t, 8, 45, "km/h"), between(t, 0.5, 40, "share"))
		if !out[i].Soft && yes(t, "typed roughness") {
			out[i].Rough = road.Roughness(between(t, 10, 3000, "Gd0") * 1e-6)
		}
	}
	return out
}

func drawState(t *rapid.T, what string) air.State {
	return air.State{Temperature: unit.FromCelsius(between(t, -10, 40, what+" C")), Altitude: unit.Metre(between(t, -50, 2800, what+" m"))}
}

// drawAny is any valid question.
func drawAny(t *rapid.T) pressure.Input {
	in := pressure.Input{
		Rider: unit.Kilogram(between(t, 35, 125, "rider")), Bike: unit.Kilogram(between(t, 6, 30, "bike")),
		FrontShare: between(t, 0.35, 0.5, "front share"), Front: drawWheel(t, "front"), Rear: drawWheel(t, "rear"),
		Ground: drawGround(t, true), Set: drawState(t, "set"), Ride: drawState(t, "ride"),
		GaugeError: unit.FromKPa(between(t, -20, 20, "gauge error")), Wet: yes(t, "wet"),
		Firmness: rapid.IntRange(-pressure.MaxFirmness, pressure.MaxFirmness).Draw(t, "firmness"), Shift: between(t, -0.3, 0.3, "shift"),
	}
	if yes(t, "same tyre") {
		in.Rear = in.Front
	}
	if yes(t, "warm hour") {
		warm := unit.FromCelsius(between(t, 0, 60, "warmest C"))
		in.Warmest = &warm
	}
	if yes(t, "scales") {
		in.FrontLoad, in.RearLoad = (in.Rider+in.Bike)*0.44, (in.Rider+in.Bike)*0.55
	}
	if yes(t, "gauge read") {
		front, rear := unit.FromKPa(between(t, 0, 700, "front reading")), unit.FromKPa(between(t, 0, 700, "rear reading"))
		in.Now = pressure.Readings{Front: &front, Rear: &rear, Stroke: unit.FromML(between(t, 30, 400, "stroke"))}
	}
	return in
}

// drawFree is a question on firm ground that no limit holds back.
func drawFree(t *rapid.T) pressure.Input {
	in := drawAny(t)
	in.Ground = drawGround(t, false)
	for _, w := range []*pressure.WheelSetup{&in.Front, &in.Rear} {
		w.Tyre.Max, w.Rim.Max, w.Tyre.Min = unit.FromKPa(1e4), unit.FromKPa(1e4), 0
		w.Rim.Profile, w.Rim.Table = tyre.Hooked, tyre.Table{}
		w.Rim.Inner = w.Tyre.Label / unit.Metre(between(t, 1.3, 2.2, "free ratio"))
	}
	return in
}

func decide(t *rapid.T, in pressure.Input) pressure.Answer {
	a, err := pressure.Decide(in)
	if err != nil {
		t.Fatalf("a valid question is refused: %v", err)
	}
	return a
}
