package pressure_test

import (
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// codes lists what a side is told at a severity.
func codes(a pressure.Answer, side pressure.Side, severity pressure.Severity) (out []pressure.Code) {
	for _, n := range a.Notices {
		if n.Side == side && n.Severity == severity {
			out = append(out, n.Code)
		}
	}
	return out
}

// valueOf is a value of the one notice with this code on this side.
func valueOf(t *testing.T, a pressure.Answer, side pressure.Side, code pressure.Code, name string) pressure.Value {
	t.Helper()
	for _, n := range a.Notices {
		for _, v := range n.Values {
			if n.Side == side && n.Code == code && v.Name == name {
				return v
			}
		}
	}
	t.Fatalf("%s is not told %s of %s: %+v", side, name, code, a.Notices)
	return pressure.Value{}
}

// Common practice, no source: a 32 mm tyre that wants 78 psi under a hookless rim's 72.5 psi is sent to 35 mm. The load is the one
// whose usual practice is 78 psi.
func TestThirtyTwoThatWantsTooMuchIsSentToThirtyFive(t *testing.T) {
	wheel := setupOf(32, "cloth", "tubeless")
	wheel.Tyre.Max, wheel.Rim.Max, wheel.Rim.Profile = unit.FromPSI(72.5), unit.FromPSI(72.5), tyre.Hookless
	in := inputOf(wheel, stretchOf("patched", 29, 1))
	s := tyre.Mounted(unit.FromMM(622), unit.FromMM(32))
	load := func(squash float64) unit.Kilogram {
		squash *= math.Pow(32.0/40, 0.15)
		return unit.Kilogram(float64(unit.FromPSI(78)) / float64(s.PressureFor(1, squash)) / 9.80665)
	}
	in.FrontLoad, in.RearLoad = load(0.14), load(0.165)
	a := mustDecide(t, in)
	if len(a.Bigger) != 2 {
		t.Fatalf("sent to %+v", a.Bigger)
	}
	for i, side := range pressure.Sides {
		w := a.Wheel(side)
		within(t, "usual practice, psi", w.Figures.Practice.PSI(), 78, 1e-6)
		within(t, "recommended, psi", w.Advice.Recommended.PSI(), 72.5, 1e-3) // 500 kPa is 72.52 psi
		if a.Bigger[i].Side != side || math.Abs(a.Bigger[i].Label.MM()-35) > 1e-9 || a.Bigger[i].Recommended.PSI() >= 72.52 {
			t.Errorf("%s is sent to %+v", side, a.Bigger[i])
		}
		if limit := valueOf(t, a, side, pressure.AtLimitRide, "limit").Key; limit != "tyre" {
			t.Errorf("%s is told of the limit of %s", side, limit)
		}
		within(t, "its mark as printed, psi", unit.Pascal(valueOf(t, a, side, pressure.AtLimitRide, "mark").Number).PSI(), 72.5, 1e-9)
	}
}

// A printed 32 on 29 mm inner width measures 36.5 (common practice); predicted 35.5 +/- 1.5. Without hooks it is refused, with them
// it is a question; with the rim maker's list it has its numbers and a care notice.
func TestThirtyTwoOnTwentyNine(t *testing.T) {
	wheel := setupOf(32, "cloth", "tubeless")
	wheel.Rim.Inner = unit.FromMM(29)
	ask := func() pressure.Answer { return mustDecide(t, inputOf(wheel, stretchOf("patched", 29, 1))) }
	a := ask()
	within(t, "predicted, mm", a.Front.Width.MM(), 35.5, 0.005)
	within(t, "against the measured width, mm", a.Front.Width.MM(), 36.5, 1.5/36.5)
	if a.Front.Figures != nil || !told(a, pressure.Front, "ask_table_min", pressure.Stop) {
		t.Errorf("not asked: %+v", a.Notices)
	}
	within(t, "the label asked about, mm", unit.Metre(valueOf(t, a, pressure.Front, "ask_table_min", "label").Number).MM(), 32, 1e-9)
	wheel.Rim.Table.MinLabel, wheel.Tyre.Measured = unit.FromMM(32), unit.FromMM(36.5)
	a = ask()
	if a.Front.Advice == nil || !told(a, pressure.Front, "narrow_care", pressure.Care) || len(codes(a, pressure.Front, pressure.Stop)) != 0 {
		t.Errorf("listed: %+v", a.Notices)
	}
	wheel.Rim.Profile = tyre.Hookless
	if a = ask(); a.Front.Figures != nil || !told(a, pressure.Front, "hookless_too_narrow", pressure.Stop) {
		t.Errorf("without hooks: %+v", a.Notices)
	}
}

// 122 kg on 28 mm tubes marked 600 kPa: the floor passes the mark, so no number, and a width that would do is named with the mark
// that its sidewall must show.
func TestTooMuchWeightOnANarrowTubeTyre(t *testing.T) {
	wheel := setupOf(28, "glove", "tube")
	wheel.Tyre.Max, wheel.Rim.Max = unit.FromKPa(600), unit.FromKPa(800)
	in := inputOf(wheel, stretchOf("chips", 28, 1))
	in.Rider, in.Bike = 112, 10
	warm := unit.FromCelsius(30)
	in.Warmest = &warm
	a := mustDecide(t, in)
	for i, side := range pressure.Sides {
		w := a.Wheel(side)
		if w.Advice != nil || w.Figures == nil || w.Figures.Limited != pressure.LimitTyre {
			t.Errorf("%s: advice %+v", side, w.Advice)
		}
		if len(a.Bigger) != 2 || a.Bigger[i].Label <= wheel.Tyre.Label || !told(a, side, pressure.FloorOverLimit, pressure.Stop) {
			t.Fatalf("%s: no width is named: %+v, %+v", side, a.Notices, a.Bigger)
		}
		value := func(name string) float64 { return valueOf(t, a, side, pressure.FloorOverLimit, name).Number }
		within(t, "the mark as printed, kPa", value("mark")/1e3, 600, 1e-9)
		within(t, "what the floor needs, as a mark", value("floor_needs")/1e3, moved(w.Figures.Floor.KPa(), in.Ride, warmest(in)), 1e-8)
		within(t, "the mark the wider one needs", value("needs_mark"), float64(a.Bigger[i].NeedsMark), 1e-12)
		if value("needs_mark") < moved(a.Bigger[i].Recommended.KPa(), in.Ride, warmest(in))*1e3 {
			t.Errorf("%s: a mark of %v forgets the warmest hour", side, value("needs_mark"))
		}
		if by := valueOf(t, a, side, pressure.FloorOverLimit, "floor_by").Key; by != "floor" {
			t.Errorf("%s: held by %s", side, by)
		}
	}
	if err := biggerIsAccepted(in, a); err != nil {
		t.Error(err)
	}
}

// A 28 on 25 without hooks is refused (a rim maker's published statement of ETRTO 2023), with a tube or without, whatever the rim's
// table says: no number anywhere.
func TestTwentyEightOnTwentyFiveHooklessIsSilent(t *testing.T) {
	for _, setup := range pressure.Setups() {
		for _, edge := range []tyre.Profile{tyre.Hookless, tyre.Unknown} {
			wheel := setupOf(28, "cloth", pressure.Setup(setup))
			wheel.Rim.Inner, wheel.Rim.Profile = unit.FromMM(25), edge
			wheel.Rim.Table = tyre.Table{MinLabel: unit.FromMM(28), MaxLabel: unit.FromMM(50), Max: 4e5}
			in := inputOf(wheel, stretchOf("patched", 29, 1))
			reading := unit.FromKPa(450)
			in.Now.Front, in.Now.Rear = &reading, &reading
			a := mustDecide(t, in)
			for _, side := range pressure.Sides {
				if w := a.Wheel(side); w.Figures != nil || w.Advice != nil || len(codes(a, side, pressure.Stop)) != 1 {
					t.Errorf("%s %s: %+v, %+v", setup, edge, w, a.Notices)
				}
			}
			if len(a.Bigger) != 0 || len(a.Notices) != 2 {
				t.Errorf("more than the refusals is said: %+v, %+v", a.Bigger, a.Notices)
			}
		}
	}
}

// A maximum that nobody has read: without hooks a question; with them it counts as 250 kPa (our choice), and only a floor above that
// asks: narrow tyres, 28, 32 and 35 mm tubeless at 83 kg in all.
func TestUnreadMaximum(t *testing.T) {
	for _, c := range []struct {
		label     float64
		edge      tyre.Profile
		tyre, rim float64
		want      pressure.Code
		limited   pressure.Limit
	}{
		{40, "hookless", 0, 400, "ask_max_tyre", ""}, {40, "hookless", 400, 0, "ask_max_rim", ""}, {40, "unknown", 0, 0, "ask_max_both", ""},
		{32, "hooked", 0, 700, "ask_max_tyre", ""}, {32, "hooked", 700, 0, "ask_max_rim", ""}, {32, "hooked", 0, 0, "ask_max_both", ""},
		{28, "hooked", 0, 700, "ask_max_tyre", ""}, {35, "hooked", 0, 700, "ask_max_tyre", ""},
		{38, "hooked", 0, 700, "", pressure.LimitUnread}, {38, "hooked", 700, 0, "", pressure.LimitUnread}, {38, "hooked", 0, 0, "", pressure.LimitUnread},
		{45, "hooked", 0, 0, "", pressure.LimitNone}, {57, "hooked", 0, 0, "", pressure.LimitNone}, {32, "hooked", 700, 700, "", pressure.LimitNone},
		{38, "hooked", 240, 0, "", pressure.LimitTyre}, // a known mark that is lower still binds
	} {
		wheel := setupOf(c.label, "glove", "tubeless")
		wheel.Tyre.Max, wheel.Rim.Max, wheel.Rim.Profile = unit.FromKPa(c.tyre), unit.FromKPa(c.rim), c.edge
		a := mustDecide(t, inputOf(wheel, stretchOf("chips", 28, 1)))
		got := codes(a, pressure.Rear, pressure.Stop)
		if c.want != "" {
			if len(got) != 1 || got[0] != c.want || a.Rear.Figures != nil {
				t.Errorf("%+v: told %v", c, got)
			}
			continue
		}
		if len(got) != 0 || a.Rear.Advice == nil || a.Rear.Figures.Limited != c.limited {
			t.Errorf("%+v: told %v, %+v", c, got, a.Rear.Figures)
			continue
		}
		if c.limited == pressure.LimitUnread {
			within(t, "held at, kPa", a.Rear.Advice.Recommended.KPa(), 250, 1e-12)
			within(t, "ceiling, kPa", a.Rear.Figures.Ceiling.KPa(), 250, 1e-12)
			if wants := valueOf(t, a, pressure.Rear, pressure.HeldUnread, "wants").Number; wants <= 250e3 || len(a.Bigger) != 0 {
				t.Errorf("%+v: wants %v, sent to %+v", c, wants, a.Bigger)
			}
		}
	}
}

// A question wins over every other word: under a tyre's known 300 kPa, with the rim's maximum not read, nothing else is said.
func TestAskedWheelShowsNoOtherNumber(t *testing.T) {
	wheel := setupOf(32, "glove", "tubeless")
	wheel.Tyre.Max, wheel.Rim.Max = unit.FromKPa(300), 0
	a := mustDecide(t, inputOf(wheel, stretchOf("chips", 28, 1)))
	for _, n := range a.Notices {
		if n.Code != pressure.AskMaxRim {
			t.Errorf("also told %q", n.Code)
		}
	}
	if a.Front.Figures != nil || len(a.Bigger) != 0 {
		t.Errorf("numbers: %+v, %+v", a.Front.Figures, a.Bigger)
	}
}

// To end at 500 kPa in the heat, set at 20 C: 480 for 30 C, 470 for 35 C, 461 for 40 C, 444 for 50 C (gas law, rounded down).
func TestHotHourHoldsTheSetPressureDown(t *testing.T) {
	for celsius, want := range map[float64]float64{30: 480, 35: 470, 40: 461, 50: 444} {
		for _, here := range []pressure.Here{pressure.HereSet, pressure.HereRide} {
			wheel := setupOf(28, "cloth", "insert")
			wheel.Rim.Profile = tyre.Hookless
			in := inputOf(wheel, stretchOf("smooth", 33, 1))
			in.FrontLoad, in.RearLoad, in.Here = 50, 50, here
			warm := unit.FromCelsius(celsius)
			in.Warmest = &warm
			a := mustDecide(t, in)
			if got := math.Floor(a.Front.Advice.Set.KPa()); got != want || a.Front.Figures.Limited != pressure.LimitHookless {
				t.Errorf("%v C: set at %v, want %v", celsius, got, want)
			}
			within(t, "the mark as printed, kPa", valueOf(t, a, pressure.Front, pressure.AtLimitWarmest, "mark").Number/1e3, 500, 1e-9)
		}
	}
}

// A cold start: set at home at 20 degrees, driven to a start at 2, read there. The true reading is what the card asks for there, so
// it says to leave it; the same reading at home would be too low.
func TestAColdStartIsLeft(t *testing.T) {
	in := inputOf(fortyOne(), stretchOf("pea", 25, 1))
	in.Ride = air.State{Temperature: unit.FromCelsius(2), Altitude: 900}
	in.GaugeError = unit.FromKPa(4)
	home := mustDecide(t, in)
	read := func(side pressure.Side) *unit.Pascal {
		w := home.Wheel(side)
		reading := unit.FromKPa(moved(w.Advice.Set.KPa(), in.Set, in.Ride)) + in.GaugeError
		return &reading
	}
	in.Here, in.Now = pressure.HereRide, pressure.Readings{Front: read(pressure.Front), Rear: read(pressure.Rear)}
	start := mustDecide(t, in)
	in.Here = pressure.HereSet
	mixed := mustDecide(t, in)
	for _, side := range pressure.Sides {
		at := start.Wheel(side).Advice
		if at.Action.Do != pressure.Leave || at.Gauge != home.Wheel(side).Advice.Gauge || at.Recommended != home.Wheel(side).Advice.Recommended {
			t.Errorf("%s at the start: %+v", side, at)
		}
		if do := mixed.Wheel(side).Advice.Action.Do; do != pressure.Add {
			t.Errorf("%s: the start's reading taken for home's is left as %s", side, do)
		}
	}
}

// Wet is 0.95 of the want, a step is 1.05, and both wheels have a shift of their own.
func TestButtonsAndShift(t *testing.T) {
	in := inputOf(fortyOne(), stretchOf("pea", 25, 1))
	plain := mustDecide(t, in)
	in.Wet = true
	wet := mustDecide(t, in)
	in.Wet, in.Firmness, in.Shift = false, 2, pressure.PerWheel{Front: -0.04, Rear: 0.03}
	moved := mustDecide(t, in)
	for side, shift := range map[pressure.Side]float64{pressure.Front: -0.04, pressure.Rear: 0.03} {
		p := float64(plain.Wheel(side).Advice.Recommended)
		within(t, "wet", float64(wet.Wheel(side).Advice.Recommended), 0.95*p, 1e-12)
		within(t, "p0 when wet", float64(wet.Wheel(side).Advice.P0), 0.95*p, 1e-12)
		within(t, "two firmer and a shift", float64(moved.Wheel(side).Advice.Recommended), p*1.05*1.05*math.Exp(shift), 1e-12)
		within(t, "p0 knows neither", float64(moved.Wheel(side).Advice.P0), p, 1e-12)
	}
}

// Which of the floor's reasons binds is said in its own word.
func TestFloorNamesItsReason(t *testing.T) {
	wheel := fortyOne()
	in := inputOf(wheel, stretchOf("soft", 12, 1))
	a := mustDecide(t, in)
	if f := a.Front.Figures; f.Limited != pressure.LimitFloor || a.Front.Advice.Recommended != f.Floor || len(f.Curve) != 0 || a.Front.Advice.Good != nil || a.Front.Advice.Cost != nil {
		t.Errorf("all soft: %+v", f)
	}
	wheel.Tyre.Min = unit.FromKPa(260)
	a = mustDecide(t, inputOf(wheel, stretchOf("pea", 25, 1)))
	if f := a.Front.Figures; f.Limited != pressure.LimitPrintedMinimum || a.Front.Advice.Recommended != wheel.Tyre.Min || told(a, pressure.Front, pressure.AtFloor, pressure.Info) {
		t.Errorf("printed minimum: %+v, %+v", f, a.Notices)
	}
	within(t, "told, kPa", valueOf(t, a, pressure.Front, pressure.AtPrintedMinimum, "min").Number/1e3, 260, 1e-12)
}

// The soft part is told with how much softer it makes the number.
func TestSoftGroundTellsWhatItDid(t *testing.T) {
	firm := mustDecide(t, inputOf(fortyOne(), stretchOf("pea", 25, 1)))
	a := mustDecide(t, inputOf(fortyOne(), stretchOf("pea", 25, 3), stretchOf("soft", 12, 1)))
	for _, side := range pressure.Sides {
		by := firm.Wheel(side).Advice.Recommended - a.Wheel(side).Advice.Recommended
		within(t, "softer by", valueOf(t, a, side, pressure.PartlySoft, "softer").Number, float64(by), 1e-9)
		within(t, "share", valueOf(t, a, side, pressure.PartlySoft, "share").Number, 0.25, 1e-12)
	}
}

// Ground may be cut in two, put in another order and written in other units without a number that moves.
func TestGroundMayBeWrittenInManyWays(t *testing.T) {
	d := newDice()
	for range *setups / 8 {
		in := d.any()
		want := mustDecide(t, in)
		part, factor := d.between(0.01, 0.99), d.between(0.001, 1000)
		a, b := in.Ground[0], in.Ground[0]
		a.Share, b.Share = a.Share*part, b.Share*(1-part)
		cut := in
		cut.Ground = append(append([]road.Stretch{a}, in.Ground[1:]...), b)
		for i := range cut.Ground {
			cut.Ground[i].Share *= factor
		}
		if err := sameNumbers(want, mustDecide(t, cut)); err != nil {
			t.Fatalf("cut in two and scaled: %v", err)
		}
	}
}

// Only what the gauge shows, and so what to do, hangs on the gauge.
func TestGaugeErrorMovesOnlyTheReading(t *testing.T) {
	d := newDice()
	for range *setups / 8 {
		in := d.any()
		in.GaugeError, in.Now = 0, pressure.Readings{}
		off := in
		off.GaugeError = unit.FromKPa(d.between(1, 30))
		a, b := mustDecide(t, in), mustDecide(t, off)
		for _, side := range pressure.Sides {
			if w := b.Wheel(side); w.Advice != nil {
				within(t, "gauge moved by", float64(w.Advice.Gauge-a.Wheel(side).Advice.Gauge), float64(off.GaugeError), 1e-6)
				w.Advice.Gauge, w.Advice.HereGauge = a.Wheel(side).Advice.Gauge, a.Wheel(side).Advice.HereGauge
			}
		}
		for i, n := range b.Notices {
			for j, v := range n.Values {
				if v.Name == "wants_here" {
					b.Notices[i].Values[j] = a.Notices[i].Values[j]
				}
			}
		}
		if err := sameNumbers(a, b); err != nil {
			t.Fatal(err)
		}
	}
}
