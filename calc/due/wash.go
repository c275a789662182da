package due

import (
	"rimside/calc/check"
	"rimside/calc/salt"
)

// wash is due by the wheel that needs it sooner.
func (l *list) wash() {
	var log []salt.Entry
	for _, e := range l.past {
		if kind, counts := saltKind(e); counts {
			log = append(log, salt.Entry{Day: e.Day, Kind: kind, Hours: e.Hours, Sweat: e.Sweat})
		}
	}
	var first *salt.Answer
	for _, end := range []struct {
		wheel   check.Wheel
		bearing salt.Material
	}{{l.bike.Front, l.bike.FrontBearing}, {l.bike.Rear, l.bike.RearBearing}} {
		own := log
		if end.wheel.Spared {
			own = salt.Spared(log)
		}
		a := salt.Decide(metals(end.wheel, end.bearing), own, l.today)
		if a.Due != nil && (first == nil || *a.Due < *first.Due) {
			first = &a
		}
	}
	if first != nil {
		l.add("wash", *first.Due, Why{Code: SaltyBike, Day: *first.Due, Salt: first.Why}, ours)
	}
}

func metals(w check.Wheel, bearing salt.Material) salt.Wheel {
	return salt.Wheel{
		Rim: salt.Material(w.Rim), Nipple: salt.Material(w.Nipple), Spoke: salt.Material(w.Spoke), Hub: salt.Material(w.Hub), Bearing: bearing,
	}
}

// saltKind is what an event is to the log of salt. A ride in conditions that nobody noted counts as wet.
func saltKind(e Event) (salt.Kind, bool) {
	switch {
	case e.Kind == "wash" || e.Kind == "wipe":
		return salt.Kind(e.Kind), true
	case e.Kind != "ride":
		return "", false
	case e.Conditions == "":
		return salt.Wet, true
	}
	return salt.Kind(e.Conditions), true
}
