package registry

import (
	"slices"
	"strconv"

	"rimside/calc/check"
	"rimside/calc/ready"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// unjudged are what people measure besides, and what no limit holds: a caller may send all that was noted.
var unjudged = []string{"width", "inner", "load", "gauge_error", "sealant", "as_built", "spoke_tension"}

const (
	lastMoment = 8.64e15 // ms, the last that the language of browsers can write
	mostRows   = 1000    // of a walk-around, and steps of an arrival
)

var readyEvents = listOf("events", 0, maxEvents,
	oneOf("kind", ready.Kinds()),
	date("day"),
	num("at", "ms", 0, lastMoment).optional(),
	label("bike", idLength).optional(),
	label("thing", idLength).optional(),
	label("id", idLength).optional(),
	oneOf("severity", []string{string(check.Note), string(check.Care), string(check.Stop)}).optional(),
	label("item", idLength).optional(),
	label("finding", idLength).optional(),
	label("what", idLength).optional(),
	num("mm", "mm", 0, 3000).optional(),
	oneOf("side", sides).optional(),
	oneOf("moment", check.Moments()).optional(),
	&Field{Name: "asked", Kind: integer, Max: mostRows, Optional: true},
	&Field{Name: "looked", Kind: integer, Max: mostRows, Optional: true},
	yesNo("ended").instead(false),
	label("trip", idLength).optional(),
	&Field{Name: "must_left", Kind: integer, Max: mostRows, Optional: true},
)

// needed are the members that an event of a kind cannot do without.
var needed = map[ready.Kind][]string{
	ready.Finding: {"id", "severity"}, ready.Closed: {"finding"}, ready.Measured: {"what", "mm"}, ready.Walk: {"moment", "asked", "looked"},
	ready.Mounted: {"thing"}, ready.Arrival: {"must_left"}, ready.Service: {"what"},
}

var readyCalculation = calculation{
	name:  "ready",
	table: []*Field{builtBike, date("today"), readyEvents},
	example: `{"bike":{"id":"bike 1","front":{"wheel":"wheel 1","tyre":"tyre 1","label_mm":40,"inner_mm":25,"profile":"hooked","brake":"disc","rotor_min_mm":1.5},` +
		`"rear":{"wheel":"wheel 2","tyre":"tyre 2","label_mm":40,"inner_mm":25,"profile":"hookless","hookless_ok":true,"brake":"disc","rotor_min_mm":1.5}},"today":"2026-07-14",` +
		`"events":[{"kind":"walk","bike":"bike 1","moment":"evening","day":"2026-07-13","at":1783969560000,"asked":20,"looked":20,"ended":true},` +
		`{"kind":"finding","id":"finding 1","thing":"bike 1","day":"2026-07-13","at":1783969800000,"severity":"stop","item":"bar.levers"},` +
		`{"kind":"closed","finding":"finding 1","day":"2026-07-14"},{"kind":"measured","thing":"wheel 2","what":"rotor_thickness","mm":1.45,"day":"2026-07-12"},` +
		`{"kind":"service","thing":"wheel 2","what":"rotor","day":"2026-07-13"},{"kind":"journey","bike":"bike 1","day":"2026-07-11"},` +
		`{"kind":"arrival","bike":"bike 1","trip":"trip 1","day":"2026-07-11","must_left":0},{"kind":"mounted","thing":"wheel 2","day":"2026-07-10"},` +
		`{"kind":"crash","bike":"bike 2","day":"2026-07-14"},{"kind":"walk","moment":"start","day":"2026-07-14","asked":9,"looked":8,"ended":true}]}`,
	together: checkReadyEvents,
	run: func(v values) (any, *Error) {
		return readyJSON(ready.Decide(readyBikeOf(v.in("bike")), readyEventsOf(v.items("events")), v.day("today"))), nil
	},
}

// checkReadyEvents holds each event to what its kind cannot do without.
func checkReadyEvents(v values) *Error {
	var faults *Error
	measures := slices.Concat(check.Measures(), unjudged)
	for i, e := range v.items("events") {
		kind, at := ready.Kind(e.text("kind")), "events."+strconv.Itoa(i)
		for _, name := range needed[kind] {
			if !e.has(name) {
				faults = together(faults, wrong(CodeMissing, at+"."+name, "with", at+".kind"))
			}
		}
		if what := e.text("what"); kind == ready.Measured && what != "" && !slices.Contains(measures, what) {
			faults = together(faults, wrong(CodeChoice, at+".what", "choices", measures))
		}
	}
	return faults
}

func readyEventsOf(items []values) []ready.Event {
	out := make([]ready.Event, len(items))
	for i, v := range items {
		out[i] = readyEventOf(ready.Kind(v.text("kind")), v)
	}
	return out
}

func readyEventOf(kind ready.Kind, v values) ready.Event {
	e := ready.Event{
		Kind: kind, Day: v.day("day"), At: v.num("at"), Bike: v.text("bike"), Thing: v.text("thing"), ID: v.text("id"),
		Severity: check.Severity(v.text("severity")), Item: v.text("item"), What: v.text("what"), MM: v.num("mm"), Side: v.text("side"),
		Moment: v.text("moment"), Asked: int(v.num("asked")), Looked: int(v.num("looked")), Ended: v.yes("ended"),
		Trip: v.text("trip"), MustLeft: int(v.num("must_left")),
	}
	if kind == ready.Closed {
		e.ID = v.text("finding")
	}
	return e
}

func readyBikeOf(v values) ready.Bike {
	bike := ready.Bike{Bike: builtBikeOf(v).Bike, ID: v.text("id")}
	for _, side := range sides {
		if !v.has(side) {
			continue
		}
		end := v.in(side)
		bike.Ends = append(bike.Ends, ready.End{
			Side: side, Wheel: end.text("wheel"), Tyre: end.text("tyre"), Built: builtEndOf(v, side), Pair: pairOnRim(end),
		})
	}
	return bike
}

// pairOnRim is the tyre on the rim as far as it is known. An edge that nobody named is an unknown one; a bead seat that nobody named
// is the other's.
func pairOnRim(end values) tyre.Pair {
	mm := func(name string) unit.Metre { return unit.FromMM(end.num(name)) }
	p := tyre.Pair{
		TyreBeadSeat: mm("tyre_bead_seat_mm"), RimBeadSeat: mm("bead_seat_mm"), Label: mm("label_mm"), Inner: mm("inner_mm"),
		Profile: tyre.Profile(end.text("profile")), HooklessNamed: end.yes("hookless_ok"),
		Table: tyre.Table{MinLabel: mm("table_min_label_mm"), MaxLabel: mm("table_max_label_mm")},
	}
	if p.Profile == "" {
		p.Profile = tyre.Unknown
	}
	if p.TyreBeadSeat == 0 || p.RimBeadSeat == 0 {
		p.TyreBeadSeat = p.RimBeadSeat
	}
	return p
}

func readyJSON(a ready.Answer) fields {
	reasons := make([]any, len(a.Reasons))
	for i, r := range a.Reasons {
		reasons[i] = fields{
			{"code", string(r.Code)}, {"thing", r.Thing}, {"severity", string(r.Severity)}, {"day", r.Event.Day.String()}, {"values", whyNot(r)},
		}
	}
	var look any
	if l := a.LastLook; l != nil {
		look = fields{{"moment", l.Moment}, {"day", l.Day.String()}, {"asked", l.Asked}, {"looked", l.Looked}}
	}
	return fields{{"state", string(a.State)}, {"reasons", reasons}, {"last_look", look}}
}

// whyNot are the figures and keys of a reason; of what was not told there is none.
func whyNot(r ready.Reason) fields {
	out := fields{}
	say := func(name, text string) {
		if text != "" {
			out = append(out, field{name, text})
		}
	}
	if r.Event.At > 0 {
		out = append(out, field{"at", r.Event.At})
	}
	switch r.Code {
	case ready.Code(ready.Finding):
		say("id", r.Event.ID)
		say("item", r.Event.Item)
	case ready.OutOfLimits:
		say("what", r.Event.What)
		say("side", r.Side)
		out = append(out, fields{{"mm", r.Event.MM}, {"when", string(r.Limit.Edge)}, {"limit_mm", r.Limit.MM}}...)
	case ready.PairRefused:
		say("why", string(r.Refusal))
		say("side", r.Side)
		out = append(out, fields{{"label_mm", tidy(r.Pair.Label.MM())}, {"inner_mm", tidy(r.Pair.Inner.MM())}}...)
	case ready.Unfinished:
		say("trip", r.Event.Trip)
		out = append(out, field{"must_left", r.Event.MustLeft})
	case ready.Skipped:
		say("moment", r.Event.Moment)
		out = append(out, fields{{"asked", r.Event.Asked}, {"looked", r.Event.Looked}, {"skipped", r.Event.Asked - r.Event.Looked}}...)
	}
	return out
}

func readyAnswer() *Field {
	return result(key("state", ready.States()...),
		parts("reasons", key("code", ready.Codes()...), wording("thing"), key("severity", "stop", "care"), onDay("day"), valuesOf("values")),
		part("last_look", key("moment", check.Moments()...), onDay("day"), tally("asked", ""), tally("looked", "")).nullable())
}
