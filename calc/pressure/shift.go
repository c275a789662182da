package pressure

import (
	"math"

	"rimside/calc/unit"
)

// Felt is what a rider says of a wheel after the ride.
type Felt string

// The five answers, from too harsh to squirming.
const (
	FeltTooHard Felt = "too_hard"
	FeltHard    Felt = "hard"
	FeltRight   Felt = "right"
	FeltSoft    Felt = "soft"
	FeltTooSoft Felt = "too_soft"
)

// Felts lists the keys.
func Felts() []string {
	return []string{string(FeltTooHard), string(FeltHard), string(FeltRight), string(FeltSoft), string(FeltTooSoft)}
}

// RideNote is one wheel after one ride. A pressure of 0 is not known.
type RideNote struct {
	Ride   string      // two notes of one ride and wheel: the later replaces the earlier; "" is a ride of its own
	Side   Side        // the wheel
	Tyre   *Kind       // that was ridden; nil when it is not known
	Ridden unit.Pascal // true, at the ride
	P0     unit.Pascal // what was recommended on that day, before personal shift and firmness
	Felt   Felt        // "" when only the rim's strike was noted
	Struck bool        // the rim hit something
	Trial  *Settled    // what a timed trial showed in place of a feeling: Ridden was the best; nil for a ride
}

// Settled is the interval of a trial's difference between the best pressure and its nearest rival, in whatever was timed.
type Settled struct{ Difference, Low, High float64 }

// Weight is how many notes after rides a trial counts for: one when its interval just clears zero, more the narrower the interval is
// against the difference, TrialMost at most; 0 when it does not clear zero. So its standard deviation is ShiftSpread times half the
// interval over the difference (our choice).
func (s Settled) Weight() float64 {
	half := (s.High - s.Low) / 2
	if !(s.Low > 0 || s.High < 0) || !(half >= 0) {
		return 0
	}
	ratio := math.Abs(s.Difference) / half
	return math.Min(TrialMost, ratio*ratio)
}

const (
	// ShiftSpread is how far riders stand from what is recommended, and how far one note stands from what the rider would
	// settle on: the standard deviation of both, in logarithms of pressure (our choice).
	ShiftSpread = 0.12
	// ShiftMost is how far one note counts, and how far all of them move the number (our choice): more is a slip of the thumb.
	ShiftMost = 0.5
	// StruckBy is how much more air a struck rim asks for, as a logarithm (our choice).
	StruckBy = 0.10
	// TrialMost is how many notes after rides the clearest trial counts for (our choice): one stretch on one day is not all riding.
	TrialMost = 4
)

// feltBy is how much more air, as a logarithm, each answer asks for (our choice).
var feltBy = map[Felt]float64{FeltTooHard: -0.10, FeltHard: -0.05, FeltRight: 0, FeltSoft: 0.05, FeltTooSoft: 0.10}

// FeltBy is how much more air an answer asks for, as a logarithm of pressure; ok is false for one that is not of Felts.
func FeltBy(f Felt) (by float64, ok bool) {
	by, ok = feltBy[f]
	return by, ok
}

// Observed is the shift that one note alone speaks for: ln(ridden/p_0) plus what was felt, so that who rides what was
// recommended and finds it right moves nothing. A struck rim asks for more than was ridden, and never for less than p_0,
// whatever else was said. ok is false for a note that says nothing.
func (n RideNote) Observed() (shift float64, ok bool) {
	felt, known := feltBy[n.Felt]
	if n.Trial != nil { // what was quickest, whatever it felt like
		felt, known = 0, n.Trial.Weight() > 0
	}
	if !known && !n.Struck || !knownPressure(n.Ridden) || !knownPressure(n.P0) {
		return 0, false
	}
	off := math.Log(float64(n.Ridden / n.P0))
	if n.Struck {
		return heldShift(math.Max(0, off) + StruckBy), true
	}
	return heldShift(off + felt), true
}

// weight is how much a note counts: 1 for a ride.
func (n RideNote) weight() float64 {
	if n.Trial != nil {
		return n.Trial.Weight()
	}
	return 1
}

func knownPressure(p unit.Pascal) bool { return p > 0 && !math.IsInf(float64(p), 0) }

// Learnt is the personal shift of one wheel and what it rests on.
type Learnt struct {
	Shift     float64
	Notes     int // how many rides count
	Trials    int // how many trials count
	OtherTyre int // how many are of another tyre than the wheel now carries
	Unknown   int // how many cannot count: of a tyre or of pressures that are not known
}

// Learn is the personal shift of a wheel from all notes in the order they were made, for the tyre that it now carries.
func Learn(notes []RideNote, side Side, now Kind) Learnt {
	var out Learnt
	var count []RideNote
	for _, n := range lastOfEachRide(notes, side) {
		switch _, ok := n.Observed(); {
		case n.Tyre == nil || !ok:
			out.Unknown++
		case *n.Tyre != now:
			out.OtherTyre++
		default:
			count = append(count, n)
		}
	}
	out.Shift = shiftOf(count)
	for _, n := range count {
		if n.Trial != nil {
			out.Trials++
		} else {
			out.Notes++
		}
	}
	return out
}

// lastOfEachRide keeps one note a ride of one wheel: the second replaces the first.
func lastOfEachRide(notes []RideNote, side Side) []RideNote {
	at := map[string]int{}
	var out []RideNote
	for _, n := range notes {
		if n.Side != side {
			continue
		}
		if earlier, again := at[n.Ride]; again && n.Ride != "" {
			out[earlier] = n
			continue
		}
		at[n.Ride] = len(out)
		out = append(out, n)
	}
	return out
}

// shiftOf is the mean of a normal prior round 0 and one normal observation a note, all of one variance but for trials, which their
// interval weighs; never below what it would be without the strikes.
func shiftOf(notes []RideNote) float64 {
	sum, unstruck, n, without := 0.0, 0.0, 1.0, 1.0
	for _, note := range notes {
		observed, _ := note.Observed()
		w := note.weight()
		sum, n = sum+w*observed, n+w
		if !note.Struck {
			unstruck, without = unstruck+w*observed, without+w
		}
	}
	return heldShift(math.Max(sum/n, unstruck/without))
}

func heldShift(s float64) float64 { return max(-ShiftMost, min(ShiftMost, s)) }
