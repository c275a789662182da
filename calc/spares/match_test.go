package spares_test

import (
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/spares"
	"rimside/calc/unit"
)

// roadRear is a disc road bike's rear end: thru-axle 12 x 142 (trade axle guides), 622, rotor 160.
func roadRear() spares.End {
	return spares.End{
		Hub: spares.Hub{Side: spares.Rear, Width: unit.FromMM(142), Axle: unit.FromMM(12), BeadSeat: unit.FromMM(622), Brake: spares.Disc,
			Rotor: unit.FromMM(160), Speeds: 12, Spacing: "a", MaxCog: 34, Mount: "lockring", Body: "short"},
		Room: unit.FromMM(34), MinLabel: unit.FromMM(28),
	}
}

// spareFor is the complete wheel that is just like what the end asks for.
func spareFor(end spares.End) spares.Spare {
	return spares.Spare{ID: "a", Hub: end.Hub, Tyre: unit.FromMM(30)}
}

func TestEachReason(t *testing.T) {
	for _, row := range []struct {
		about  string
		change func(*spares.End, *spares.Spare)
		fit    spares.Fit
		code   spares.Code
	}{
		{"as it is", func(*spares.End, *spares.Spare) {}, spares.Yes, ""},
		{"out", func(_ *spares.End, s *spares.Spare) { s.OutWith = "114" }, spares.No, spares.IsOut},
		{"may not be ridden", func(_ *spares.End, s *spares.Spare) { s.Stopped = true }, spares.No, spares.IsStopped},
		{"front for rear", func(_ *spares.End, s *spares.Spare) { s.Side = spares.Front }, spares.No, spares.OtherSide},
		{"148 in 142", func(_ *spares.End, s *spares.Spare) { s.Width = unit.FromMM(148) }, spares.No, spares.OtherWidth},
		{"quick release 10", func(_ *spares.End, s *spares.Spare) { s.Axle = unit.FromMM(10) }, spares.No, spares.OtherAxle},
		{"584 for 622", func(_ *spares.End, s *spares.Spare) { s.BeadSeat = unit.FromMM(584) }, spares.No, spares.OtherBeadSeat},
		{"rim brake", func(_ *spares.End, s *spares.Spare) { s.Brake = spares.Rim }, spares.No, spares.OtherBrake},
		{"140 in a caliper for 160", func(_ *spares.End, s *spares.Spare) { s.Rotor = unit.FromMM(140) }, spares.No, spares.OtherRotor},
		{"200 is not 203", func(e *spares.End, s *spares.Spare) { e.Rotor, s.Rotor = unit.FromMM(203), unit.FromMM(200) }, spares.No, spares.OtherRotor},
		{"36 past 34", func(_ *spares.End, s *spares.Spare) { s.MaxCog = 36 }, spares.No, spares.CogTooBig},
		{"28 under 34", func(_ *spares.End, s *spares.Spare) { s.MaxCog = 28 }, spares.Yes, ""},
		{"11 for 12", func(_ *spares.End, s *spares.Spare) { s.Speeds = 11 }, spares.WithChange, spares.OtherSpeeds},
		{"other spacing", func(_ *spares.End, s *spares.Spare) { s.Spacing = "b" }, spares.WithChange, spares.OtherSpacing},
		{"40 in room for 34", func(_ *spares.End, s *spares.Spare) { s.Tyre = unit.FromMM(40) }, spares.No, spares.NoRoom},
		{"25 where 28 is wanted", func(_ *spares.End, s *spares.Spare) { s.Tyre = unit.FromMM(25) }, spares.WithChange, spares.Narrow},
		{"rotor not known", func(e *spares.End, _ *spares.Spare) { e.Rotor = 0 }, spares.WithChange, spares.LookFirst},
		{"other rotor mount, complete wheel", func(_ *spares.End, s *spares.Spare) { s.Mount = "six_bolt" }, spares.Yes, ""},
		{"other body, complete wheel", func(_ *spares.End, s *spares.Spare) { s.Body = "long" }, spares.Yes, ""},
		{"bare", func(_ *spares.End, s *spares.Spare) { s.Bare = true }, spares.WithChange, spares.MoveParts},
		{"bare, other mount", func(_ *spares.End, s *spares.Spare) { s.Bare, s.Mount = true, "six_bolt" }, spares.No, spares.OtherMount},
		{"bare, other body", func(_ *spares.End, s *spares.Spare) { s.Bare, s.Body = true, "long" }, spares.No, spares.OtherBody},
		{"bare, spacer", func(e *spares.End, s *spares.Spare) {
			s.Bare, e.Speeds, e.Body, s.Body = true, 10, spares.SplineTen, spares.SplineEleven
		}, spares.WithChange, spares.AddSpacer},
		{"bare, no spacer for 11", func(e *spares.End, s *spares.Spare) {
			s.Bare, e.Speeds, e.Body, s.Body = true, 11, spares.SplineTen, spares.SplineEleven
		}, spares.No, spares.OtherBody},
		{"bare, without a tyre", func(_ *spares.End, s *spares.Spare) { s.Bare, s.Tyre = true, 0 }, spares.WithChange, spares.NoTyre},
	} {
		end := roadRear()
		spare := spareFor(end)
		row.change(&end, &spare)
		got := spares.Judge(end, &spare)
		if got.Fit != row.fit || row.code == "" && len(got.Reasons) > 0 || row.code != "" && (len(got.Reasons) == 0 || got.Reasons[0].Code != row.code) {
			t.Errorf("%s: %+v, want %s for %q", row.about, got, row.fit, row.code)
		}
	}
}

