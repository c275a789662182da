package pack

import "slices"

const asBuiltID = "as_built"

// leave is the way out, in the order in which packing guides agree.
func leave(bike Bike, way Way) []Step {
	p := &plan{}
	p.add(Step{ID: asBuiltID, Stage: "write_down", Tool: tape, AsBuilt: bike.written(),
		Text: "Write down and photograph the bike as it stands, before the first bolt: saddle, reach, bar and lever angle, spacers, pressures" + bike.runOut() + ". Mark the post."})
	leaveDrive(p, bike)
	if way != Car {
		leavePedals(p, bike)
	}
	for _, e := range bike.ends() {
		leaveWheel(p, e)
	}
	if way.handled() {
		leaveRotors(p, bike)
	}
	if way != Car && couldHang(bike) {
		p.loosen(Step{ID: "derailleur", Stage: "derailleur", Tool: hexSmall, Needs: []string{"smallest_cog", "rear_wheel_out"},
			Text: only(sure(bike.Derailleur, "hanger"), "on a hanger; bolted straight to the frame it stays on") +
				"Rear derailleur off its hanger, wrapped and tied inside the frame. Nothing may press on the hanger."})
	}
	if way.handled() {
		leaveFit(p)
	}
	p.add(Step{ID: "electrics", Stage: "electrics", Needs: []string{asBuiltID},
		Text: "Computer, lights, sensors and loose batteries off the bike and into hand luggage, switched off."})
	protect(p, bike, way)
	return p.steps
}

func couldHang(bike Bike) bool { return could(bike.Derailleur, "hanger") }

func couldShift(bike Bike) bool { return bike.Derailleur != "none" }

// written are the things to write down of this bike.
func (b Bike) written() []string {
	out := []string{"saddle_height", "saddle_setback", "post_mark", "reach", "bar_angle", "lever_angle", "spacer_stack", "pressures", "photos"}
	if b.mayHaveRotors() {
		out = append(out, "rotor_runout")
	}
	return out
}

func (b Bike) mayHaveRotors() bool { return slices.ContainsFunc(b.ends(), end.disc) }

func (b Bike) runOut() string {
	if b.mayHaveRotors() {
		return ", run-out of the rotors"
	}
	return ""
}

func leaveDrive(p *plan, bike Bike) {
	if couldShift(bike) {
		p.add(Step{ID: "smallest_cog", Stage: "drivetrain", Needs: []string{asBuiltID},
			Text: "Shift to the smallest cog. The bike stands, one hand turns the crank; fingers clear of the chain."})
	}
	if could(bike.Electric, "yes") {
		p.loosen(Step{ID: "battery_off", Stage: "drivetrain", Needs: []string{"smallest_cog"},
			Text: only(sure(bike.Electric, "yes"), "if shifting or motor is electric") +
				"Shifted already? Then the battery off, contacts covered. Built in: switched off, buttons guarded. Over " + short(AskWh) + " Wh it does not fly."})
	}
}

func leavePedals(p *plan, bike Bike) {
	for _, kind := range pedalKinds {
		if !could(bike.Pedals, kind.key) {
			continue
		}
		p.loosen(Step{ID: kind.id, Stage: "pedals", Tool: kind.tool,
			Text: only(sure(bike.Pedals, kind.key), kind.words) +
				"Crack both pedals loose while the bike stands on its wheels, then take them off. The left one has a left-hand thread: it opens clockwise."})
	}
}

var pedalKinds = []struct{ key, id, words, tool string }{
	{"spanner", "pedals_spanner", "with flats for a spanner", spanner}, {"hex", "pedals_hex", "with a hexagon in the axle", hex8},
}

// leaveFit takes off what gives the rider's place.
func leaveFit(p *plan) {
	p.loosen(Step{ID: "post", Stage: "seatpost", Tool: hexSmall,
		Text: "Tape at the post’s height mark. Loosen the clamp, post and saddle out in one piece, the clamp bolt lightly back in."})
	p.loosen(Step{ID: "bars", Stage: "bars", Tool: hexSmall,
		Text: "Bars off the faceplate, or stem off the steerer: its spacers tied in their order. Hoses and cables without a kink. Then bolts back in their holes."})
}
