package due

import "rimside/calc/check"

func (l *list) sealant(at end) {
	if at.wheel.Setup == "tube" {
		return
	}
	days := l.every.Sealant
	if l.hot {
		days = l.every.SealantHot
	}
	e, known := l.past.last(at.side, "sealant")
	l.after("sealant_"+at.side, e, known, days, practice)
}

// disc asks for the rotor and the pads. A measured value beyond its limit is due from the day it was measured.
func (l *list) disc(at end) {
	if at.wheel.Brake == "rim" {
		return
	}
	l.worn("rotor_"+at.side, at, "rotor", check.RotorThickness, l.every.Rotor)
	l.worn("pads_"+at.side, at, "pads", check.Pads, l.every.Pads)
}

func (l *list) worn(id string, at end, kind string, what check.Measure, days int) {
	limits := check.LimitsOf(what, l.bike.Bike, at.wheel)
	if e, found := l.past.measured(at.side, kind); found && e.MM > 0 {
		if bad, _ := limits.Judge(e.MM); bad != "" {
			limit := limits.Care
			if bad == check.Stop {
				limit = limits.Stop
			}
			l.add(id, e.Day, Why{Code: PastLimit, Day: e.Day, MM: e.MM, Limit: limit, Severity: bad}, tradePage)
			return
		}
	}
	e, known := l.past.last(at.side, kind)
	l.after(id, e, known, days, ours)
}

// spokes of a newly built wheel settle in the first 100 km; after that they go by age.
func (l *list) spokes(at end) {
	id := "spokes_" + at.side
	built, isNew := l.past.last(at.side, "built")
	checked, known := l.past.last(at.side, "spokes")
	if isNew && (!known || checked.Day < built.Day) {
		if day, gone := l.past.reached(built.Day, l.every.NewSpokesKM); gone {
			l.add(id, day, Why{Code: NewSpokes, Day: built.Day, KM: l.every.NewSpokesKM}, manual)
			return
		}
		checked, known = built, true
	}
	l.after(id, checked, known, l.every.Spokes, ours)
}

func (l *list) bolts() {
	e, known := l.past.last("", "bolts")
	if moved, carried := l.past.last("", "transport"); carried && (!known || e.Day < moved.Day) {
		l.add("bolts", moved.Day, Why{Code: AfterMoving, Day: moved.Day}, practice)
		return
	}
	l.after("bolts", e, known, l.every.Bolts, ours)
}

// width is measured once a tyre is on its rim, and again when it has grown; of a tyre of which nobody noted when it was fitted, nobody
// is asked.
func (l *list) width(at end) {
	fitted, known := l.past.last(at.side, "fitted")
	if !known {
		return
	}
	switch e, measured := l.past.last(at.side, "width"); {
	case !measured || e.Day < fitted.Day:
		l.add("width_"+at.side, fitted.Day, Why{Code: Fitted, Day: fitted.Day}, practice)
	case e.Day < fitted.Day+GrowDays:
		l.add("width_"+at.side, fitted.Day+GrowDays, Why{Code: Grows, Day: fitted.Day, Days: GrowDays}, practice)
	}
}
