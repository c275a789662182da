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

// Source is where a row comes from, as a key.
type Source string

// The sources.
const (
	practice     Source = "practice" // common practice, no source
	tradePage    Source = "trade_page"
	shopPage     Source = "shop_page"
	torqueTable  Source = "torque_table"
	axleGuide    Source = "axle_guide" // trade axle guides and torque table
	manual       Source = "manual"     // owner's manual
	rimMaker     Source = "rim_maker"  // a rim maker's published statement; ETRTO
	memory       Source = "memory"     // from memory, to be confirmed
	cfr          Source = "cfr_1512"   // 16 CFR 1512.11
	heldSource   Source = "held"       // 16 CFR 1512.11; EN 14766, superseded by parts of ISO 4210
	leverSource  Source = "lever"      // EN 14766:2005, 4.10.5.1, superseded by parts of ISO 4210
	runOutSource Source = "run_out"    // TBIS 15194, Table 22; TBIS 4210-7
	roomSource   Source = "room"       // 16 CFR 1512.11; EN 14781 as quoted, superseded by parts of ISO 4210; ISO 4210-2 from memory
)

// Sources lists them as keys.
func Sources() []string {
	var out []string
	for _, s := range []Source{
		practice, tradePage, shopPage, torqueTable, axleGuide, manual, rimMaker, memory, cfr, heldSource, leverSource, runOutSource, roomSource,
	} {
		out = append(out, string(s))
	}
	return out
}

// Group says whether a row stands among what can hurt first, or with the rest.
type Group string

// The groups.
const (
	First Group = "first"
	Rest  Group = "rest"
)

// row is a line of the catalogue. Its place is a station, or both wheels, or both brakes.
type row struct {
	name    string
	moments moment
	first   moment // the moments with two levels at which it stands among what can hurt first
	rank    int    // of those, the most urgent is 1
	needs   need
	worst   Severity
	source  Source
	measure Measure // what can be measured here; "" nothing
}

// Check is a row as it is asked: at one station of one bike. Its words go by the ID.
type Check struct {
	ID      string
	Station Station
	Group   Group
	Worst   Severity
	Source  Source
	Limits  *Limits // of a value to measure here

	name string
	rank int
}

// IDs lists every row that may be asked, station by station.
func IDs() []string {
	var out []string
	for _, station := range Stations() {
		rows, _ := Bike{}.table(station)
		for _, r := range rows {
			out = append(out, string(station)+"."+r.name)
		}
	}
	return out
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
