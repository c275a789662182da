package trial_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/trial"
)

// Published: the sleep data of Student 1908 with Welch's test, as the help of R 4 (t.test) prints it: t = -1.8608, df = 17.776,
// 95 % from -3.3654832 to 0.2054832 (first minus second there), p = 0.07939.
func TestWelchAsPrinted(t *testing.T) {
	first := trial.Summarise([]float64{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2}, 0.1)
	second := trial.Summarise([]float64{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4}, 0.1)
	if f := trial.WelchOf(first, second); math.Abs(f-17.776) > 5e-4 {
		t.Errorf("%v degrees of freedom, printed 17.776", f)
	}
	r := trial.Plainly(first, second, 0.05)
	if math.Abs(r.Low+0.2054832) > 5e-7 || math.Abs(r.High-3.3654832) > 5e-7 || r.Shown {
		t.Errorf("%+v", r)
	}
	if p := 2 * (1 - r.Above); math.Abs(p-0.07939) > 5e-6 {
		t.Errorf("p = %v, printed 0.07939", p)
	}
	// What is told is a little wider, so as to be right whatever the scatters are.
	told, ok := trial.Compare(first, second, 0.05)
	if !ok || told.Low > r.Low || told.Low < r.Low-0.005 || told.High < r.High || told.High > r.High+0.005 || told.Shown {
		t.Errorf("%+v", told)
	}
}

func ExampleCompare() {
	softer := trial.Summarise([]float64{61.2, 61.5, 61.1, 61.4}, 0.1)
	firmer := trial.Summarise([]float64{62.0, 62.4, 61.9, 62.3}, 0.1)
	r, _ := trial.Compare(softer, firmer, trial.Level(2, 1))
	fmt.Printf("%.2f, from %.2f to %.2f: %v\n", r.Difference, r.Low, r.High, r.Shown)
	// Output: 0.85, from 0.47 to 1.23: true
}

// Turning arms round turns the interval round; another unit scales it; more of the same certainty is wider.
func TestComparisonTurnsRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) []float64 { return rapid.SliceOfN(rapid.Float64Range(10, 90), 2, 12).Draw(t, name) }
		a, b := draw("a"), draw("b")
		one, ok := trial.Compare(trial.Summarise(a, 0), trial.Summarise(b, 0), 0.05)
		if !ok {
			return // both without any scatter
		}
		other, _ := trial.Compare(trial.Summarise(b, 0), trial.Summarise(a, 0), 0.05)
		near := func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*math.Max(1, math.Abs(x)) }
		if !near(one.Low, -other.High) || !near(one.High, -other.Low) || !near(one.Above, 1-other.Above) || one.Shown != other.Shown {
			t.Fatalf("%+v and turned %+v", one, other)
		}
		if !(one.Low <= one.Difference && one.Difference <= one.High) {
			t.Fatalf("%+v", one)
		}
		surer, _ := trial.Compare(trial.Summarise(a, 0), trial.Summarise(b, 0), 0.01)
		if surer.High-surer.Low < one.High-one.Low {
			t.Fatalf("surer, and yet narrower: %+v", surer)
		}
	})
}

// Runs that are all alike have not shown more than their rounding: twice 60 s and twice 61 s are no difference, eight times are.
func TestRunsThatAreAllAlike(t *testing.T) {
	for _, c := range []struct {
		runs  int
		shown bool
	}{{2, false}, {8, true}} {
		var a, b []float64
		for range c.runs {
			a, b = append(a, 60), append(b, 61)
		}
		step := trial.StepOf(append(append([]float64{}, a...), b...))
		r, ok := trial.Compare(trial.Summarise(a, step), trial.Summarise(b, step), 0.05)
		if !ok || r.Shown != c.shown || step != 1 {
			t.Errorf("%d runs each, step %v: %+v", c.runs, step, r)
		}
	}
	for want, values := range map[float64][]float64{1: {60, 61}, 0.1: {60, 60.1}, 0.01: {60.12, 3}, 0.001: {1.234}, 0: {math.Pi}} {
		if got := trial.StepOf(values); got != want {
			t.Errorf("step of %v is %v", values, got)
		}
	}
	if _, ok := trial.Compare(trial.Summarise([]float64{60}, 1), trial.Summarise([]float64{61, 62, 63}, 1), 0.05); ok {
		t.Error("one run is enough")
	}
}

// A limit: who rides so many more as are named shows the difference, when it is as large as it looked, with the power stated.
func TestRunsToSettleReachTheirPower(t *testing.T) {
	d := rand.New(rand.NewPCG(7, 20))
	for _, c := range []struct{ effect, unlike float64 }{{0.8, 1}, {1.2, 1}, {1.6, 1}, {1.6, 3}, {4, 3}} {
		// Two arms whose means differ by just the effect and whose scatters are just 1 and so many times that, four runs each.
		var a, b []float64
		for _, p := range []float64{-math.Sqrt(1.5), 0, 0, math.Sqrt(1.5)} {
			a, b = append(a, 60+p), append(b, 60+p*c.unlike+c.effect)
		}
		arm, other := trial.Summarise(a, 0), trial.Summarise(b, 0)
		more, ok := trial.RunsToSettle(arm, other, 0.05)
		if !ok {
			t.Fatalf("%+v: none said; %+v", c, arm)
		}
		each, shown := 4+more/2, 0
		const trials = 500 // they scatter by 1.8 %
		for range trials {
			x, y := draws(d, each, 60, 1, 0), draws(d, each, 60+c.effect, c.unlike, 0)
			if r, _ := trial.Compare(trial.Summarise(x, 0), trial.Summarise(y, 0), 0.05); r.Shown && r.Difference > 0 {
				shown++
			}
		}
		share := float64(shown) / trials
		t.Logf("%+v: with %d runs each shown in %.1f %%", c, each, share*100)
		if share < trial.Power-0.05 || share > 0.93 {
			t.Errorf("%+v: with %d runs each shown in %.1f %%", c, each, share*100)
		}
	}
}

func draws(d *rand.Rand, n int, mean, scatter, step float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = mean + scatter*d.NormFloat64()
		if step > 0 {
			out[i] = math.Round(out[i]/step) * step
		}
	}
	return out
}
