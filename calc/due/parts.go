package due

import (
	"strconv"

	"rimside/calc/check"
)

func (l *list) sealant(at end) {
	if at.wheel.Setup == "tube" {
		return
	}
	days := l.every.Sealant
	if l.hot {
		days = l.every.SealantHot
	}
	e, known := l.past.last(at.side, "sealant")
	l.after("sealant_"+at.side, at.word+" sealant", e, known, days, "Last filled or looked at", practice)
}

// disc asks for the rotor and the pads. A measured value beyond its limit is due from the day it was measured.
func (l *list) disc(at end) {
	if at.wheel.Brake == "rim" {
		return
	}
	l.worn("rotor_"+at.side, at.word+" rotor thickness", at, "rotor", check.RotorThickness, l.every.Rotor)
	l.worn("pads_"+at.side, at.word+" disc pads", at, "pads", check.Pads, l.every.Pads)
}

func (l *list) worn(id, title string, at end, kind string, what check.Measure, days int) {
	limits := check.LimitsOf(what, l.bike.Bike, at.wheel)
	if e, found := l.past.measured(at.side, kind); found && e.MM > 0 {
		if bad, _ := limits.Judge(e.MM); bad != "" {
			l.add(id, title, e.Day, "Measured "+mm(e.MM)+" on "+e.Day.String()+". "+sentence(limits.Words()), "trade page")
			return
		}
	}
	e, known := l.past.last(at.side, kind)
	l.after(id, title, e, known, days, "Last looked at or new", ours)
}

// spokes of a newly built wheel settle in the first 100 km; after that they go by age.
func (l *list) spokes(at end) {
	id, title := "spokes_"+at.side, at.word+" spoke tension"
	built, isNew := l.past.last(at.side, "built")
	checked, known := l.past.last(at.side, "spokes")
	if isNew && (!known || checked.Day < built.Day) {
		if day, gone := l.past.reached(built.Day, l.every.NewSpokesKM); gone {
			l.add(id, title, day, "Built on "+built.Day.String()+", "+short(l.every.NewSpokesKM)+" km ridden since: new spokes settle.", manual)
			return
		}
		checked, known = built, true
	}
	l.after(id, title, checked, known, l.every.Spokes, "Last checked or built", ours)
}

func (l *list) bolts() {
	e, known := l.past.last("", "bolts")
	if moved, carried := l.past.last("", "transport"); carried && (!known || e.Day < moved.Day) {
		l.add("bolts", "Bolts by torque", moved.Day, "Carried on "+moved.Day.String()+", and bolts not checked since.", practice)
		return
	}
	l.after("bolts", "Bolts by torque", e, known, l.every.Bolts, "Last checked", ours)
}

func mm(x float64) string { return short(x) + " mm" }

func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// sentence begins with a capital and ends with a full stop.
func sentence(text string) string {
	if text[0] >= 'a' && text[0] <= 'z' {
		text = string(text[0]-'a'+'A') + text[1:]
	}
	return text + "."
}
