package salt

import (
	"strconv"

	"rimside/calc/unit"
)

// Grams on the bike at which a wash is due, by rank (our choice: five hours a week indoors at mean sweat bring 1.34 g, so a usual
// wheel is washed every one to two weeks, as is common practice; a strong couple halves that).
const (
	WashAtMild   = 2.6
	WashAtUsual  = 2.0
	WashAtStrong = 1.0
)

func washAt(r Rank) float64 {
	switch r {
	case Mild:
		return WashAtMild
	case Usual:
		return WashAtUsual
	}
	return WashAtStrong
}

// Answer is what salt has done since the last wash.
type Answer struct {
	Couples []Couple
	Grams   float64 // that reached the bike and were not washed off: an index
	Due     *unit.Day
	Why     string
}

// Decide reads a log up to today. A wash is due from the day on which the index reached the wheel's own limit.
func Decide(wheel Wheel, log []Entry, today unit.Day) Answer {
	rank, worst := wheel.rank()
	a := Answer{Couples: wheel.Couples()}
	for _, e := range upTo(log, today) {
		a.Grams = e.after(a.Grams)
		switch {
		case a.Grams < washAt(rank):
			a.Due = nil
		case a.Due == nil:
			day := e.Day
			a.Due = &day
		}
	}
	a.Why = why(a, rank, worst)
	return a
}

func why(a Answer, rank Rank, worst Couple) string {
	text := "About " + places(a.Grams, 1) + " g of salt on the bike since it was washed; this wheel gets a wet wash at " + places(washAt(rank), 1) + " g. "
	switch {
	case rank == Strong && worst.OverV < StrongFromV:
		text += "Rim or nipples are not known, so they count as the worst pair. "
	case worst.OverV > 0:
		text += "Its worst pair is " + worst.Anode.Words() + " against " + worst.Cathode.Words() + ", " + rankWords(rank) + ": the " + worst.Anode.Words() + " gives way. "
	}
	return text + "Wiping hardly counts: it misses the crevices. An index from hours and assumptions, for a rhythm of washing; it predicts nothing."
}

func rankWords(r Rank) string {
	switch r {
	case Mild:
		return "a mild one"
	case Usual:
		return "as in most wheels"
	}
	return "a strong one"
}

func places(x float64, n int) string { return strconv.FormatFloat(x, 'f', n, 64) }
