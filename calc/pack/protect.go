package pack

// HoldMarginKPa is how far below its limit a tyre travels in a hold: it gains 44.1 kPa when the cabin stands at 15 000 ft, the worst
// after a probable failure (14 CFR 25.841), rounded up.
const HoldMarginKPa = 45

// What a packed bike may weigh: the limit at most desks (published, trade survey), and the usual ceiling for one pair of hands
// (common practice).
const DeskKG, HandsKG = 23, 32

func protect(p *plan, bike Bike, way Way) {
	if text := tyresFor(way); text != "" {
		p.add(Step{ID: "tyres_air", Stage: "protect", Needs: []string{asBuiltID}, AsBuilt: []string{"pressures"}, Text: text})
	}
	for _, e := range bike.ends() {
		p.add(Step{ID: e.side + "_wheel_bagged", Stage: "protect", Text: e.bagged(way),
			Needs: []string{e.side + "_wheel_out", e.side + "_axle_in", e.side + "_rotor_six", e.side + "_rotor_ring", "rotors_sleeve", "tyres_air"}})
	}
	opened := p.ids(func(s Step) bool { return s.Loosens })
	if way != Car {
		p.add(Step{ID: "padding", Stage: "protect", Needs: []string{"derailleur", "post", "bars", "front_axle_in", "rear_axle_in"},
			Text: "Tie the chain, padding on every tube that something touches, strap what can move. A strap or clamp goes on the post, not on carbon tubes."})
	}
	p.add(Step{ID: "small_parts", Stage: "protect", Needs: opened,
		Text: "Every small part in one labelled bag, tied to the frame. Nothing left on the floor?"})
	p.add(Step{ID: "tools", Stage: "protect", Needs: opened, Text: toolsFor(way)})
}

// tyresFor: nobody lets air out for nothing, since beads and rims are safer with it.
func tyresFor(way Way) string {
	switch {
	case way == Car:
		return "Tyres stay as they are. Only near the limit of tyre or rim, and in a car that gets hot: let a little out."
	case way.handled():
		return "Tyres stay as they are, not flat. Only within " + short(HoldMarginKPa) + " kPa of the lower maximum of tyre and rim: let a little out, to " +
			short(HoldMarginKPa) + " kPa below it. Whoever carries it wants less: do as they say."
	}
	return ""
}

func (e end) bagged(way Way) string {
	text := e.words + " wheel packed upright, hub ends capped. "
	switch {
	case way.handled() && e.disc():
		text = e.words + " wheel in its bag: hub ends capped, no rotor left on it, nothing sharp at the spokes."
	case way.handled():
		text = e.words + " wheel in its bag: hub ends capped, nothing sharp at the spokes."
	case !e.disc():
		text += "Nothing sharp at the spokes."
	case way == Car:
		text += only(e.surelyDisc(), "with a disc brake") + "The rotor stays on: never lay the wheel on its rotor with weight on top."
	default:
		text += only(e.surelyDisc(), "with a disc brake") + "The rotor stays on, facing in: nothing leans on it, and the wheel never lies on it with weight on top."
	}
	return text
}

func toolsFor(way Way) string {
	switch {
	case way == Courier:
		return "The tools on the list travel to where the bike arrives: in the parcel, or in your hold luggage."
	case way.handled():
		return "The tools on the list go into the hold, not into the cabin. Weigh the whole: many desks stop at " + short(DeskKG) + " kg, hands at " + short(HandsKG) + " kg."
	}
	return "The tools on the list come along, within reach."
}
