package registry

import (
	"rimside/calc/check"
	"rimside/calc/due"
	"rimside/calc/salt"
)

// answerOf is the table of the named calculation's answer. Functions, not variables, hold these tables: the browser's build, which
// never asks, leaves them out.
func answerOf(name string) *Field {
	switch name {
	case "pressure":
		return pressureAnswer()
	case "air":
		return airAnswer()
	case "leak":
		return leakAnswer()
	case "expected":
		return expectedAnswer()
	case "shift":
		return shiftAnswer()
	case "co2":
		return co2Answer()
	case "pump":
		return pumpAnswer()
	case "fit":
		return fitAnswer()
	case "seat":
		return seatAnswer()
	case "salt":
		return saltAnswer()
	case "match":
		return matchAnswer()
	case "bike_match":
		return bikeMatchAnswer()
	case "cover":
		return coverAnswer()
	case "share":
		return shareAnswer()
	case "ready":
		return readyAnswer()
	case "checks":
		return checksAnswer()
	case "due":
		return dueAnswer()
	case "pack":
		return packAnswer()
	case "spokes":
		return spokesAnswer()
	case "lacing":
		return lacingAnswer()
	case "trial":
		return trialAnswer()
	case "deal":
		return dealAnswer()
	case "ground":
		return groundAnswer()
	case "qr":
		return qrAnswer()
	}
	return nil
}

func airAnswer() *Field {
	return result(figure("kpa", "kPa"), pairOf("ambient_kpa", "kPa")) // ambient: at from, at to
}

func leakAnswer() *Field {
	return result(figure("loss_per_day", ""), figure("ahead_kpa", "kPa"))
}

func saltAnswer() *Field {
	return result(
		parts("couples", key("where", salt.Places()...), key("anode", salt.Materials()...), key("cathode", salt.Materials()...), figure("gap_v", "V"), figure("over_v", "V"),
			key("rank", salt.Ranks()...)),
		figure("since_wash_g", "g"), wording("wash_due"), part("why", key("code", salt.Codes()...), valuesOf("values")))
}

func checksAnswer() *Field {
	stations := make([]string, len(check.Stations()))
	for i, s := range check.Stations() {
		stations[i] = string(s)
	}
	bound := func(name string) *Field { return part(name, figure("value", "mm"), key("unit", "mm")).nullable() }
	return listing(key("id", check.IDs()...), key("station", stations...), key("group", string(check.First), string(check.Rest)), bound("limit"), bound("care"),
		key("measure", check.Measures()...).nullable(), key("worst", "note", "care", "stop"), key("source", check.Sources()...))
}

func dueAnswer() *Field {
	return listing(key("id", due.IDs()...), onDay("due"), tally("overdue_days", "d"), part("why", key("code", due.Codes()...), valuesOf("values")),
		key("source", due.Sources()...))
}
