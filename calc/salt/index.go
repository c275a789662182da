package salt

import "rimside/calc/unit"

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
	Why     Reason
}

// Code says what decides on the wash of a wheel.
type Code string

// What may decide: the worst pair of materials, the pair that rim and nipples may be, or only how much salt there is.
const (
	KnownPair   Code = "pair"
	UnknownPair Code = "pair_not_known"
	NoPair      Code = "no_pair"
)

// Codes lists them as keys.
func Codes() []string { return []string{string(KnownPair), string(UnknownPair), string(NoPair)} }

// Reason is why a wash is due, or not yet.
type Reason struct {
	Code           Code
	Grams, WashAt  float64 // on the bike, and how many this wheel is washed at
	Rank           Rank
	Anode, Cathode Material // of the worst pair
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

func why(a Answer, rank Rank, worst Couple) Reason {
	r := Reason{Code: KnownPair, Grams: a.Grams, WashAt: washAt(rank), Rank: rank, Anode: worst.Anode, Cathode: worst.Cathode}
	switch {
	case rank == Strong && worst.OverV < StrongFromV:
		r.Code, r.Anode, r.Cathode = UnknownPair, "", ""
	case worst.OverV == 0:
		r.Code, r.Anode, r.Cathode = NoPair, "", ""
	}
	return r
}
