package spares

import (
	"cmp"
	"math"
	"slices"

	"rimside/calc/unit"
)

// Fit is whether a spare goes in.
type Fit string

// The verdicts.
const (
	Yes        Fit = "yes"
	WithChange Fit = "with_change"
	No         Fit = "no"
)

// Fits lists them, the best first.
func Fits() []string { return []string{string(Yes), string(WithChange), string(No)} }

// Code is why a spare does not go in, or not as it is.
type Code string

// What stands against a spare for good.
const (
	IsOut         Code = "out"           // with another rider
	IsStopped     Code = "stopped"       // may not be ridden
	OtherSide     Code = "other_side"    // a front wheel for the rear, or the other way round
	OtherWidth    Code = "hub_width"     // between the dropouts
	OtherAxle     Code = "axle"          // diameter
	OtherBeadSeat Code = "bead_seat"     // the rim's size
	OtherBrake    Code = "brake"         // rotor against rim brake
	OtherRotor    Code = "rotor"         // 140 in a caliper for 160 catches the pads' edge; 200 is not 203
	CogTooBig     Code = "sprocket"      // past the derailleur's reach or the chain's length
	NoRoom        Code = "tyre_too_wide" // for this frame
	OtherMount    Code = "rotor_mount"   // of a bare wheel
	OtherBody     Code = "freehub_body"  // of a bare wheel
)

// What can be done about.
const (
	OtherSpeeds  Code = "speeds"          // rides, but does not index
	OtherSpacing Code = "spacing"         // likewise
	Narrow       Code = "tyre_too_narrow" // narrower than is wanted here
	MoveParts    Code = "move_parts"      // rotor and sprockets come over from the rider's wheel
	AddSpacer    Code = "add_spacer"      // 1.85 mm lets sprockets for 8 to 10 speeds sit on the wider body (trade page)
	NoTyre       Code = "no_tyre"         // fit one first
	LookFirst    Code = "look_first"      // not known of one of the two: compare by eye
)

// Codes lists the reasons.
func Codes() []string {
	out := make([]string, 0, 19)
	for _, c := range []Code{IsOut, IsStopped, OtherSide, OtherWidth, OtherAxle, OtherBeadSeat, OtherBrake, OtherRotor, CogTooBig, NoRoom, OtherMount,
		OtherBody, OtherSpeeds, OtherSpacing, Narrow, MoveParts, AddSpacer, NoTyre, LookFirst} {
		out = append(out, string(c))
	}
	return out
}

// How long a change takes at the roadside, minutes (our choice, from what a practised hand needs).
const (
	// LookMinutes is for comparing a measure by eye.
	LookMinutes = 0.5
	// MoveMinutes is for rotor and sprockets.
	MoveMinutes = 8.0
	// SpacerMinutes is for a spacer behind the sprockets.
	SpacerMinutes = 1.0
	// TyreMinutes is for a tyre.
	TyreMinutes = 10.0
)

// Reason is one thing that stands against a spare: what the bike has and what the spare has, numbers in metres or counts, and
// how many minutes it takes to change; 0 minutes for what needs none or cannot be changed.
type Reason struct {
	Code       Code
	What       string // of LookFirst: which measure; of MovePedal: which tool
	Bike, Have float64
	Minutes    float64
}

// Verdict is one spare judged for one end of a bike.
type Verdict struct {
	Spare   *Spare
	Fit     Fit
	Reasons []Reason
}

// Minutes is how long all its changes take.
func (v Verdict) Minutes() float64 { return minutes(v.Reasons) }

func minutes(reasons []Reason) float64 {
	var sum float64
	for _, r := range reasons {
		sum += r.Minutes
	}
	return sum
}

// Match judges every spare for one end of a bike, the best first: what fits, then what takes the least time to change; of
// equals the one with the widest tyre, then by id.
func Match(end End, wheels []Spare) []Verdict {
	out := make([]Verdict, len(wheels))
	for i := range wheels {
		out[i] = Judge(end, &wheels[i])
	}
	rank := map[Fit]int{Yes: 0, WithChange: 1, No: 2}
	slices.SortStableFunc(out, func(a, b Verdict) int {
		return cmp.Or(cmp.Compare(rank[a.Fit], rank[b.Fit]), cmp.Compare(a.Minutes(), b.Minutes()),
			cmp.Compare(len(a.Reasons), len(b.Reasons)), cmp.Compare(b.Spare.Tyre, a.Spare.Tyre), cmp.Compare(a.Spare.ID, b.Spare.ID))
	})
	return out
}