func TestAFrontWheelHasNoSprockets(t *testing.T) {
	end := roadRear()
	end.Side, end.Speeds, end.MaxCog = spares.Front, 0, 0
	spare := spareFor(end)
	if got := spares.Judge(end, &spare); got.Fit != spares.Yes {
		t.Errorf("%+v", got)
	}
}

func TestTheBestStandsFirst(t *testing.T) {
	end := roadRear()
	fits, wide, speeds, bare, out := spareFor(end), spareFor(end), spareFor(end), spareFor(end), spareFor(end)
	fits.ID, wide.ID, speeds.ID, bare.ID, out.ID = "fits", "wide", "speeds", "bare", "out"
	wide.Tyre, speeds.Speeds, bare.Bare, out.OutWith = unit.FromMM(32), 11, true, "7"
	ranked := spares.Match(end, []spares.Spare{out, bare, speeds, fits, wide})
	for i, want := range []string{"wide", "fits", "speeds", "bare", "out"} {
		if ranked[i].Spare.ID != want {
			t.Errorf("place %d: %s, want %s", i, ranked[i].Spare.ID, want)
		}
	}
}

// end draws an end of a bike that is wholly known.
func drawEnd(t *rapid.T) spares.End {
	pick := func(name string, from []float64) unit.Metre {
		return unit.FromMM(rapid.SampledFrom(from).Draw(t, name))
	}
	return spares.End{
		Hub: spares.Hub{
			Side: rapid.SampledFrom([]spares.Side{spares.Front, spares.Rear}).Draw(t, "side"), Width: pick("width", []float64{100, 110, 142, 148}),
			Axle: pick("axle", []float64{12, 15}), BeadSeat: pick("bead", []float64{622, 584}), Brake: rapid.SampledFrom([]spares.Brake{spares.Disc, spares.Rim}).Draw(t, "brake"),
			Rotor: pick("rotor", []float64{140, 160, 180}), Speeds: rapid.IntRange(10, 13).Draw(t, "speeds"), Spacing: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "spacing"),
			MaxCog: rapid.IntRange(28, 36).Draw(t, "cog"), Mount: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "mount"), Body: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "body"),
		},
		Room: unit.FromMM(rapid.Float64Range(28, 50).Draw(t, "room")), MinLabel: unit.FromMM(rapid.Float64Range(23, 28).Draw(t, "least")),
	}
}

func drawSpare(t *rapid.T, id string) spares.Spare {
	return spares.Spare{ID: id, Hub: drawEnd(t).Hub, Tyre: unit.FromMM(rapid.Float64Range(23, 50).Draw(t, "tyre")), Bare: rapid.Bool().Draw(t, "bare")}
}

func TestAnIdenticalCompleteWheelAlwaysFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end := drawEnd(t)
		spare := spares.Spare{ID: "a", Hub: end.Hub, Tyre: end.Room}
		if got := spares.Judge(end, &spare); got.Fit != spares.Yes {
			t.Errorf("%+v", got)
		}
	})
}

var rank = map[spares.Fit]int{spares.No: 0, spares.WithChange: 1, spares.Yes: 2}

func TestMoreRoomNeverHurts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end, spare := drawEnd(t), drawSpare(t, "a")
		wider := end
		wider.Room += unit.FromMM(rapid.Float64Range(0, 20).Draw(t, "more"))
		if before, after := spares.Judge(end, &spare).Fit, spares.Judge(wider, &spare).Fit; rank[after] < rank[before] {
			t.Errorf("%s, with more room %s", before, after)
		}
	})
}

func TestARotorOfAnotherSizeNeverFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end, spare := drawEnd(t), drawSpare(t, "a")
		if end.Brake == spares.Disc && spare.Brake == spares.Disc && !spare.Bare && end.Rotor != spare.Rotor && spares.Judge(end, &spare).Fit != spares.No {
			t.Errorf("%+v in %+v", spare, end)
		}
	})
}
