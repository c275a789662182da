package spares

import (
	"cmp"
	"math"
	"slices"

	"rimside/calc/unit"
)

// Build is how a whole bike is set up for a rider. Zero and empty are not known.
type Build struct {
	Saddle unit.Metre // height
	Reach  unit.Metre // saddle to bar
	Cleat  string     // what the pedals take, as the trade names it
	Pedals string     // what turns the pedals: PedalHex, PedalSpanner, PedalNone
}

// What turns a pedal out of its crank.
const (
	PedalHex     = "hex"
	PedalSpanner = "spanner"
	PedalNone    = "none" // there are no pedals on this bike
	PedalBoth    = "both" // of a reason: the two bikes take a tool each
)

// Pedals lists what a bike may say of its pedals.
func Pedals() []string { return []string{PedalSpanner, PedalHex, PedalNone} }

// SpareBike is a whole bike in the car.
type SpareBike struct {
	ID string
	Build
	OutWith string // who has it; "" for nobody
	Stopped bool   // may not be ridden
}

// What is to be changed on a whole bike. IsOut and IsStopped are told of it too.
const (
	SetSaddle Code = "saddle"        // to the rider's height
	SaddleEye Code = "saddle_by_eye" // the rider's height is not known
	Longer    Code = "longer"        // in reach: nothing that is changed at the roadside
	Shorter   Code = "shorter"
	ReachEye  Code = "reach_by_eye" // not known of one of the two
	MovePedal Code = "pedals"       // the rider's own come over
)

// BikeCodes lists the reasons.
func BikeCodes() []string {
	var out []string
	for _, c := range []Code{IsOut, IsStopped, SetSaddle, SaddleEye, Longer, Shorter, ReachEye, MovePedal} {
		out = append(out, string(c))
	}
	return out
}

const (
	// SaddleMinutes is for one screw and a tape measure (our choice, as MoveMinutes).
	SaddleMinutes = 1.0
	// PedalMinutes is for a pair of pedals from one bike to the other (our choice).
	PedalMinutes = 3.0
	// SetWithin is a millimetre as it is read off a tape: nobody sets a saddle nearer at the roadside (our choice).
	SetWithin = unit.Metre(1.5e-3)
	// ReachWeight is how much more a millimetre of reach counts than one of saddle height (our choice): it takes another stem.
	ReachWeight = 2.0
)

// BikeVerdict is one spare bike judged for one rider.
type BikeVerdict struct {
	Spare   *SpareBike
	Fit     Fit
	Reasons []Reason
	unknown int        // measures that cannot be compared
	apart   unit.Metre // how far the measures lie apart, reach counting more
}

// Minutes is how long all its changes take.
func (v BikeVerdict) Minutes() float64 { return minutes(v.Reasons) }

// MatchBikes judges every spare bike for the one that the rider sits on otherwise, the best first: what can be given, then of which
// most is known, since the others have to be tried, then the nearest; of equals the one that keeps its pedals, then by id.
func MatchBikes(own Build, bikes []SpareBike) []BikeVerdict {
	out := make([]BikeVerdict, len(bikes))
	for i := range bikes {
		out[i] = JudgeBike(own, &bikes[i])
	}
	slices.SortStableFunc(out, func(a, b BikeVerdict) int {
		return cmp.Or(cmp.Compare(last(a), last(b)), cmp.Compare(a.unknown, b.unknown), cmp.Compare(a.apart, b.apart),
			cmp.Compare(a.Minutes(), b.Minutes()), cmp.Compare(a.Spare.ID, b.Spare.ID))
	})
	return out
}

// last puts what cannot be given behind the rest.
func last(v BikeVerdict) int {
	if v.Fit == No {
		return 1
	}
	return 0
}

// JudgeBike says what to change on one spare bike. One that is out or may not be ridden is never given.
func JudgeBike(own Build, s *SpareBike) BikeVerdict {
	v := BikeVerdict{Spare: s, Fit: Yes}
	switch {
	case s.OutWith != "":
		return BikeVerdict{Spare: s, Fit: No, Reasons: []Reason{{Code: IsOut}}}
	case s.Stopped:
		return BikeVerdict{Spare: s, Fit: No, Reasons: []Reason{{Code: IsStopped}}}
	}
	v.saddle(own.Saddle, s.Saddle)
	v.reach(own.Reach, s.Reach)
	if own.Cleat == "" || own.Cleat != s.Cleat || s.Pedals == PedalNone {
		v.Reasons = append(v.Reasons, Reason{Code: MovePedal, What: pedalTool(own.Pedals, s.Pedals), Minutes: PedalMinutes})
	}
	if len(v.Reasons) > 0 {
		v.Fit = WithChange
	}
	return v
}

func (v *BikeVerdict) saddle(own, have unit.Metre) {
	off := v.compare(own, have, 1)
	switch {
	case own == 0:
		v.Reasons = append(v.Reasons, Reason{Code: SaddleEye, Minutes: SaddleMinutes})
	case have == 0 || off > SetWithin:
		v.Reasons = append(v.Reasons, Reason{Code: SetSaddle, Bike: float64(own), Have: float64(have), Minutes: SaddleMinutes})
	}
}

func (v *BikeVerdict) reach(own, have unit.Metre) {
	off := v.compare(own, have, ReachWeight)
	switch {
	case own == 0 || have == 0:
		v.Reasons = append(v.Reasons, Reason{Code: ReachEye, Minutes: LookMinutes})
	case off <= SetWithin:
	case have > own:
		v.Reasons = append(v.Reasons, Reason{Code: Longer, Bike: float64(own), Have: float64(have)})
	default:
		v.Reasons = append(v.Reasons, Reason{Code: Shorter, Bike: float64(own), Have: float64(have)})
	}
}

// compare counts how far two measures lie apart, and returns it.
func (v *BikeVerdict) compare(own, have unit.Metre, weight float64) unit.Metre {
	if own == 0 || have == 0 {
		v.unknown++
		return 0
	}
	off := unit.Metre(math.Abs(float64(own - have)))
	v.apart += unit.Metre(weight) * off
	return off
}

// pedalTool is what takes the rider's pedals off and the spare's; "" where neither is known.
func pedalTool(own, have string) string {
	known := func(tool string) bool { return tool == PedalHex || tool == PedalSpanner }
	switch {
	case known(own) && known(have) && own != have:
		return PedalBoth
	case known(own):
		return own
	case known(have):
		return have
	}
	return ""
}
