package pack

import "slices"

// HoldMarginKPa is how far below its limit a tyre travels in a hold: it gains 44.1 kPa when the cabin stands at 15 000 ft, the worst
// after a probable failure (14 CFR 25.841), rounded up.
const HoldMarginKPa = 45

// What a packed bike may weigh: the limit at most desks (published, trade survey), and the usual ceiling for one pair of hands
// (common practice).
const DeskKG, HandsKG = 23, 32

// leaveBag protects what came apart, and puts it where it travels.
func leaveBag(p *plan, t Trip) {
	way := t.Way
	if way.handled() {
		p.add(Step{ID: "electrics", Stage: "bag", Needs: []string{asBuiltID}, Notes: []string{"electrics"}})
		p.add(Step{ID: "tyres_air", Stage: "bag", Needs: []string{asBuiltID}, AsBuilt: []string{"pressures"}, Notes: []string{"tyres_air"},
			Values: []Value{{"margin_kpa", HoldMarginKPa}}})
	}
	for _, e := range t.Bike.ends() {
		p.add(Step{ID: e.side + "_wheel_bagged", Stage: "bag", Takes: []string{HubCaps},
			Needs: []string{e.side + "_wheel_out", e.side + "_axle_in", e.side + "_rotor", "rotors_sleeve", "tyres_air"},
			Notes: slices.Concat([]string{"wheel_bagged"}, when(e.disc() && !way.handled(), "rotor_stays"))})
	}
	opened := p.ids(func(s Step) bool { return s.Loosens })
	if way != Car {
		p.add(Step{ID: "padding", Stage: "bag", Takes: []string{Padding}, Notes: []string{"padding"},
			Needs: []string{"derailleur", "post", "bars", "stem", "bars_turn", "front_axle_in", "rear_axle_in"}})
	}
	p.add(Step{ID: "small_parts", Stage: "bag", Takes: []string{PartsBag}, Needs: opened, Notes: []string{"small_parts"}})
	p.add(Step{ID: "tools", Stage: "bag", Needs: opened, Notes: []string{toolsNote(way)}})
	if !way.handled() {
		return
	}
	p.add(Step{ID: "weigh", Stage: "bag", Needs: []string{"tools", "small_parts"}, Notes: []string{"weigh"}, Values: []Value{{"desk_kg", DeskKG}, {"hands_kg", HandsKG}}})
	p.add(Step{ID: "saddle_bag", Stage: "goods", Must: true, Notes: []string{"saddle_bag"}})
	if t.Home {
		p.add(Step{ID: "leave_there", Stage: "goods", Notes: []string{"leave_there"}})
	}
}

func toolsNote(way Way) string {
	switch {
	case way == Courier:
		return "tools_parcel"
	case way.handled():
		return "tools_hold"
	}
	return "tools_near"
}
