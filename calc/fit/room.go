package fit

import (
	"math"

	"rimside/calc/unit"
)

// Grade is how a tyre goes on.
type Grade string

// The grades. NotLikeThis is no verdict on the tyre: something has to change first.
const (
	Easily      Grade = "easily"
	ByHand      Grade = "by_hand"
	NotLikeThis Grade = "not_like_this"
)

// Grades lists them, the easiest first.
func Grades() []string { return []string{string(Easily), string(ByHand), string(NotLikeThis)} }

// EasyArc is how much of the bead may still be off for the last bit to go on easily: two hands side by side (our choice).
var EasyArc = unit.FromMM(200)

// Room is how much bead there is to spare, and what the last bit needs.
type Room struct {
	Depth     unit.Metre // H less what else lies in the well: how far its floor is below the bead seat
	Slack     unit.Metre // bead left over with all of it in the well; below 0 it does not even lie there
	Need      unit.Metre // what lifting one point over the flange takes
	Valve     unit.Metre // what the valve takes where the bead has to go round it
	PerTape   unit.Metre // what a layer of that tape takes
	Undersize unit.Metre // what the small bead takes
	// Arc is how much of the bead may still lie outside the flange, on its last bit: where that bit is at the valve, and where
	// the valve was covered first.
	FinishAtValve, StartAtValve unit.Metre
	Grade                       Grade
}

// RoomOf works out a rim, with layer as the thickness of one layer of tape. With h the taped depth, R = BSD/2:
//
//	slack  s = 2 pi h - pi (BSD - Db)
//	need   n = 2 [ sqrt((R+G)2 - (R-h)2) - (R-h) acos((R-h)/(R+G)) ]
//	off    an arc of angle f on the flange takes n + (G + h) f
//
// Errors: ErrMeasure, ErrTape, ErrValve.
func RoomOf(r Rim, layer unit.Metre) (Room, error) {
	if err := r.check(); err != nil {
		return Room{}, err
	}
	slack := 2*math.Pi*r.depth() - math.Pi*float64(r.Undersize)
	need, valve := lift(r.floor(), r.edge(), 0), r.valve()
	room := Room{
		Depth: unit.Metre(r.depth()), Slack: unit.Metre(slack), Need: unit.Metre(need), Valve: unit.Metre(valve), PerTape: 2 * math.Pi * layer, Undersize: math.Pi * r.Undersize,
		FinishAtValve: r.arc(slack - need), StartAtValve: r.arc(slack - need - valve),
	}
	switch {
	case slack-need-valve <= 0:
		room.Grade = NotLikeThis
	case room.FinishAtValve >= EasyArc:
		room.Grade = Easily
	default:
		room.Grade = ByHand
	}
	return room, nil
}

// lift is what a loop round a circle of radius r gives away to go over a flat top of that width at radius top: the two slants
// and the top, less the arc below them.
func lift(r, top, width float64) float64 {
	corner := math.Hypot(top, width/2)
	if corner <= r {
		return 0
	}
	return width + 2*math.Sqrt(corner*corner-r*r) - 2*r*(math.Acos(r/corner)+math.Atan2(width/2, top))
}

// valve is what the valve's foot takes; nothing where it stands no higher than the tape.
func (r Rim) valve() float64 {
	if r.ValveHeight <= 0 {
		return 0
	}
	return lift(r.floor(), r.top(), float64(r.ValveWidth))
}

// arc is how much bead, measured along the flange, may be off for what is left to spare; at most a whole turn.
func (r Rim) arc(spare float64) unit.Metre {
	angle := spare / (r.edge() - r.floor())
	return unit.Metre(r.edge() * math.Max(0, math.Min(2*math.Pi, angle)))
}
