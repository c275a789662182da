package spokes_test

import (
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"rimside/calc/spokes"
)

// plucks is how many a simulation makes; RIMSIDE_PLUCKS=1000 makes more.
func plucks(usual int) int {
	if n, err := strconv.Atoi(os.Getenv("RIMSIDE_PLUCKS")); err == nil {
		return n
	}
	return usual
}

// heard is what became of so many plucks: how many within 1 % of their pitch, in the right octave, and wrong though it was called sure.
type heard struct{ runs, near, octave, sure, wronglySure int }

const sure = spokes.Sure

func simulate(n int, seed uint64, draw func(*rand.Rand) plucked) (out heard) {
	d := rand.New(rand.NewPCG(seed, 20))
	for range n {
		p := draw(d)
		note, ok := spokes.Pitch(p.record(d), p.rate)
		out.runs++
		off := math.Abs(note.Hz/p.hz - 1)
		switch {
		case !ok:
		case off <= 0.01:
			out.near++
			out.octave++
		case off <= 0.1:
			out.octave++
		}
		if note.Confidence >= sure {
			out.sure++
			if off > 0.01 {
				out.wronglySure++
			}
		}
	}
	return out
}

// Plucks of every kind at 10 dB over the noise, and with what a yard and a small microphone add. 1,000 of each were simulated here: 999
// near, none wrong that was called sure; with a thin lowest partial 997 near, 2 wrong that were called sure.
func TestPitchOfManyPlucks(t *testing.T) {
	for _, c := range []struct {
		name string
		runs int
		draw func(*rand.Rand) plucked
	}{
		{"any", 100, anyPluck},
		{"a lowest partial that the microphone hardly hears", 50, func(d *rand.Rand) plucked { p := anyPluck(d); p.thin = between(d, 0.05, 0.5); return p }},
		{"mains hum", 25, func(d *rand.Rand) plucked { p := anyPluck(d); p.hum = 0.1; return p }},
		{"another spoke rings along", 25, func(d *rand.Rand) plucked { p := anyPluck(d); p.beside = 0.1; return p }},
		{"clean", 25, func(d *rand.Rand) plucked { p := anyPluck(d); p.noise = 60; return p }},
	} {
		got := simulate(plucks(c.runs), 1, c.draw)
		t.Logf("%s: %+v", c.name, got)
		if got.near*100 < got.runs*99 || got.octave*100 < got.runs*99 || got.wronglySure*200 > got.runs || got.sure*100 < got.runs*90 {
			t.Errorf("%s: of %d plucks %d within 1 %%, %d in their octave, %d called sure, %d of those wrong", c.name, got.runs, got.near, got.octave, got.sure, got.wronglySure)
		}
	}
}

// The simulation has the traps that it should: who takes the loudest tone for the pitch is an octave and more too high for a third of
// the plucks that a small microphone hears.
func TestLoudestToneIsOftenNotThePitch(t *testing.T) {
	d, wrong := rand.New(rand.NewPCG(1, 20)), 0
	const runs = 1000
	for range runs {
		p := anyPluck(d)
		p.thin = between(d, 0.05, 0.5)
		first := math.Sin(math.Pi*p.place) * p.thin
		if math.Abs(math.Sin(2*math.Pi*p.place))/2 > first || math.Abs(math.Sin(3*math.Pi*p.place))/3 > first {
			wrong++
		}
	}
	if wrong < runs/3 {
		t.Errorf("in %d of %d only", wrong, runs)
	}
}

// Real spokes are stiff strings: B = pi^3 E d^4/(64 T L^2), E 200 GPa (handbook value for steel), in Fletcher's formula.
func TestPitchOfSteelSpokes(t *testing.T) {
	d := rand.New(rand.NewPCG(3, 20))
	for _, c := range []struct{ free, diameter, tension float64 }{{0.28, 0.002, 980.7}, {0.28, 0.002, 500}, {0.2, 0.002, 980.7}, {0.29, 0.0018, 700}, {0.15, 0.0023, 900}} {
		spoke := spokes.Spoke{Free: unitMetre(c.free), Diameter: unitMetre(c.diameter), Density: spokes.SteelDensity}
		p := plucked{hz: spoke.Pitch(unitNewton(c.tension)), place: 0.3, decay: 0.25, rate: 48000, seconds: 1, start: 0.1, noise: 20, thin: 1}
		p.stiff = math.Pow(math.Pi, 3) * 200e9 * math.Pow(c.diameter, 4) / (64 * c.tension * c.free * c.free)
		note, ok := spokes.Pitch(p.record(d), p.rate)
		if !ok || math.Abs(note.Hz/p.hz-1) > 0.005 || note.Confidence < sure {
			t.Errorf("%+v: %+v, want %.1f Hz (B %.3f)", c, note, p.hz, p.stiff)
		}
	}
}

// What is no pluck is not called one: silence, a dead microphone, noise, a click, a short scrap.
func TestWhatIsNoPluck(t *testing.T) {
	d := rand.New(rand.NewPCG(4, 20))
	wave := func(n int, shape func(i int) float64) []float64 {
		out := blank(n)
		for i := range out {
			out[i] = shape(i)
		}
		return out
	}
	for name, record := range map[string][]float64{
		"nothing": nil, "one sample": {0.5}, "silence": blank(48000), "an offset": wave(48000, func(int) float64 { return 0.7 }),
		"noise": wave(48000, func(int) float64 { return 0.2 * d.NormFloat64() }),
		"click": wave(48000, func(i int) float64 { return map[bool]float64{true: 1}[i == 9000] }), "a scrap": wave(2000, func(i int) float64 { return math.Sin(float64(i) / 20) }),
	} {
		if note, ok := spokes.Pitch(record, 48000); ok && note.Confidence >= sure {
			t.Errorf("%s: %+v", name, note)
		}
	}
	for range 50 {
		record := wave(30000, func(int) float64 { return 0.2 * d.NormFloat64() })
		if note, ok := spokes.Pitch(record, 48000); ok && note.Confidence >= sure {
			t.Errorf("noise is called %+v", note)
		}
	}
}

func blank(n int) []float64 { return make([]float64, n) }

// A clipped pluck keeps its pitch; so does one that is turned round or played at another loudness.
func TestPitchIsNotLoudness(t *testing.T) {
	d := rand.New(rand.NewPCG(5, 20))
	p := plucked{hz: 352.7, stiff: 0.02, place: 0.3, decay: 0.3, rate: 48000, seconds: 0.8, start: 0.1, noise: 30, thin: 1}
	record := p.record(d)
	for name, change := range map[string]func(float64) float64{
		"clipped": func(x float64) float64 { return math.Max(-1, math.Min(1, 10*x)) }, "turned": func(x float64) float64 { return -x }, "soft": func(x float64) float64 { return x / 1000 },
	} {
		other := blank(len(record))
		for i, x := range record {
			other[i] = change(x)
		}
		if note, ok := spokes.Pitch(other, p.rate); !ok || math.Abs(note.Hz/p.hz-1) > 0.005 {
			t.Errorf("%s: %+v", name, note)
		}
	}
}

func BenchmarkPitch(b *testing.B) {
	d := rand.New(rand.NewPCG(6, 20))
	record := plucked{hz: 352.7, stiff: 0.02, place: 0.3, decay: 0.3, rate: 48000, seconds: 0.7, start: 0.1, noise: 10, thin: 1}.record(d)
	for b.Loop() {
		spokes.Pitch(record, 48000)
	}
}
