package check

import "math"

// Measure is what can be measured on a walk around.
type Measure string

// What can be measured, all in mm.
const (
	RotorThickness Measure = "rotor_thickness"
	RotorRunOut    Measure = "rotor_runout"
	RimRunOut      Measure = "rim_runout"
	Pads           Measure = "pads"
	Wall           Measure = "rim_wall"
	Room           Measure = "room"
)

// Measures lists them as keys.
func Measures() []string {
	return []string{string(RotorThickness), string(RotorRunOut), string(RimRunOut), string(Pads), string(Wall), string(Room)}
}

// Limits in mm.
const (
	RotorMinMM     = 1.55 // the strictest of the published 1.50, 1.52 and 1.55; the mark on the rotor wins, and a thick rotor's is higher
	RotorRunOutMM  = 0.2  // from memory
	RimRunOutMM    = 0.8  // published, TBIS 15194 Table 22
	RacingRunOutMM = 0.6  // published, as above
	PadsStopMM     = 0.5  // published, trade page: friction material
	PadsCareMM     = 1.5  // published, trade page: replace before an event
	PadsCareRoadMM = 1.0  // our choice: a new road pad has about 2 mm (from memory), so 1.5 would be asked of pads half new
	WallMM         = 1.0  // published, trade page
	RoomStopMM     = 1.6  // published, 16 CFR 1512.11
	RoomRoadMM     = 4.0  // EN 14781, superseded by parts of ISO 4210, as a forum quotes it
	RoomOtherMM    = 6.0  // ISO 4210-2, from memory
	mostMeasurable = 1000.0
)

// Edge says on which side of a bound a value is refused.
type Edge string

// The edges.
const (
	Below Edge = "below" // refused when less
	To    Edge = "to"    // refused when less or equal
	Above Edge = "above" // refused when more
)

// Bound is a limit with its side.
type Bound struct {
	Edge Edge
	MM   float64
}

// Limits of a measured value: beyond Stop do not ride, beyond Care ride with care. A bound without an edge does not apply.
type Limits struct {
	What       Measure
	Stop, Care Bound
}

// LimitsOf are the limits of a measure on this bike and wheel.
func LimitsOf(what Measure, bike Bike, wheel Wheel) Limits {
	l := Limits{What: what}
	switch what {
	case RotorThickness:
		l.Stop = Bound{Below, RotorMinMM}
		if wheel.RotorMin > 0 { // the number on the part wins
			l.Stop.MM = wheel.RotorMin
		}
	case RotorRunOut:
		l.Care = Bound{Above, RotorRunOutMM}
	case RimRunOut:
		l.Care = Bound{Above, RimRunOutMM}
		if bike.Racing {
			l.Care.MM = RacingRunOutMM
		}
	case Pads:
		l.Stop, l.Care = Bound{To, PadsStopMM}, Bound{To, PadsCareMM}
		if bike.Road {
			l.Care.MM = PadsCareRoadMM
		}
	case Wall:
		l.Stop = Bound{To, WallMM}
	case Room:
		l.Stop, l.Care = Bound{Below, RoomStopMM}, Bound{Below, RoomOtherMM}
		if bike.Road {
			l.Care.MM = RoomRoadMM
		}
	}
	return l
}

// Judge says how bad a measured value is, "" when it is within its limits. It reports false for what is no measurement.
func (l Limits) Judge(mm float64) (Severity, bool) {
	switch {
	case math.IsNaN(mm) || mm < 0 || mm > mostMeasurable || l.Stop.Edge == "" && l.Care.Edge == "":
		return "", false
	case l.Stop.refuses(mm):
		return Stop, true
	case l.Care.refuses(mm):
		return Care, true
	}
	return "", true
}

func (b Bound) refuses(mm float64) bool {
	switch b.Edge {
	case Below:
		return mm < b.MM
	case To:
		return mm <= b.MM
	case Above:
		return mm > b.MM
	}
	return false
}

// Thread is that of a through axle, in mm.
type Thread struct{ DiameterMM, PitchMM float64 }

// Fits says whether an axle's thread goes into a frame's. M12 x 1.0, x 1.5, x 1.75 and M15 x 1.5 do not interchange (published, trade
// axle guides); an unknown thread fits nothing.
func (t Thread) Fits(into Thread) bool {
	return t.DiameterMM > 0 && t.PitchMM > 0 && t == into
}
