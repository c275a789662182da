package salt_test

import (
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/salt"
	"rimside/calc/unit"
)

var (
	good   = salt.Wheel{Rim: salt.Aluminium, Nipple: salt.Brass, Spoke: salt.Stainless, Hub: salt.Aluminium, Bearing: salt.Steel}
	carbon = salt.Wheel{Rim: salt.Carbon, Nipple: salt.Aluminium, Spoke: salt.Stainless, Hub: salt.Aluminium, Bearing: salt.Steel}
	noble  = salt.Wheel{Rim: salt.Carbon, Nipple: salt.Titanium, Spoke: salt.Carbon, Hub: salt.Titanium, Bearing: salt.Titanium}
)

// washedAfter rides an hour on five days a week and returns the day, from 1, on which a wash becomes due.
func washedAfter(t *testing.T, wheel salt.Wheel) int {
	t.Helper()
	var log []salt.Entry
	for day := range 60 {
		if day%7 < 5 {
			log = append(log, salt.Entry{Day: unit.Day(day), Kind: salt.Indoor, Hours: 1, Sweat: "mean"})
		}
		if due := salt.Decide(wheel, log, unit.Day(day)).Due; due != nil {
			if *due != unit.Day(day) {
				t.Errorf("on day %d it was due on %v", day, *due)
			}
			return day + 1
		}
	}
	t.Fatal("never due")
	return 0
}

// Common practice: a good wheel that is ridden indoors gets a wet wash every one to two weeks, sooner with aluminium nipples in carbon.
func TestWashIsDueAsPracticeHasIt(t *testing.T) {
	usual, sooner, later := washedAfter(t, good), washedAfter(t, carbon), washedAfter(t, noble)
	if usual < 7 || usual > 14 {
		t.Errorf("a good wheel is washed after %d days", usual)
	}
	if sooner >= usual || later <= usual {
		t.Errorf("strong %d, usual %d, mild %d days", sooner, usual, later)
	}
	// What is not known is no permission: no later than the strongest pair that it could be.
	if unknown := washedAfter(t, salt.Wheel{}); unknown != sooner {
		t.Errorf("an unknown wheel is washed after %d days, a strong pair after %d", unknown, sooner)
	}
	partly := noble
	partly.Hub = ""
	if got := washedAfter(t, partly); got != usual {
		t.Errorf("a mild wheel with an unknown hub is washed after %d days, a usual one after %d", got, usual)
	}
}

func TestIndex(t *testing.T) {
	hour := salt.SweatRate * salt.DripShare // litres an hour that land on the bike
	for name, c := range map[string]struct {
		log   []salt.Entry
		grams float64
	}{
		"nothing":                  {nil, 0},
		"an hour at each sweat":    {[]salt.Entry{{1, "indoor", 1, "low"}, {1, "indoor", 1, "mean"}, {2, "indoor", 1, "high"}}, hour * (1.06 + 2.10 + 4.14)},
		"sweat not known":          {[]salt.Entry{{1, "indoor", 2, ""}}, hour * 2 * 2.10},
		"dry adds nothing":         {[]salt.Entry{{1, "dry", 9, ""}}, 0},
		"wet and salted":           {[]salt.Entry{{1, "wet", 2, ""}, {2, "salted", 2, ""}}, 2*0.05 + 2*1.0},
		"a wipe takes hardly any":  {[]salt.Entry{{1, "salted", 1, ""}, {2, "wipe", 0, ""}}, 0.95},
		"a wash takes most":        {[]salt.Entry{{1, "salted", 1, ""}, {2, "wash", 0, ""}}, 0.1},
		"a wash after the ride":    {[]salt.Entry{{1, "wash", 0, ""}, {1, "salted", 1, ""}}, 0.1},
		"wipe, then wash":          {[]salt.Entry{{1, "wash", 0, ""}, {1, "wipe", 0, ""}, {1, "salted", 1, ""}}, 0.095},
		"out of order":             {[]salt.Entry{{3, "salted", 1, ""}, {2, "wash", 0, ""}, {1, "salted", 5, ""}}, 1.5},
		"tomorrow does not count":  {[]salt.Entry{{10, "salted", 1, ""}, {11, "salted", 1, ""}, {12, "wash", 0, ""}}, 1},
		"a kind from a newer book": {[]salt.Entry{{1, "sea", 1, ""}}, 0},
	} {
		near(t, name, salt.Decide(good, c.log, 10).Grams, c.grams, 1e-12)
	}
}