// Judge goes down the swap rule for one spare. A refusal ends it: what else is wrong does not matter then.
func Judge(end End, s *Spare) Verdict {
	j := judge{end: end, spare: s}
	for _, rule := range []func(*judge){
		(*judge).there, (*judge).held, (*judge).braked, (*judge).clears, (*judge).geared, (*judge).bare,
	} {
		rule(&j)
		if j.refused {
			return Verdict{Spare: s, Fit: No, Reasons: j.reasons[len(j.reasons)-1:]}
		}
	}
	v := Verdict{Spare: s, Fit: Yes, Reasons: j.reasons}
	if len(j.reasons) > 0 {
		v.Fit = WithChange
	}
	return v
}

type judge struct {
	end     End
	spare   *Spare
	reasons []Reason
	refused bool
}

func (j *judge) refuse(code Code, bike, have float64) {
	j.reasons = append(j.reasons, Reason{Code: code, Bike: bike, Have: have})
	j.refused = true
}

func (j *judge) change(code Code, bike, have, minutes float64) {
	j.reasons = append(j.reasons, Reason{Code: code, Bike: bike, Have: have, Minutes: minutes})
}

// same compares a measure that must be alike; one that is not known has to be looked at.
func (j *judge) same(code Code, what string, bike, have unit.Metre) {
	switch {
	case j.refused:
	case bike == 0 || have == 0:
		j.look(what)
	case math.Abs(float64(bike-have)) > float64(SameWithin):
		j.refuse(code, float64(bike), float64(have))
	}
}

// SameWithin is how far two measures may lie apart and still be printed alike (our choice): 200 is not 203.
const SameWithin = unit.Metre(0.4e-3)

func (j *judge) look(what string) {
	j.reasons = append(j.reasons, Reason{Code: LookFirst, What: what, Minutes: LookMinutes})
}

// there: a wheel that is out or may not be ridden is never offered.
func (j *judge) there() {
	switch {
	case j.spare.OutWith != "":
		j.refuse(IsOut, 0, 0)
	case j.spare.Stopped:
		j.refuse(IsStopped, 0, 0)
	case j.spare.Side != j.end.Side:
		j.refuse(OtherSide, 0, 0)
	}
}

func (j *judge) held() {
	j.same(OtherWidth, "hub_width_mm", j.end.Width, j.spare.Width)
	j.same(OtherAxle, "axle_mm", j.end.Axle, j.spare.Axle)
	j.same(OtherBeadSeat, "bead_seat_mm", j.end.BeadSeat, j.spare.BeadSeat)
}

func (j *judge) braked() {
	if j.end.Brake != j.spare.Brake {
		j.refuse(OtherBrake, 0, 0)
		return
	}
	if j.end.Brake == Disc && !j.spare.Bare {
		j.same(OtherRotor, "rotor_mm", j.end.Rotor, j.spare.Rotor)
	}
}

func (j *judge) clears() {
	switch tyre := j.spare.Tyre; {
	case tyre == 0 && j.spare.Bare:
		j.change(NoTyre, 0, 0, TyreMinutes)
	case tyre == 0 || j.end.Room == 0:
		j.look("tyre_mm")
	case tyre > j.end.Room:
		j.refuse(NoRoom, float64(j.end.Room), float64(tyre))
	case tyre < j.end.MinLabel:
		j.change(Narrow, float64(j.end.MinLabel), float64(tyre), 0)
	}
}

func (j *judge) geared() {
	if j.end.Side != Rear || j.spare.Bare {
		return
	}
	e, s := j.end.Hub, j.spare.Hub
	switch {
	case e.MaxCog == 0 || s.MaxCog == 0:
		j.look("max_cog")
	case s.MaxCog > e.MaxCog:
		j.refuse(CogTooBig, float64(e.MaxCog), float64(s.MaxCog))
		return
	}
	switch {
	case e.Speeds == 0 || s.Speeds == 0:
		j.look("speeds")
	case e.Speeds != s.Speeds:
		j.change(OtherSpeeds, float64(e.Speeds), float64(s.Speeds), 0)
	case e.Spacing != "" && s.Spacing != "" && e.Spacing != s.Spacing:
		j.change(OtherSpacing, 0, 0, 0)
	}
}

// bare: the rider's own rotor and sprockets must find their seats.
func (j *judge) bare() {
	if !j.spare.Bare {
		return
	}
	e, s := j.end.Hub, j.spare.Hub
	if e.Brake == Disc {
		switch {
		case e.Mount == "" || s.Mount == "":
			j.look("mount")
		case e.Mount != s.Mount:
			j.refuse(OtherMount, 0, 0)
			return
		}
	}
	if e.Side == Rear {
		switch {
		case e.Body == "" || s.Body == "":
			j.look("body")
		case e.Body != s.Body && widerBody[e.Body] == s.Body && e.Speeds >= 8 && e.Speeds <= 10:
			j.change(AddSpacer, 0, 0, SpacerMinutes)
		case e.Body != s.Body:
			j.refuse(OtherBody, 0, 0)
			return
		}
	}
	if e.Brake == Disc || e.Side == Rear {
		j.change(MoveParts, 0, 0, MoveMinutes)
	}
}
