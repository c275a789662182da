package ready

import (
	"slices"
	"strings"

	"rimside/calc/check"
)

// renews is what a service makes new, so that what was measured before it no longer counts. A service is named as what is due is, or
// by the part alone.
var renews = []struct {
	service  string
	measures []check.Measure
}{
	{"rotor", []check.Measure{check.RotorThickness, check.RotorRunOut}},
	{"pads", []check.Measure{check.Pads}},
	{"spokes", []check.Measure{check.RimRunOut}},
	{"built", []check.Measure{check.RimRunOut, check.Wall}},
	{"rim", []check.Measure{check.RimRunOut, check.Wall}},
}

// measured are the values beyond their limits, of each thing the last one; where it is not known which is the last, the worst.
func (n noted) measured() []Reason {
	var out []Reason
	all := n.of(Measured)
	for _, m := range all {
		if n.remeasured(m, all) || n.renewed(m) {
			continue
		}
		if r, bad := n.judged(m); bad {
			out = append(out, r)
		}
	}
	return out
}

func (n noted) remeasured(m Event, all []Event) bool {
	return slices.ContainsFunc(all, func(later Event) bool {
		onBike := n.bike.thingOf(m) == n.bike.ID
		if onBike && later.Side != m.Side { // a value of one end says nothing of the other
			return false
		}
		return later.What == m.What && n.bike.sameThing(later, m) && later.after(m)
	})
}

func (n noted) renewed(m Event) bool {
	return slices.ContainsFunc(n.of(Service), func(s Event) bool {
		for _, r := range renews {
			if strings.HasPrefix(s.What, r.service) && slices.Contains(r.measures, check.Measure(m.What)) {
				return n.bike.sameThing(s, m) && s.after(m)
			}
		}
		return false
	})
}

// judged holds a value to its limits at the end where its thing is now; at the stricter one where that may be either.
func (n noted) judged(m Event) (Reason, bool) {
	worst := Reason{Code: OutOfLimits, Thing: n.bike.thingOf(m), Event: m}
	for _, end := range n.bike.endsOf(m) {
		limits := check.LimitsOf(check.Measure(m.What), n.bike.Bike, end.Built)
		severity, known := limits.Judge(m.MM)
		if !known || severity == "" || worst.Severity == check.Stop {
			continue
		}
		worst.Severity, worst.Side, worst.Limit = severity, end.Side, limits.Care
		if severity == check.Stop {
			worst.Limit = limits.Stop
		}
	}
	return worst, worst.Severity != ""
}
