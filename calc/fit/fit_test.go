package fit_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/fit"
	"rimside/calc/unit"
)

func rim(depth, flange, undersize float64) fit.Rim {
	return fit.Rim{BeadSeat: unit.FromMM(622), Well: unit.FromMM(depth), Flange: unit.FromMM(flange), Undersize: unit.FromMM(undersize)}
}

func room(t rapid.TB, r fit.Rim) fit.Room {
	t.Helper()
	got, err := fit.RoomOf(r, unit.FromMM(0.1))
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func within(t rapid.TB, about string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %v, want %v within %v", about, got, want, by)
	}
}

// The closed forms worked out by hand for a bead seat of 622 mm; plane geometry, no published figures exist.
func TestClosedForms(t *testing.T) {
	for _, row := range []struct{ h, s622, s619, n55, n60, n65, v float64 }{
		{1.5, 9.42, 0, 1.97, 2.18, 2.40, 0.20}, {2, 12.57, 3.14, 2.18, 2.40, 2.63, 0.30},
		{3, 18.85, 9.42, 2.63, 2.86, 3.10, 0.56}, {4, 25.13, 15.71, 3.11, 3.35, 3.61, 0.86},
	} {
		about := fmt.Sprintf("h %v", row.h)
		within(t, about+" slack", room(t, rim(row.h, 6, 0)).Slack.MM(), row.s622, 0.005)
		within(t, about+" slack, small bead", room(t, rim(row.h, 6, 3)).Slack.MM(), row.s619, 0.005)
		for flange, n := range map[float64]float64{5.5: row.n55, 6: row.n60, 6.5: row.n65} {
			within(t, about+" need", room(t, rim(row.h, flange, 0)).Need.MM(), n, 0.006)
		}
		held := rim(row.h, 6, 0)
		held.ValveHeight = unit.FromMM(row.h) // a valve that holds one point at the height of the seat
		within(t, about+" valve", room(t, held).Valve.MM(), row.v, 0.006)
	}
	within(t, "0.1 mm of tape", room(t, rim(3, 6, 0)).PerTape.MM(), 0.63, 0.005)
	within(t, "1 mm undersize", (room(t, rim(3, 6, 1)).Slack - room(t, rim(3, 6, 2)).Slack).MM(), 3.14, 0.005)
}

// The shortest way round, by convex hull, against the closed forms: 0.1 % of what each says.
func TestTheHullAgreesWithTheClosedForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rim(rapid.Float64Range(1, 5).Draw(t, "well"), rapid.Float64Range(4.5, 7).Draw(t, "flange"), rapid.Float64Range(0, 3).Draw(t, "undersize"))
		r.ValveWidth, r.ValveHeight = unit.FromMM(rapid.Float64Range(0, 9).Draw(t, "wide")), unit.FromMM(rapid.Float64Range(0.1, 1).Draw(t, "high"))*r.Well/unit.FromMM(1)
		want := room(t, r)
		const steps = 8000
		free := r
		free.ValveHeight = 0
		none := math.NaN()
		bare := fit.Length(fit.Loop(free, none, none, none, steps))
		within(t, "slack", (fit.BeadLength(r) - bare).MM(), want.Slack.MM(), 0.001*math.Abs(want.Slack.MM())+0.002)
		lifted := fit.Length(fit.Loop(free, none, 0, 0, steps))
		within(t, "need", (lifted - bare).MM(), want.Need.MM(), 0.001*want.Need.MM()+0.002)
		held := fit.Length(fit.Loop(r, math.Pi, none, none, steps))
		within(t, "valve", (held - bare).MM(), want.Valve.MM(), 0.001*want.Valve.MM()+0.002)
		// What may still be off, laid round the rim with everything else, uses up the whole bead.
		for about, arc := range map[string]struct{ off, valveAt float64 }{
			"start at the valve": {float64(want.StartAtValve), math.Pi}, "finish at the valve": {float64(want.FinishAtValve), 0},
		} {
			radius := float64(r.BeadSeat/2 + r.Flange)
			half := arc.off / radius / 2
			if half <= 0 || half > 2 {
				continue
			}
			laid := fit.Length(fit.Loop(r, arc.valveAt, -half, half, steps))
			within(t, about, laid.MM(), fit.BeadLength(r).MM(), 0.01)
		}
	})
}

