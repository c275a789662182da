package pack

// Trip is what is planned: a bike, how and in which direction it travels, and with what.
type Trip struct {
	Bike  Bike
	Way   Way
	Home  bool   // the way home; else the way out
	USLeg string // "yes", "no" or, where nobody said, "": then as strict as yes
	Goods []Good
}

// Answer is a bike's journey in one direction.
type Answer struct {
	Steps    []Step
	Bag      []string // what comes along: tools, and what protects
	BuyThere []string // kinds of goods that may not travel and that shops sell
	Goods    []Verdict
	Arrival  []Step
	Ask      []Question // what is not known and would change the lists
}

// Plan makes the lists for a trip.
func Plan(t Trip) Answer {
	a := Answer{Steps: leave(t), Goods: JudgeGoods(t.Goods, t.Way, t.USLeg), Ask: questions(t)}
	a.Arrival = arrive(t.Bike, a.Steps)
	a.Bag = bag(a.Steps, a.Arrival)
	a.BuyThere = buyThere(a.Goods, t)
	return a
}
