package pack

import "slices"

// arriveFit puts stem, bars, post and pedals back.
func arriveFit(p, left *plan, bike Bike) {
	arriveStem(p, left, bike)
	if off := left.present("bars", "bars_turn"); len(off) > 0 {
		p.add(Step{ID: "bars_on", Stage: "fit", Tool: Hex45, Takes: []string{TorqueWrench}, Must: true, Needs: []string{"stem_on", "front_wheel_in"}, Undoes: off,
			AsBuilt: []string{"bar_angle", "lever_angle", "reach"}, Values: faceplate.values(""),
			Notes: slices.Concat([]string{"bars_square", "torque"}, when(could(bike.Bar, "carbon"), "carbon_clamp"))})
	}
	if left.has("post") {
		p.add(Step{ID: "post_on", Stage: "fit", Tool: Hex45, Takes: []string{TorqueWrench}, Must: true, Undoes: []string{"post"},
			AsBuilt: []string{"post_mark", "saddle_height", "saddle_setback"}, Values: postClamp.values(""),
			Notes: slices.Concat([]string{"post_to_mark", "torque"}, when(could(bike.Frame, "carbon"), "carbon_clamp"))})
	}
	if left.has("pedals") {
		p.add(Step{ID: "pedals_on", Stage: "fit", Tool: bike.pedalTool(), Takes: []string{TorqueWrench}, Must: true, Needs: []string{"front_wheel_in", "rear_wheel_in"},
			Undoes: []string{"pedals"}, Notes: []string{"pedals_fingers", "torque"}, Values: pedalThread.values("")})
	}
}

// arriveStem: wherever the stem's clamp at the steerer was opened.
func arriveStem(p, left *plan, bike Bike) {
	off := left.present("stem", "bars_turn")
	if len(off) == 0 {
		return
	}
	p.add(Step{ID: "stem_on", Stage: "fit", Tool: Hex45, Takes: []string{TorqueWrench}, Must: true, Needs: []string{"front_wheel_in"}, Undoes: off,
		AsBuilt: []string{"spacer_stack", "reach"}, Values: append(topCap.values("cap_"), steerer.values("")...),
		Notes: slices.Concat([]string{"stem_order", "preload", "stem_align", "torque"}, when(could(bike.Bar, "carbon"), "carbon_clamp"))})
}
