package pack

// carbonCare stands where a clamp may hold carbon.
func carbonCare(material string) string {
	if could(material, "carbon") {
		return " Over-tightened carbon may look sound and fail later."
	}
	return ""
}

func arriveFit(p, left *plan, bike Bike) {
	if left.has("bars") {
		p.add(Step{ID: "stem_on", Stage: "stem", Tool: hexSmall, Needs: []string{"front_wheel_in"}, Undoes: []string{"bars"}, AsBuilt: []string{"spacer_stack", "reach"},
			Text: "If the stem was off: spacers as written, top cap " + newtonMetres(topCap) + ", preload only, until nothing knocks. Line up with the wheel, then clamp in turns, " +
				tighten(steerer)})
		p.add(Step{ID: "bars_on", Stage: "bars", Tool: hexSmall, Needs: []string{"stem_on"}, Undoes: []string{"bars"}, AsBuilt: []string{"bar_angle", "lever_angle"},
			Text: "Bars square and at their angle, faceplate gaps as the maker marks, else equal. Bolts in turns, " + tighten(faceplate) + carbonCare(bike.Bar)})
	}
	if left.has("post") {
		p.add(Step{ID: "post_on", Stage: "seatpost", Tool: hexSmall, Undoes: []string{"post"}, AsBuilt: []string{"post_mark", "saddle_height", "saddle_setback"},
			Text: "Post in to its mark, saddle along the tube, height as written. " + tighten(postClamp) + carbonCare(bike.Frame)})
	}
}

func arrivePedals(p, left *plan, bike Bike) {
	for _, kind := range pedalKinds {
		if left.has(kind.id) {
			p.add(Step{ID: kind.id + "_on", Stage: "pedals", Tool: kind.tool, Needs: []string{"front_wheel_in", "rear_wheel_in"}, Undoes: []string{kind.id},
				Text: only(sure(bike.Pedals, kind.key), kind.words) + "Pedals started by fingers, left one with its left-hand thread. " + tighten(pedalThread)})
		}
	}
}

func arriveGears(p, left *plan, bike Bike) {
	p.add(Step{ID: "electrics_on", Stage: "gears", Undoes: left.present("battery_off", "electrics"),
		Text: "Batteries, sensors, lights and computer back in their places, switched on."})
	if !couldShift(bike) {
		return
	}
	p.add(Step{ID: "gears", Stage: "gears", Needs: []string{"derailleur_on", "rear_wheel_in", "electrics_on"}, Undoes: left.present("smallest_cog"),
		Text: "Bike held up, chain on. Shift one cog at a time and back, the crank by hand, fingers clear of chain and spokes."})
	p.add(Step{ID: "cage", Stage: "gears", Needs: []string{"gears"},
		Text: "By hand, slowly, to the biggest cog: the cage must clear the spokes, and pushed towards them too. It touches: do not ride. Fingers clear."})
}
