package due

import (
	"cmp"
	"slices"

	"rimside/calc/check"
	"rimside/calc/salt"
	"rimside/calc/unit"
)

// Bike is what the list must know: the builds, and the materials of the bearings too.
type Bike struct {
	check.Bike
	FrontBearing, RearBearing salt.Material
}

// Item is a thing to do and the day from which it is due. Its words go by the ID.
type Item struct {
	ID          string
	Due         unit.Day
	OverdueDays int // below 0 while there is time
	Why         Why
	Source      Source
}

// Code says why a thing is due.
type Code string

// The reasons.
const (
	NeverNoted  Code = "never_noted" // due until somebody notes it
	EveryDays   Code = "every"       // so many days after it was last looked at or done
	PastLimit   Code = "measured"    // beyond its limit
	AfterCrash  Code = "crash"       // and no check after it
	AfterMoving Code = "journey"     // and no check after it
	NewSpokes   Code = "new_spokes"  // settle in the first kilometres
	SaltyBike   Code = "salt"
	Fitted      Code = "fitted" // and not measured since
	Grows       Code = "grows"  // measured before it had grown
)

// Codes lists them as keys.
func Codes() []string {
	return []string{
		string(NeverNoted), string(EveryDays), string(PastLimit), string(AfterCrash), string(AfterMoving), string(NewSpokes), string(SaltyBike),
		string(Fitted), string(Grows),
	}
}

// IDs lists what may be due.
func IDs() []string {
	return []string{
		"crash_check", "arrival_check", "walk_around", "sealant_front", "rotor_front", "pads_front", "spokes_front", "sealant_rear", "rotor_rear",
		"pads_rear", "spokes_rear", "wash", "bolts", "width_front", "width_rear",
	}
}

// Why is a reason with what it rests on; what does not belong to its code is 0.
type Why struct {
	Code     Code
	Day      unit.Day // of what made it due, or when it was last done
	Days     int      // between two looks
	MM       float64  // measured
	Limit    check.Bound
	Severity check.Severity // of a value beyond its limit
	KM       float64
	Salt     salt.Reason
}

// Source is where an interval comes from, as a key.
type Source string

// The sources.
const (
	practice  Source = "practice"
	ours      Source = "ours"
	manual    Source = "manual"
	tradePage Source = "trade_page"
)

// Sources lists them as keys.
func Sources() []string {
	return []string{string(practice), string(ours), string(manual), string(tradePage)}
}

// list gathers what is due.
type list struct {
	bike    Bike
	past    past
	today   unit.Day
	every   Intervals
	hot     bool
	entries []Item
}

// List is all that a bike needs: what nobody should ride with first, then the most overdue. Where a day is not known, it is today.
func List(bike Bike, history []Event, today unit.Day, every Intervals, hot bool) []Item {
	l := &list{bike: bike, past: upTo(history, today), today: today, every: every, hot: hot}
	l.look()
	for _, end := range []end{{"front", bike.Front}, {"rear", bike.Rear}} {
		l.sealant(end)
		l.disc(end)
		l.spokes(end)
		l.width(end)
	}
	l.wash()
	l.bolts()
	slices.SortStableFunc(l.entries, func(a, b Item) int {
		return cmp.Or(cmp.Compare(a.turn(), b.turn()), cmp.Compare(b.OverdueDays, a.OverdueDays))
	})
	return l.entries
}

// turn is 0 for what stands before everything else: a value to stop at, and a crash that no check has answered.
func (i Item) turn() int {
	if i.Why.Severity == check.Stop || i.Why.Code == AfterCrash {
		return 0
	}
	return 1
}

// end is one end of the bike.
type end struct {
	side  string
	wheel check.Wheel
}

func (l *list) add(id string, due unit.Day, why Why, source Source) {
	l.entries = append(l.entries, Item{id, due, int(l.today - due), why, source})
}

// after is due some days after an event, or today where none is known.
func (l *list) after(id string, e Event, known bool, days int, source Source) {
	if !known {
		l.add(id, l.today, Why{Code: NeverNoted}, source)
		return
	}
	l.add(id, e.Day+unit.Day(days), Why{Code: EveryDays, Day: e.Day, Days: days}, source)
}

// look is the evening's walk around; a crash or a journey that no check answered makes its own due at once.
func (l *list) look() {
	crash, crashed := l.past.last("", "crash")
	if answer, done := l.past.lastLook(check.AnsweredBy("crash")...); crashed && (!done || answer.Day < crash.Day) {
		l.add("crash_check", crash.Day, Why{Code: AfterCrash, Day: crash.Day}, manual)
	}
	carried, moved := l.past.last("", "transport")
	if answer, done := l.past.lastLook(check.AnsweredBy("transport")...); moved && (!done || answer.Day < carried.Day) {
		l.add("arrival_check", carried.Day, Why{Code: AfterMoving, Day: carried.Day}, practice)
	}
	e, known := l.past.lastLook("evening", "crash", "arrival")
	l.after("walk_around", e, known, l.every.Look, ours)
}
