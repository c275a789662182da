package due

import (
	"cmp"
	"slices"
	"strconv"

	"rimside/calc/check"
	"rimside/calc/salt"
	"rimside/calc/unit"
)

// Bike is what the list must know: the builds, and the materials of the bearings too.
type Bike struct {
	check.Bike
	FrontBearing, RearBearing salt.Material
}

// Item is a thing to do and the day from which it is due.
type Item struct {
	ID, Title   string
	Due         unit.Day
	OverdueDays int // below 0 while there is time
	Why, Source string
}

// Where an interval comes from.
const (
	practice = "common practice"
	ours     = "our choice"
	manual   = "owner’s manual"
	unknown  = "Nobody noted when: due until somebody does."
)

// list gathers what is due.
type list struct {
	bike    Bike
	past    past
	today   unit.Day
	every   Intervals
	hot     bool
	entries []Item
}

// List is all that a bike needs, most overdue first. Where a day is not known, it is today.
func List(bike Bike, history []Event, today unit.Day, every Intervals, hot bool) []Item {
	l := &list{bike: bike, past: upTo(history, today), today: today, every: every, hot: hot}
	l.look()
	for _, end := range []end{{"front", "Front", bike.Front}, {"rear", "Rear", bike.Rear}} {
		l.sealant(end)
		l.disc(end)
		l.spokes(end)
	}
	l.wash()
	l.bolts()
	slices.SortStableFunc(l.entries, func(a, b Item) int { return cmp.Compare(b.OverdueDays, a.OverdueDays) })
	return l.entries
}

// end is one end of the bike.
type end struct {
	side, word string
	wheel      check.Wheel
}

func (l *list) add(id, title string, due unit.Day, why, source string) {
	l.entries = append(l.entries, Item{id, title, due, int(l.today - due), why, source})
}

// after is due some days after an event, or today where none is known.
func (l *list) after(id, title string, e Event, known bool, days int, what, source string) {
	if !known {
		l.add(id, title, l.today, unknown, source)
		return
	}
	l.add(id, title, e.Day+unit.Day(days), what+" "+e.Day.String()+"; every "+strconv.Itoa(days)+" days.", source)
}

// look is the evening's walk around; a crash or a journey that no check answered makes its own due at once.
func (l *list) look() {
	crash, crashed := l.past.last("", "crash")
	if answer, done := l.past.lastLook("crash"); crashed && (!done || answer.Day < crash.Day) {
		l.add("crash_check", "Check after the crash", crash.Day, "Crash on "+crash.Day.String()+", and no check after it.", manual)
	}
	carried, moved := l.past.last("", "transport")
	if answer, done := l.past.lastLook("arrival", "crash"); moved && (!done || answer.Day < carried.Day) {
		l.add("arrival_check", "Check after the journey", carried.Day, "Carried on "+carried.Day.String()+", and no check after it.", practice)
	}
	e, known := l.past.lastLook("evening", "crash", "arrival")
	l.after("walk_around", "Walk-around, the evening’s", e, known, l.every.Look, "Last thorough one", ours)
}
