package pack

import "slices"

// load is all that is taken along.
type load struct {
	goods []Good
	usLeg string
}

// sum adds up, over the person whose the good is, what each of theirs counts for. What is nobody's may be anybody's: it counts with
// everybody's, and is judged by whoever has most.
func (l load) sum(of Good, counts func(Good) float64) float64 {
	people := []string{of.Who}
	for _, g := range l.goods {
		if of.Who == "" && !slices.Contains(people, g.Who) {
			people = append(people, g.Who)
		}
	}
	most := 0.0
	for _, who := range people {
		sum := 0.0
		for _, g := range l.goods {
			if g.Who == "" || g.Who == who {
				sum += float64(g.Count) * counts(g)
			}
		}
		most = max(most, sum)
	}
	return most
}

// count is how many of theirs pass.
func (l load) count(of Good, pass func(Good) bool) float64 {
	return l.sum(of, func(g Good) float64 {
		if pass(g) {
			return 1
		}
		return 0
	})
}

func (l load) judge(g Good) Verdict {
	switch g.ID {
	case "cartridge":
		return l.cartridge(g)
	case "power_bank", "spare_battery", "shifting_battery", "battery_pump":
		return l.spare(g)
	case "lithium_installed":
		return installed(g)
	case "shifting_built_in":
		return Verdict{Cabin: No, Hold: Ask, Why: "built_in"}
	case "aerosol":
		return l.aerosol(g)
	case "sealant", "mineral_oil", "brake_fluid":
		return liquid(g)
	case "tools", "pump":
		return Verdict{Cabin: No, Hold: Yes, Why: "tools"}
	case "rubber_cement":
		return refuse("cement")
	}
	return refuse("burns")
}
