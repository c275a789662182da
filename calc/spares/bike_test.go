package spares_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/spares"
	"rimside/calc/unit"
)

// ownBuild is how the rider sits on the bike that broke.
func ownBuild() spares.Build {
	return spares.Build{Saddle: unit.FromMM(742), Reach: unit.FromMM(520), Cleat: "three bolts", Pedals: spares.PedalHex}
}

func TestWhatToChangeOnASpareBike(t *testing.T) {
	for _, row := range []struct {
		about   string
		change  func(own *spares.Build, s *spares.SpareBike)
		fit     spares.Fit
		codes   []spares.Code
		tool    string
		minutes float64
	}{
		{about: "just alike", change: func(*spares.Build, *spares.SpareBike) {}, fit: spares.Yes},
		{about: "nearer than it is set", change: func(_ *spares.Build, s *spares.SpareBike) { s.Saddle, s.Reach = unit.FromMM(743), unit.FromMM(519) }, fit: spares.Yes},
		{about: "saddle higher", change: func(_ *spares.Build, s *spares.SpareBike) { s.Saddle = unit.FromMM(760) }, fit: spares.WithChange, codes: []spares.Code{spares.SetSaddle}, minutes: 1},
		{about: "spare's saddle not measured: still set to the rider's", change: func(_ *spares.Build, s *spares.SpareBike) { s.Saddle = 0 }, fit: spares.WithChange, codes: []spares.Code{spares.SetSaddle}, minutes: 1},
		{about: "rider's saddle not measured", change: func(own *spares.Build, _ *spares.SpareBike) { own.Saddle = 0 }, fit: spares.WithChange, codes: []spares.Code{spares.SaddleEye}, minutes: 1},
		{about: "longer", change: func(_ *spares.Build, s *spares.SpareBike) { s.Reach = unit.FromMM(525) }, fit: spares.WithChange, codes: []spares.Code{spares.Longer}},
		{about: "shorter", change: func(_ *spares.Build, s *spares.SpareBike) { s.Reach = unit.FromMM(500) }, fit: spares.WithChange, codes: []spares.Code{spares.Shorter}},
		{about: "reach not measured", change: func(own *spares.Build, _ *spares.SpareBike) { own.Reach = 0 }, fit: spares.WithChange, codes: []spares.Code{spares.ReachEye}, minutes: 0.5},
		{about: "another cleat, one tool", change: func(_ *spares.Build, s *spares.SpareBike) { s.Cleat, s.Pedals = "two bolts", spares.PedalHex }, fit: spares.WithChange, codes: []spares.Code{spares.MovePedal}, tool: spares.PedalHex, minutes: 3},
		{about: "another cleat, a tool each", change: func(_ *spares.Build, s *spares.SpareBike) { s.Cleat, s.Pedals = "two bolts", spares.PedalSpanner }, fit: spares.WithChange, codes: []spares.Code{spares.MovePedal}, tool: spares.PedalBoth, minutes: 3},
		{about: "no pedals on it", change: func(_ *spares.Build, s *spares.SpareBike) { s.Pedals = spares.PedalNone }, fit: spares.WithChange, codes: []spares.Code{spares.MovePedal}, tool: spares.PedalHex, minutes: 3},
		{about: "cleats not known: pedals come over", change: func(own *spares.Build, s *spares.SpareBike) {
			own.Cleat, s.Cleat, own.Pedals, s.Pedals = "", "", "", ""
		}, fit: spares.WithChange, codes: []spares.Code{spares.MovePedal}, minutes: 3},
		{about: "the spare's tool where the rider's is not known", change: func(own *spares.Build, s *spares.SpareBike) {
			own.Cleat, own.Pedals, s.Pedals = "", "", spares.PedalSpanner
		}, fit: spares.WithChange, codes: []spares.Code{spares.MovePedal}, tool: spares.PedalSpanner, minutes: 3},
		{about: "all of it", change: func(_ *spares.Build, s *spares.SpareBike) {
			s.Build = spares.Build{Saddle: unit.FromMM(700), Reach: unit.FromMM(530)}
		}, fit: spares.WithChange, codes: []spares.Code{spares.SetSaddle, spares.Longer, spares.MovePedal}, tool: spares.PedalHex, minutes: 4},
		{about: "out, and otherwise alike", change: func(_ *spares.Build, s *spares.SpareBike) { s.OutWith = "87" }, fit: spares.No, codes: []spares.Code{spares.IsOut}},
		{about: "may not be ridden", change: func(_ *spares.Build, s *spares.SpareBike) { s.Stopped = true }, fit: spares.No, codes: []spares.Code{spares.IsStopped}},
	} {
		own := ownBuild()
		spare := spares.SpareBike{ID: "a", Build: own}
		row.change(&own, &spare)
		got := spares.JudgeBike(own, &spare)
		var codes []spares.Code
		tool := ""
		for _, r := range got.Reasons {
			codes = append(codes, r.Code)
			tool += r.What
		}
		if got.Fit != row.fit || !slices.Equal(codes, row.codes) || tool != row.tool || got.Minutes() != row.minutes {
			t.Errorf("%s: %s for %v with %q in %g min, want %s for %v with %q in %g min", row.about, got.Fit, codes, tool, got.Minutes(), row.fit, row.codes, row.tool, row.minutes)
		}
	}
}

