package ground_test

import (
	"math"
	"testing"

	"rimside/calc/ground"
	"rimside/calc/road"
	"rimside/calc/unit"
)

// usual is a ride that is taken, for changing one thing.
func usual(seed uint64) simulated {
	s := draw(seed, false)
	s.gd0, s.rate, s.seconds, s.v = 256e-6, 60, 40, 7
	return s
}

func TestRefused(t *testing.T) {
	stopAndGo := func(t float64) float64 {
		if math.Mod(t, 12) < 5 {
			return 0.02
		}
		return 1
	}
	for _, c := range []struct {
		want   ground.Refusal
		change func(*simulated)
		after  func(*ground.Record)
	}{
		{"", func(*simulated) {}, nil},
		{ground.TooShort, func(s *simulated) { s.seconds = 12 }, nil},
		{ground.TooSlowRate, func(s *simulated) { s.rate = 30 }, nil},
		{ground.Clipped, func(s *simulated) { s.clipAt = 2 * 9.81; s.gd0 = 1024e-6 }, nil},
		{ground.SpeedMissing, func(*simulated) {}, func(r *ground.Record) { r.Speeds = nil }},
		{ground.SpeedVaries, func(s *simulated) { s.pace = stopAndGo }, nil},
		{ground.SpeedVaries, func(s *simulated) { s.pace = stopAndGo }, func(r *ground.Record) { r.Speeds = []ground.Speed{{V: 7}} }}, // typed, but the shaking tells
		{ground.SpeedVaries, func(s *simulated) { s.pace = func(t float64) float64 { return 0.5 + t/40 } }, nil},
		{ground.Loose, func(s *simulated) { s.pocket = true }, nil},
		{ground.Loose, func(*simulated) {}, turning},
		{ground.Loose, func(*simulated) {}, sideways},
		{ground.TooSlowRate, func(*simulated) {}, holed},
	} {
		for seed := range uint64(rides(1)) {
			s := usual(seed)
			c.change(&s)
			r := s.ride()
			if c.after != nil {
				c.after(&r)
			}
			if got := ground.Measure(r, s.machine); got.Refused != c.want {
				t.Errorf("seed %d: refused as %q, want %q (misfit %.2f)", seed, got.Refused, c.want, got.Misfit)
			}
		}
	}
}

// turning lets the phone swing round in its holder.
func turning(r *ground.Record) {
	for i := range r.Samples {
		s := &r.Samples[i]
		sin, cos := math.Sincos(float64(s.At) / 6)
		f := s.Felt
		s.Felt[0], s.Felt[1] = cos*f[0]-sin*f[1], sin*f[0]+cos*f[1]
		s.Felt[1], s.Felt[2] = cos*s.Felt[1]-sin*f[2], sin*s.Felt[1]+cos*f[2]
	}
}

// sideways shakes the phone across gravity more than along it.
func sideways(r *ground.Record) {
	for i := range r.Samples {
		f := r.Samples[i].Felt
		n := math.Hypot(f[0], f[1])
		shake := 60 * math.Sin(70*float64(r.Samples[i].At))
		r.Samples[i].Felt[0], r.Samples[i].Felt[1] = f[0]-shake*f[1]/n, f[1]+shake*f[0]/n
	}
}

// holed drops a quarter of a second in every second.
func holed(r *ground.Record) {
	kept := r.Samples[:0]
	for _, s := range r.Samples {
		if math.Mod(float64(s.At), 1) > 0.25 {
			kept = append(kept, s)
		}
	}
	r.Samples = kept
}

// Records without sense are refused and never make a number of none.
func TestNoSense(t *testing.T) {
	m := machines()[0]
	still := func(a, step float64, n int) ground.Record {
		r := ground.Record{Speeds: []ground.Speed{{V: 7}}}
		for i := range n {
			r.Samples = append(r.Samples, ground.Sample{At: unit.Second(step * float64(i)), Felt: [3]float64{2: a}})
		}
		return r
	}
	for _, r := range []ground.Record{{}, {Speeds: []ground.Speed{{V: 7}}}, still(9.81, 0, 1), still(9.81, 0, 3000), still(9.81, 0.02, 3000), still(0, 0.02, 3000)} {
		if a := ground.Measure(r, m); a.Refused == "" || math.IsNaN(a.Misfit) || math.IsNaN(a.Seconds) {
			t.Errorf("%d samples: %+v", len(r.Samples), a)
		}
	}
}

// The classes of ISO 8608: means 16, 64, 256, 1024, 4096e-6 m3 from A to E, limits at twice and half.
func TestClasses(t *testing.T) {
	for letter, mean := range map[string]float64{"A": 16, "B": 64, "C": 256, "D": 1024, "E": 4096, "F": 16384, "G": 65536, "H": 262144} {
		for _, factor := range []float64{0.51, 1, 1.99} {
			if got := ground.ClassOf(road.Roughness(mean * factor * 1e-6)); got != letter {
				t.Errorf("%g: %s, want %s", mean*factor, got, letter)
			}
		}
	}
	if a, h := ground.ClassOf(1e-9), ground.ClassOf(10); a != "A" || h != "H" {
		t.Errorf("past the ends: %s, %s", a, h)
	}
}

func TestNearest(t *testing.T) {
	for gd0, want := range map[float64]string{10: "smooth", 130: "patched", 192: "rice", 250: "pea", 500: "walnut", 1000: "egg", 9000: "fist"} {
		if got := ground.Nearest(road.Roughness(gd0 * 1e-6)); got != want {
			t.Errorf("%g: %s, want %s", gd0, got, want)
		}
	}
}
