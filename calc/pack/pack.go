package pack

// Answer is a bike's journey.
type Answer struct {
	Steps    []Step
	Bag      []string // tools that come along
	BuyThere []string // kinds of goods that may not travel
	Goods    []Verdict
	Arrival  []Step
}

// Plan makes the lists for a bike and its way. usLeg is "yes", "no" or, where nobody said, "".
func Plan(bike Bike, way Way, usLeg string, goods []Good) Answer {
	a := Answer{Steps: leave(bike, way), Goods: JudgeGoods(goods, way, usLeg)}
	a.Arrival = arrive(bike, a.Steps)
	a.Bag = tools(a.Steps, a.Arrival)
	for _, v := range a.Goods {
		if v.Cabin == No && v.Hold == No {
			a.BuyThere = appendOnce(a.BuyThere, v.ID)
		}
	}
	return a
}