func TestTheNearestBikeStandsFirst(t *testing.T) {
	set := func(id string, saddle, reach float64, cleat string) spares.SpareBike {
		return spares.SpareBike{ID: id, Build: spares.Build{Saddle: unit.FromMM(saddle), Reach: unit.FromMM(reach), Cleat: cleat}}
	}
	alike, pedals, near, far := set("alike", 742, 520, "three bolts"), set("pedals", 742, 520, ""), set("near", 760, 521, "three bolts"), set("far", 742, 535, "three bolts")
	half, none, out := set("half", 742, 0, "three bolts"), set("", 0, 0, ""), set("out", 742, 520, "three bolts")
	none.ID, out.OutWith = "none", "87"
	ranked := spares.MatchBikes(ownBuild(), []spares.SpareBike{out, none, half, far, near, pedals, alike})
	for i, want := range []string{"alike", "pedals", "near", "far", "half", "none", "out"} { // 20 mm away, then 30: reach counts twice
		if ranked[i].Spare.ID != want {
			t.Errorf("place %d: %s, want %s", i, ranked[i].Spare.ID, want)
		}
	}
}

func drawBuild(t *rapid.T, all bool) spares.Build {
	mm := func(name string, from, to float64) unit.Metre {
		if !all && rapid.Bool().Draw(t, name+" not known") {
			return 0
		}
		return unit.FromMM(rapid.Float64Range(from, to).Draw(t, name))
	}
	b := spares.Build{Saddle: mm("saddle", 600, 850), Reach: mm("reach", 450, 600)}
	b.Cleat = rapid.SampledFrom([]string{"two bolts", "three bolts"}).Draw(t, "cleat")
	b.Pedals = rapid.SampledFrom([]string{spares.PedalHex, spares.PedalSpanner}).Draw(t, "pedals")
	return b
}

func drawBikes(t *rapid.T) []spares.SpareBike {
	bikes := make([]spares.SpareBike, rapid.IntRange(1, 8).Draw(t, "bikes"))
	for i := range bikes {
		bikes[i] = spares.SpareBike{ID: string(rune('b' + i)), Build: drawBuild(t, false)}
		if rapid.IntRange(0, 4).Draw(t, "out") == 0 {
			bikes[i].OutWith = "87"
		}
		bikes[i].Stopped = rapid.IntRange(0, 4).Draw(t, "stopped") == 0
	}
	return bikes
}

func TestAnIdenticalBikeComesFirstAndIsGivenAsItIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		own := drawBuild(t, true)
		same := spares.SpareBike{ID: "a", Build: own}
		first := spares.MatchBikes(own, append(drawBikes(t), same))[0]
		if first.Spare.ID != "a" || first.Fit != spares.Yes || len(first.Reasons) > 0 {
			t.Errorf("first is %+v of %+v", first, first.Spare)
		}
	})
}

// worse adds one difference to a bike.
func worse(t *rapid.T, own spares.Build, s spares.SpareBike) spares.SpareBike {
	further := func(own, have unit.Metre) unit.Metre {
		by := unit.FromMM(rapid.Float64Range(0.1, 60).Draw(t, "by"))
		if have < own {
			return have - by
		}
		return have + by
	}
	switch rapid.IntRange(0, 6).Draw(t, "what") {
	case 0:
		if s.Saddle != 0 {
			s.Saddle = further(own.Saddle, s.Saddle)
		}
	case 1:
		if s.Reach != 0 {
			s.Reach = further(own.Reach, s.Reach)
		}
	case 2:
		s.Saddle = 0
	case 3:
		s.Reach = 0
	case 4:
		s.Cleat = "none of these"
	case 5:
		s.OutWith = "41"
	case 6:
		s.Stopped = true
	}
	return s
}

func TestADifferenceMoreNeverRanksABikeHigher(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		own, bikes := drawBuild(t, false), drawBikes(t)
		at := rapid.IntRange(0, len(bikes)-1).Draw(t, "which")
		id := bikes[at].ID
		place := func() int {
			return slices.IndexFunc(spares.MatchBikes(own, bikes), func(v spares.BikeVerdict) bool { return v.Spare.ID == id })
		}
		before := place()
		bikes[at] = worse(t, own, bikes[at])
		if after := place(); after < before {
			t.Errorf("from place %d to place %d: %+v of %+v", before, after, bikes[at], own)
		}
	})
}

func TestWhatIsOutOrMayNotBeRiddenIsNeverGiven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		behind := false
		for _, v := range spares.MatchBikes(drawBuild(t, false), drawBikes(t)) {
			barred := v.Spare.OutWith != "" || v.Spare.Stopped
			if barred != (v.Fit == spares.No) || behind && !barred {
				t.Errorf("%+v is told %s", v.Spare, v.Fit)
			}
			behind = barred
		}
	})
}
