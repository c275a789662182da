package check

// Station is a place on the walk around the bike.
type Station string

// Stations in walking order.
const (
	FrontWheel Station = "front_wheel"
	FrontBrake Station = "front_brake"
	Bar        Station = "bar"
	Frame      Station = "frame"
	RearWheel  Station = "rear_wheel"
	RearBrake  Station = "rear_brake"
)

// Stations lists them in walking order.
func Stations() []Station {
	return []Station{FrontWheel, FrontBrake, Bar, Frame, RearWheel, RearBrake}
}

// moment is a set of moments at which a row is asked.
type moment uint8

const (
	evening moment = 1 << iota
	start
	after
	washDay
	crash
	arrival
)

// moments are keyed as people and records name them.
var momentKeys = []string{"evening", "start", "after", "wash_day", "crash", "arrival"}

// Moments lists them as keys.
func Moments() []string { return momentKeys }

func momentOf(key string) moment {
	for i, k := range momentKeys {
		if k == key {
			return 1 << i
		}
	}
	return 0
}

// Severity is how bad a finding is.
type Severity string

// The severities.
const (
	Note Severity = "note"
	Care Severity = "care"
	Stop Severity = "stop"
)

// Where a row comes from.
const (
	practice = "common practice, no source"
	trade    = "trade page"
	manual   = "owner’s manual"
	memory   = "from memory, to be confirmed"
	chosen   = "our choice"
)

// row is a line of the catalogue. Its place is a station, or both wheels, or both brakes.
type row struct {
	name    string
	moments moment
	needs   need
	title   string
	lookFor string
	how     string
	limit   string
	worst   Severity
	source  string
	measure Measure // what can be measured here; "" nothing
}

// Check is a row as it is asked: at one station of one bike.
type Check struct {
	ID                         string
	Station                    Station
	Title, LookFor, How, Limit string
	Worst                      Severity
	Source                     string
	Limits                     *Limits // of a value to measure here
}

// table is the part of the catalogue that belongs to a station, and the wheel that it stands at.
func (b Bike) table(s Station) ([]row, Wheel) {
	switch s {
	case FrontWheel:
		return wheelRows, b.Front
	case RearWheel:
		return wheelRows, b.Rear
	case FrontBrake:
		return brakeRows, b.Front
	case RearBrake:
		return brakeRows, b.Rear
	case Bar:
		return barRows, Wheel{}
	}
	return frameRows, Wheel{}
}