func TestABeadOnTheSeatCannotPassTheFlange(t *testing.T) {
	r := rim(3, 6, 0)
	r.Tape = r.Well // tape up to the seat: the bead lies on it all round
	got := room(t, r)
	if got.Slack > 1e-12 || got.FinishAtValve != 0 || got.Grade != fit.NotLikeThis {
		t.Errorf("%+v", got)
	}
}

// A deeper well never hurts; tape, a smaller bead, a second bead and a higher flange never help.
func TestWhatHelpsAndWhatHurts(t *testing.T) {
	grade := map[fit.Grade]int{fit.NotLikeThis: 0, fit.ByHand: 1, fit.Easily: 2}
	rapid.Check(t, func(t *rapid.T) {
		r := rim(rapid.Float64Range(1.5, 5).Draw(t, "well"), rapid.Float64Range(4.5, 7).Draw(t, "flange"), rapid.Float64Range(0, 3).Draw(t, "undersize"))
		r.Tape = unit.FromMM(rapid.Float64Range(0, 0.5).Draw(t, "tape"))
		by := unit.FromMM(rapid.Float64Range(0.01, 0.5).Draw(t, "by"))
		was := room(t, r)
		for about, change := range map[string]func(*fit.Rim){
			"tape": func(r *fit.Rim) { r.Tape += by }, "bead": func(r *fit.Rim) { r.Undersize += by },
			"flange": func(r *fit.Rim) { r.Flange += by }, "second bead": func(r *fit.Rim) { r.Second += by },
			"shallow": func(r *fit.Rim) { r.Well -= by },
		} {
			worse := r
			change(&worse)
			now := room(t, worse)
			if now.FinishAtValve > was.FinishAtValve || grade[now.Grade] > grade[was.Grade] {
				t.Errorf("%s helped: %+v, then %+v", about, was, now)
			}
		}
		if was.StartAtValve > was.FinishAtValve {
			t.Errorf("starting at the valve leaves more: %+v", was) // common practice: finish at the valve
		}
	})
}

func TestTwoBeadsInANarrowWell(t *testing.T) {
	mm := func(bead, well float64) float64 { return fit.Stacked(unit.FromMM(bead), unit.FromMM(well)).MM() }
	within(t, "side by side", mm(4, 8), 0, 0)
	within(t, "one above the other", mm(4, 4), 4, 1e-12)
	within(t, "3, 4, 5", mm(5, 8), 4, 1e-12) // centres 3 aside and 4 up: 5 apart
}

func TestMeasuresThatCannotBe(t *testing.T) {
	valve := rim(3, 6, 0)
	valve.ValveHeight = unit.FromMM(9.5)
	tape := rim(3, 6, 0)
	tape.Tape = unit.FromMM(4)
	for _, row := range []struct {
		rim  fit.Rim
		want error
	}{
		{rim(0, 6, 0), fit.ErrMeasure}, {rim(math.NaN(), 6, 0), fit.ErrMeasure}, {rim(3, math.Inf(1), 0), fit.ErrMeasure}, {rim(3, 6, -1), fit.ErrMeasure},
		{tape, fit.ErrTape}, {valve, fit.ErrValve},
	} {
		if got, err := fit.RoomOf(row.rim, 0); !errors.Is(err, row.want) {
			t.Errorf("%+v: %+v, %v, want %v", row.rim, got, err, row.want)
		}
	}
}

func ExampleRoomOf() {
	room, _ := fit.RoomOf(fit.Rim{BeadSeat: 0.622, Well: 0.003, Flange: 0.006, Undersize: 0.003}, 0.0001)
	fmt.Printf("%.2f mm to spare, %.2f mm needed: %s\n", room.Slack.MM(), room.Need.MM(), room.Grade)
	// Output: 9.42 mm to spare, 2.86 mm needed: easily
}
