package ready_test

import (
	"reflect"
	"testing"

	"rimside/calc/check"
	"rimside/calc/ready"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

const today = unit.Day(20000)

// end is a sound end: a 40 mm tyre on a hooked rim of 25 mm, a rotor marked 1.5.
func end(side, wheel, tyreID string) ready.End {
	return ready.End{
		Side: side, Wheel: wheel, Tyre: tyreID, Built: check.Wheel{Brake: "disc", RotorMin: 1.5},
		Pair: tyre.Pair{Label: unit.FromMM(40), Inner: unit.FromMM(25), Profile: tyre.Hooked},
	}
}

func sound() ready.Bike {
	return ready.Bike{ID: "b", Ends: []ready.End{end("front", "wf", "tf"), end("rear", "wr", "tr")}}
}

// walk is a whole walk-around at a moment, so many days before today.
func walk(moment string, ago int) ready.Event {
	return ready.Event{Kind: ready.Walk, Day: today - unit.Day(ago), Moment: moment, Asked: 9, Looked: 9, Ended: true}
}

func on(ago int, e ready.Event) ready.Event {
	e.Day = today - unit.Day(ago)
	return e
}

func at(ms float64, e ready.Event) ready.Event {
	e.At = ms
	return e
}

func short(e ready.Event) ready.Event {
	e.Looked--
	return e
}

func unended(e ready.Event) ready.Event {
	e.Ended = false
	return e
}

func found(severity check.Severity, thing string) ready.Event {
	return ready.Event{Kind: ready.Finding, Day: today - 1, ID: "f " + thing, Severity: severity, Thing: thing}
}

func measured(what check.Measure, mm float64, thing string) ready.Event {
	return ready.Event{Kind: ready.Measured, Day: today - 1, What: string(what), MM: mm, Thing: thing}
}

func of(kind ready.Kind, e ready.Event) ready.Event {
	e.Kind = kind
	return e
}

func TestDecide(t *testing.T) {
	look := walk("evening", 0)
	crash, journey := of(ready.Crash, on(3, ready.Event{})), of(ready.Journey, on(3, ready.Event{}))
	mounted := of(ready.Mounted, on(3, ready.Event{Thing: "wf"}))
	rotor := measured(check.RotorThickness, 1.45, "wf")
	service := func(what, thing string, ago int) ready.Event {
		return of(ready.Service, on(ago, ready.Event{What: what, Thing: thing}))
	}
	arrival := func(left, ago int) ready.Event {
		return of(ready.Arrival, on(ago, ready.Event{Trip: "t", MustLeft: left}))
	}
	closed := of(ready.Closed, ready.Event{ID: "f wf", Day: today})
	elsewhere := func(e ready.Event) ready.Event { e.Bike = "other"; return e }
	for _, c := range []struct {
		about  string
		events []ready.Event
		want   ready.State
		codes  string
	}{
		{"nothing is noted", nil, ready.NotLookedAt, ""},
		{"a whole walk today", []ready.Event{look}, ready.NoFaultFound, ""},
		{"a whole walk seven days ago", []ready.Event{walk("start", 7)}, ready.NoFaultFound, ""},
		{"a whole walk eight days ago", []ready.Event{walk("evening", 8)}, ready.NotLookedAt, ""},
		{"a walk of tomorrow", []ready.Event{walk("evening", -1)}, ready.NotLookedAt, ""},
		{"a walk of another bike", []ready.Event{elsewhere(look)}, ready.NotLookedAt, ""},
		{"a walk not ended", []ready.Event{unended(look)}, ready.NotLookedAt, ""},
		{"a walk that asked nothing", []ready.Event{of(ready.Walk, on(0, ready.Event{Moment: "start", Ended: true}))}, ready.NotLookedAt, ""},

		{"a finding to stop", []ready.Event{look, found(check.Stop, "wf")}, ready.Stop, "finding "},
		{"to take care of", []ready.Event{look, found(check.Care, "tr")}, ready.Care, "finding "},
		{"to note", []ready.Event{look, found(check.Note, "wf")}, ready.NoFaultFound, ""},
		{"of the bike", []ready.Event{look, found(check.Stop, "")}, ready.Stop, "finding "},
		{"of the bike by its id", []ready.Event{look, found(check.Stop, "b")}, ready.Stop, "finding "},
		{"closed", []ready.Event{look, found(check.Stop, "wf"), closed}, ready.NoFaultFound, ""},
		{"another one closed", []ready.Event{look, found(check.Stop, "wr"), closed}, ready.Stop, "finding "},
		{"of another wheel", []ready.Event{look, found(check.Stop, "elsewhere")}, ready.NoFaultFound, ""},
		{"of this wheel, made on another bike", []ready.Event{look, elsewhere(found(check.Stop, "wf"))}, ready.Stop, "finding "},
		{"of another bike", []ready.Event{look, elsewhere(found(check.Stop, ""))}, ready.NoFaultFound, ""},
		{"by a clock that is ahead", []ready.Event{look, on(-1, found(check.Stop, "wf"))}, ready.Stop, "finding "},
		{"without a walk", []ready.Event{found(check.Care, "wf")}, ready.Care, "finding "},
		{"a stop and a care", []ready.Event{look, found(check.Care, "wr"), found(check.Stop, "wf")}, ready.Stop, "finding finding "},

		{"a rotor under its mark", []ready.Event{look, rotor}, ready.Stop, "measured "},
		{"a rotor at its mark", []ready.Event{look, measured(check.RotorThickness, 1.5, "wf")}, ready.NoFaultFound, ""},
		{"a rotor measured again, better", []ready.Event{look, rotor, on(0, measured(check.RotorThickness, 1.7, "wf"))}, ready.NoFaultFound, ""},
		{"a rotor measured again on the same day", []ready.Event{look, rotor, measured(check.RotorThickness, 1.7, "wf")}, ready.Stop, "measured "},
		{"the same with clocks", []ready.Event{look, at(5, rotor), at(6, measured(check.RotorThickness, 1.7, "wf"))}, ready.NoFaultFound, ""},
		{"a good rotor, then a bad one", []ready.Event{look, on(9, measured(check.RotorThickness, 1.7, "wf")), rotor}, ready.Stop, "measured "},
		{"a new rotor", []ready.Event{look, rotor, service("rotor_front", "wf", 0)}, ready.NoFaultFound, ""},
		{"a new rotor before", []ready.Event{look, rotor, service("rotor", "wf", 2)}, ready.Stop, "measured "},
		{"a new rotor on the other wheel", []ready.Event{look, rotor, service("rotor", "wr", 0)}, ready.Stop, "measured "},
		{"new pads for a rotor", []ready.Event{look, rotor, service("pads", "wf", 0)}, ready.Stop, "measured "},
		{"run-out of a rotor", []ready.Event{look, measured(check.RotorRunOut, 0.3, "wf")}, ready.Care, "measured "},
		{"pads of the bike", []ready.Event{look, measured(check.Pads, 0.5, "")}, ready.Stop, "measured "},
		{"room beside a tyre", []ready.Event{look, measured(check.Room, 1, "tr")}, ready.Stop, "measured "},
		{"what nobody limits", []ready.Event{look, measured("width", 41, "tf")}, ready.NoFaultFound, ""},

		{"a crash", []ready.Event{look, on(0, crash)}, ready.Stop, "crash "},
		{"a crash, a start-line walk after it", []ready.Event{crash, walk("start", 0)}, ready.Stop, "crash "},
		{"a crash, its walk after it", []ready.Event{crash, walk("crash", 2)}, ready.NoFaultFound, ""},
		{"a crash, its walk before it", []ready.Event{crash, walk("crash", 4)}, ready.Stop, "crash "},
		{"a crash, its walk not ended", []ready.Event{crash, unended(walk("crash", 2))}, ready.Stop, "crash "},
		{"a crash, its walk on the day, no clocks", []ready.Event{crash, walk("crash", 3)}, ready.Stop, "crash "},
		{"a crash, its walk on the day, later", []ready.Event{at(1, crash), at(2, walk("crash", 3))}, ready.NoFaultFound, ""},
		{"a crash, its walk on the day, earlier", []ready.Event{at(2, crash), at(1, walk("crash", 3))}, ready.Stop, "crash "},
		{"a crash, its walk long ago", []ready.Event{on(30, crash), walk("crash", 20)}, ready.NotLookedAt, ""},
		{"two crashes, one answered", []ready.Event{on(5, crash), walk("crash", 4), crash}, ready.Stop, "crash "},
		{"a crash of another bike", []ready.Event{look, elsewhere(crash)}, ready.NoFaultFound, ""},

		{"a journey", []ready.Event{walk("evening", 4), journey}, ready.Care, "journey "},
		{"a journey, a start-line walk after it", []ready.Event{journey, walk("start", 1)}, ready.Care, "journey "},
		{"a journey, the arrival's walk", []ready.Event{journey, walk("arrival", 1)}, ready.NoFaultFound, ""},
		{"a journey, an evening's walk", []ready.Event{journey, walk("evening", 1)}, ready.NoFaultFound, ""},
		{"a journey to come", []ready.Event{look, on(-2, journey)}, ready.NoFaultFound, ""},

		{"a wheel mounted", []ready.Event{walk("evening", 4), mounted}, ready.NotLookedAt, ""},
		{"a wheel mounted on the day of a walk", []ready.Event{walk("evening", 3), mounted}, ready.NotLookedAt, ""},
		{"a wheel mounted, a whole walk", []ready.Event{mounted, walk("start", 1)}, ready.NoFaultFound, ""},
		{"a wheel mounted, rows skipped", []ready.Event{mounted, short(walk("start", 1))}, ready.Care, "skipped "},
		{"another bike's wheel mounted", []ready.Event{look, on(0, of(ready.Mounted, ready.Event{Thing: "elsewhere"}))}, ready.NoFaultFound, ""},

		{"an arrival with steps left", []ready.Event{look, arrival(2, 1)}, ready.Stop, "arrival "},
		{"an arrival finished", []ready.Event{look, arrival(2, 1), arrival(0, 0)}, ready.NoFaultFound, ""},
		{"an arrival taken up again", []ready.Event{look, arrival(0, 1), arrival(1, 0)}, ready.Stop, "arrival "},

		{"a row skipped", []ready.Event{short(look)}, ready.Care, "skipped "},
		{"all rows skipped", []ready.Event{of(ready.Walk, on(0, ready.Event{Moment: "start", Asked: 9, Ended: true}))}, ready.Care, "skipped "},
		{"a row skipped, made good", []ready.Event{short(walk("start", 1)), walk("start", 0)}, ready.NoFaultFound, ""},
		{"a row skipped at the start, a whole evening's walk", []ready.Event{short(walk("start", 1)), look}, ready.NoFaultFound, ""},
		{"a row skipped in the evening, a whole start", []ready.Event{short(walk("evening", 1)), walk("start", 0)}, ready.Care, "skipped "},
		{"a row skipped twice", []ready.Event{short(walk("start", 1)), short(walk("start", 0))}, ready.Care, "skipped "},
		{"a row skipped long ago", []ready.Event{short(walk("evening", 9)), walk("start", 0)}, ready.NoFaultFound, ""},
	} {
		got := ready.Decide(sound(), c.events, today)
		codes := ""
		for _, r := range got.Reasons {
			codes += string(r.Code) + " "
		}
		if got.State != c.want || codes != c.codes {
			t.Errorf("%s: %s because of %q, want %s because of %q", c.about, got.State, codes, c.want, c.codes)
		}
	}
}

func TestRefusedPairs(t *testing.T) {
	for _, c := range []struct {
		about string
		edit  func(*tyre.Pair)
		want  tyre.Verdict
	}{
		{"sound", func(*tyre.Pair) {}, ""},
		{"28 on 25 without a hook", func(p *tyre.Pair) {
			*p = tyre.Pair{Label: unit.FromMM(28), Inner: unit.FromMM(25), Profile: tyre.Hookless, HooklessNamed: true}
		}, tyre.HooklessNarrow},
		{"not named", func(p *tyre.Pair) { p.Profile = tyre.Hookless }, tyre.NotForHookless},
		{"edge unknown", func(p *tyre.Pair) { p.Profile = tyre.Unknown }, tyre.NotForHookless},
		{"bead seats", func(p *tyre.Pair) { p.TyreBeadSeat, p.RimBeadSeat = unit.FromMM(584), unit.FromMM(622) }, tyre.BeadDiffers},
		{"width not known", func(p *tyre.Pair) { p.Label, p.Profile = 0, tyre.Hookless }, ""},
	} {
		bike := sound()
		c.edit(&bike.Ends[1].Pair)
		got := ready.Decide(bike, []ready.Event{walk("evening", 0)}, today)
		if (c.want == "") != (got.State == ready.NoFaultFound) || c.want != "" && (got.State != ready.Stop || got.Reasons[0].Refusal != c.want || got.Reasons[0].Thing != "wr") {
			t.Errorf("%s: %s %+v, want %s", c.about, got.State, got.Reasons, c.want)
		}
	}
}

func TestWorstFirstAndLastLook(t *testing.T) {
	events := []ready.Event{
		found(check.Care, "wf"), on(5, found(check.Stop, "tr")), on(2, measured(check.RotorThickness, 1.2, "wr")), short(walk("start", 1)), walk("evening", 30),
		unended(walk("evening", 0)),
	}
	got := ready.Decide(sound(), events, today)
	order := ""
	for _, r := range got.Reasons {
		order += r.Thing + " "
	}
	if order != "wr tr wf b " {
		t.Errorf("the order is %s", order)
	}
	if l := got.LastLook; l == nil || l.Moment != "start" || l.Looked != 8 {
		t.Errorf("the last look is %+v", l)
	}
	if r := got.Reasons[0]; r.Side != "rear" || r.Limit.MM != 1.5 || r.Limit.Edge != check.Below {
		t.Errorf("%+v", r)
	}
	if only := ready.Decide(sound(), events[4:5], today); only.State != ready.NotLookedAt || only.LastLook == nil {
		t.Errorf("an old walk: %+v", only)
	}
}

// What happened at the same time is told in one order, whichever came first.
func TestTiesAreTold(t *testing.T) {
	for _, pair := range [][2]ready.Event{
		{found(check.Stop, "wf"), found(check.Stop, "wr")}, {walk("start", 1), short(walk("start", 1))}, {walk("start", 1), walk("evening", 1)},
		{measured(check.RotorThickness, 1.2, "wf"), measured(check.RotorThickness, 1.3, "wf")},
	} {
		a := ready.Decide(sound(), []ready.Event{pair[0], pair[1]}, today)
		if b := ready.Decide(sound(), []ready.Event{pair[1], pair[0]}, today); !reflect.DeepEqual(a, b) {
			t.Errorf("%+v\n%+v", a, b)
		}
	}
}

// A spare is one end and no bike.
func TestSpare(t *testing.T) {
	spare := ready.Bike{Ends: []ready.End{end("rear", "wr", "tr")}}
	if got := ready.Decide(spare, []ready.Event{found(check.Stop, "wr"), found(check.Stop, "wf")}, today); got.State != ready.Stop || len(got.Reasons) != 1 {
		t.Errorf("%+v", got)
	}
}
