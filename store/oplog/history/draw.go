package history

import "fmt"

// Source is where a history's chances come from: IntN gives a number from 0 to below n.
type Source interface{ IntN(n int) int }

const (
	start  = 1790000000000 // ms since 1970
	second = 1000
	hour   = 3600 * second
	day    = 24 * hour
)

// Clocks are off by these amounts, in ms.
var clockErrors = []int64{0, -2 * hour, 10 * second, 400 * day}

var fields = []string{"name", "__proto__"} // few, so that edits conflict

// Records is how many records a history is about: few, so that phones meet in them.
const Records = 2

// Limits bound what is drawn.
type Limits struct {
	Steps   int  // at most
	Mishaps bool // wipes and old copies
}

// Draw makes up a history.
func Draw(from Source, limits Limits) History {
	h := History{Servers: 1 + from.IntN(3), Batch: 1 + from.IntN(5)}
	for range 2 + from.IntN(3) {
		h.Phones = append(h.Phones, clockErrors[from.IntN(len(clockErrors))])
	}
	artist := artist{from: from, history: &h, now: start}
	for range 4 + from.IntN(limits.Steps) {
		artist.step(limits)
	}
	return h
}

type artist struct {
	from    Source
	history *History
	now     int64
	values  int
	wiped   bool
	put     bool
}

func (a *artist) step(limits Limits) {
	a.now += int64(a.from.IntN(3)) * 700 // several steps may fall into one moment
	step := Step{Now: a.now, Phone: a.from.IntN(len(a.history.Phones)), Server: a.from.IntN(a.history.Servers), Rec: a.from.IntN(Records)}
	switch chance := a.from.IntN(100); {
	case chance < 40:
		step.Do, step.Set = Edit, a.values1to3()
	case chance < 47:
		step.Do = Decide
	case chance < 53:
		step.Do = Remove
	case chance < 57:
		step.Do = Restore
	case chance < 59:
		step.Do = Erase
	case chance < 62 && limits.Mishaps && !a.wiped:
		step.Do, a.wiped = Wipe, true
	case chance < 66 && limits.Mishaps:
		step.Do = Keep
	case chance < 69 && limits.Mishaps && !a.put:
		step.Do, a.put = PutBack, true
	default:
		step.Do = Meet
		if a.from.IntN(4) == 0 {
			step.Lost = 1 + a.from.IntN(4)
		}
	}
	a.history.Steps = append(a.history.Steps, step)
}

func (a *artist) values1to3() map[string]string {
	set := map[string]string{}
	for range 1 + a.from.IntN(3) {
		a.values++
		set[fields[a.from.IntN(len(fields))]] = fmt.Sprintf("value-%d-", a.values)
	}
	return set
}

// RecID is a record's id by its number.
func RecID(rec int) string { return fmt.Sprintf("7ec%029d", rec) }