// Due from the day it was reached, not due after the wash, due anew later; today's place in between decides.
func TestDueDay(t *testing.T) {
	log := []salt.Entry{{5, "salted", 3, ""}, {7, "indoor", 1, ""}, {9, "wash", 0, ""}, {20, "salted", 2, ""}}
	for today, want := range map[unit.Day]unit.Day{4: -1, 5: 5, 8: 5, 9: -1, 19: -1, 20: 20, 90: 20} {
		got := salt.Decide(good, log, today).Due
		if want < 0 && got != nil || want >= 0 && (got == nil || *got != want) {
			t.Errorf("on day %d due %v, want %v", today, got, want)
		}
	}
}

func TestWhyNamesTheWorstPair(t *testing.T) {
	for about, c := range map[string]struct {
		wheel  salt.Wheel
		code   salt.Code
		rank   salt.Rank
		washAt float64
		anode  salt.Material
	}{
		"usual": {good, salt.KnownPair, salt.Usual, 2.0, salt.Aluminium}, "strong": {carbon, salt.KnownPair, salt.Strong, 1.0, salt.Aluminium},
		"not known": {salt.Wheel{}, salt.UnknownPair, salt.Strong, 1.0, ""},
		"one metal": {salt.Wheel{Rim: salt.Titanium, Nipple: salt.Titanium, Spoke: salt.Titanium, Hub: salt.Titanium, Bearing: salt.Titanium}, salt.NoPair, salt.Mild, 2.6, ""},
	} {
		why := salt.Decide(c.wheel, []salt.Entry{{1, "salted", 1.23, ""}}, 2).Why
		if why.Code != c.code || why.Rank != c.rank || why.WashAt != c.washAt || why.Anode != c.anode || why.Grams != 1.23 {
			t.Errorf("%s: %+v", about, why)
		}
	}
}

// Stainless spokes in an aluminium hub are usual; aluminium in carbon is a known way to fail.
func TestRankOfACouple(t *testing.T) {
	for _, c := range []struct {
		wheel salt.Wheel
		where string
		want  salt.Rank
	}{
		{good, "spoke_hub", salt.Usual}, {good, "rim_nipple", salt.Usual}, {carbon, "rim_nipple", salt.Strong},
		{salt.Wheel{Rim: salt.Aluminium, Nipple: salt.Aluminium}, "rim_nipple", salt.Within},
	} {
		for _, couple := range c.wheel.Couples() {
			if couple.Where == c.where && couple.Rank() != c.want {
				t.Errorf("%s of %+v is %s, want %s", c.where, c.wheel, couple.Rank(), c.want)
			}
		}
	}
}

func drawLog(t *rapid.T) []salt.Entry {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) salt.Entry {
		return salt.Entry{
			Day: unit.Day(rapid.IntRange(0, 40).Draw(t, "day")), Kind: salt.Kind(rapid.SampledFrom(salt.Kinds()).Draw(t, "kind")),
			Hours: rapid.Float64Range(0, 100).Draw(t, "hours"), Sweat: rapid.SampledFrom(append(salt.Sweats(), "")).Draw(t, "sweat"),
		}
	}), 0, 30).Draw(t, "log")
}

// The index never falls from one day to the next without a wash or a wipe.
func TestFallsOnlyByCleaning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log := drawLog(t)
		before := 0.0
		for today := range unit.Day(41) {
			cleaned := false
			for _, e := range log {
				cleaned = cleaned || e.Day == today && (e.Kind == salt.Wipe || e.Kind == salt.Wash)
			}
			now := salt.Decide(good, log, today).Grams
			if now < before && !cleaned {
				t.Fatalf("on day %d it fell from %v to %v", today, before, now)
			}
			before = now
		}
	})
}

// More hours never lower it; a wash never raises it and never takes more than there is.
func TestHoursRaiseAndWashesLower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		log := append(drawLog(t), salt.Entry{Day: 3, Kind: salt.Indoor, Hours: 1})
		as := salt.Decide(good, log, 41).Grams
		more := append([]salt.Entry(nil), log...)
		more[rapid.IntRange(0, len(log)-1).Draw(t, "which")].Hours += rapid.Float64Range(0, 50).Draw(t, "by")
		if got := salt.Decide(good, more, 41).Grams; got < as-1e-9 {
			t.Fatalf("more hours lowered %v to %v", as, got)
		}
		wash := salt.Entry{Day: unit.Day(rapid.IntRange(0, 41).Draw(t, "washed")), Kind: salt.Wash}
		if got := salt.Decide(good, append(log, wash), 41).Grams; got > as+1e-9 || got < 0 {
			t.Fatalf("a wash made %v of %v", got, as)
		}
	})
}
