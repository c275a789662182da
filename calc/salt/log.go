package salt

import (
	"cmp"
	"slices"

	"rimside/calc/unit"
)

// Kind is what happened to a bike on a day.
type Kind string

// The kinds: four of riding, two of cleaning.
const (
	Indoor Kind = "indoor"
	Wet    Kind = "wet"
	Salted Kind = "salted"
	Dry    Kind = "dry"
	Wipe   Kind = "wipe"
	Wash   Kind = "wash"
)

// Kinds lists them as keys.
func Kinds() []string {
	return []string{string(Indoor), string(Wet), string(Salted), string(Dry), string(Wipe), string(Wash)}
}

// Sweats lists how salty a rider's sweat may be, as keys.
func Sweats() []string { return []string{"low", "mean", "high"} }

// Entry is a line of a bike's log.
type Entry struct {
	Day   unit.Day
	Kind  Kind
	Hours float64 // of a ride
	Sweat string  // of an indoor ride; "" counts as mean
}

// Spared is the log of a wheel whose place another takes indoors, on the trainer: without the indoor rides.
func Spared(log []Entry) []Entry {
	return slices.DeleteFunc(slices.Clone(log), func(e Entry) bool { return e.Kind == Indoor })
}

// Salt in sweat, g/L, and litres of sweat in an hour (published: Baker et al. 2016, 506 athletes; grams of salt worked out from sodium).
const (
	SaltLow, SaltMean, SaltHigh = 1.06, 2.10, 4.14
	SweatRate                   = 1.28
)

// Our assumptions, none of them measured.
const (
	// DripShare is how much of a rider's sweat lands on the bike and not on the floor, the towel or the fan's air.
	DripShare = 0.1
	// WetRate and SaltedRate are grams an hour that a wet road and a salted one leave.
	WetRate, SaltedRate = 0.05, 1.0
	// WipeLeaves is the share that a wipe-down leaves: it misses the crevices.
	WipeLeaves = 0.95
	// WashLeaves is the share that a wet wash with clean water and soap leaves.
	WashLeaves = 0.1
	// UnknownHours stands for a ride whose hours were not noted.
	UnknownHours = 1.0
)

// NaClMolar is the molar mass of sodium chloride in g/mol (published, atomic weights 22.990 and 35.453).
const NaClMolar = 58.443

// SaltPerLitre is what a concentration of sodium chloride in mmol/L weighs, in g/L.
func SaltPerLitre(millimolar float64) float64 { return millimolar / 1000 * NaClMolar }

// grams is what a ride brings onto the bike.
func (e Entry) grams() float64 {
	switch e.Kind {
	case Indoor:
		return e.Hours * SweatRate * saltIn(e.Sweat) * DripShare
	case Wet:
		return e.Hours * WetRate
	case Salted:
		return e.Hours * SaltedRate
	}
	return 0
}

func saltIn(sweat string) float64 {
	switch sweat {
	case "low":
		return SaltLow
	case "high":
		return SaltHigh
	}
	return SaltMean
}

// after is the index after an entry.
func (e Entry) after(grams float64) float64 {
	switch e.Kind {
	case Wipe:
		return grams * WipeLeaves
	case Wash:
		return grams * WashLeaves
	}
	return grams + e.grams()
}

// turn orders a day: rides, then a wipe, then a wash.
func (e Entry) turn() int {
	switch e.Kind {
	case Wipe:
		return 1
	case Wash:
		return 2
	}
	return 0
}

// upTo are the entries until today, in the order in which they count.
func upTo(log []Entry, today unit.Day) []Entry {
	var out []Entry
	for _, e := range log {
		if e.Day <= today {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.turn(), b.turn()))
	})
	return out
}
