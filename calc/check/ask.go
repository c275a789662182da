package check

// Ask lists what to look at, in walking order. A crash or a journey that no check has answered yet adds its rows to every moment but
// the start, where there is time for the fast ones only: at most two at a station, twelve in all.
func Ask(bike Bike, key string, history []Event) []Check {
	past := read(history)
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
		for _, r := range rows {
			if r.moments&wanted != 0 && r.needs&has == r.needs {
				out = append(out, r.at(station, bike, wheel))
			}
		}
	}
	return out
}

func (r row) at(station Station, bike Bike, wheel Wheel) Check {
	c := Check{
		ID: string(station) + "." + r.name, Station: station, Title: r.title, LookFor: r.lookFor, How: r.how, Limit: r.limit,
		Worst: r.worst, Source: r.source,
	}
	if r.measure != "" {
		limits := LimitsOf(r.measure, bike, wheel)
		c.Limits = &limits
		c.Limit = limits.Words()
	}
	return c
}
