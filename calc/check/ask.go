package check

import (
	"cmp"
	"slices"
)

// Ask lists what to look at, in walking order. A crash or a journey that no check has answered yet adds its rows to every moment but
// the start, where there is time for the fast ones only: at most two at a station, twelve in all.
func Ask(bike Bike, key string, history []Event) []Check {
	past := read(history)
	dryIndoors := read(withoutIndoor(history)).sweaty // what a wheel that is spared the trainer has seen
	at := momentOf(key)
	past.crashed = past.crashed || at == crash
	past.carried = past.carried || at == arrival
	wanted := at
	if at != start && past.crashed {
		wanted |= crash
	}
	if at != start && past.carried {
		wanted |= arrival
	}
	var out []Check
	for _, station := range Stations() {
		rows, wheel := bike.table(station)
		has := bike.has(wheel, past)
		if wheel.Spared && !dryIndoors {
			has &^= sweaty
		}
		for _, r := range rows {
			if r.moments&wanted != 0 && r.needs&has == r.needs {
				out = append(out, r.at(station, bike, wheel, wanted))
			}
		}
	}
	if at&twoLevels != 0 {
		group(out)
	}
	return out
}

// twoLevels are the moments whose lists are long: what can hurt stands first, the rest is folded.
const twoLevels = evening | crash | arrival

// MostFirst is how many rows stand before the rest, so that they are looked at and not clicked away (our choice).
const MostFirst = 20

func (r row) at(station Station, bike Bike, wheel Wheel, wanted moment) Check {
	c := Check{ID: string(station) + "." + r.name, Station: station, Group: First, Worst: r.worst, Source: r.source, name: r.name}
	if r.first&wanted != 0 {
		c.rank = r.rank
	}
	if r.measure != "" {
		limits := LimitsOf(r.measure, bike, wheel)
		c.Limits = &limits
	}
	return c
}

// group puts the most urgent rows first as long as there is room, both ends of the bike alike, and the others with the rest.
func group(list []Check) {
	count := map[string]int{}
	var names []Check
	for i := range list {
		list[i].Group = Rest
		if list[i].rank > 0 {
			if count[list[i].name]++; count[list[i].name] == 1 {
				names = append(names, list[i])
			}
		}
	}
	slices.SortStableFunc(names, func(a, b Check) int { return cmp.Compare(a.rank, b.rank) })
	room, first := MostFirst, map[string]bool{}
	for _, c := range names {
		if count[c.name] <= room {
			room -= count[c.name]
			first[c.name] = true
		}
	}
	for i := range list {
		if first[list[i].name] && list[i].rank > 0 {
			list[i].Group = First
		}
	}
}
