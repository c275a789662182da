package check

// Outcome is what a walk around comes to, in three words.
type Outcome string

// The outcomes, best first.
const (
	NothingFound Outcome = "nothing_found"
	RideWithCare Outcome = "ride_with_care"
	DoNotRide    Outcome = "do_not_ride"
)

// Item is what became of one thing to look at: ok, skipped or found, and how bad what was found is.
type Item struct {
	State    string
	Severity Severity
}

// Verdict is the outcome with how much was looked at.
type Verdict struct {
	Outcome    Outcome
	Looked, Of int
}

// Judge brings a walk around to its outcome. Nothing found may be said only where everything was looked at and nothing was found, not
// even a thing to note; one stop is enough not to ride. What it does not understand it takes for the worse.
func Judge(items []Item) Verdict {
	v := Verdict{Outcome: NothingFound, Of: len(items)}
	if len(items) == 0 {
		v.Outcome = RideWithCare
	}
	for _, item := range items {
		if item.looked() {
			v.Looked++
		}
		v.Outcome = worse(v.Outcome, item.outcome())
	}
	return v
}

func (i Item) looked() bool { return i.State == "ok" || i.State == "found" }

// outcome takes what was found to count even where the item was then called ok or skipped.
func (i Item) outcome() Outcome {
	switch {
	case i.Severity == Note || i.Severity == Care:
		return RideWithCare
	case i.Severity != "" || i.State == "found":
		return DoNotRide
	case i.State == "ok":
		return NothingFound
	}
	return RideWithCare
}

func worse(a, b Outcome) Outcome {
	for _, o := range []Outcome{DoNotRide, RideWithCare} {
		if a == o || b == o {
			return o
		}
	}
	return NothingFound
}
