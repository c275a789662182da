package pack

import "slices"

const asBuiltID = "as_built"

// leave takes the bike apart, in the order in which packing guides agree.
func leave(t Trip) []Step {
	p := &plan{}
	leaveBefore(p, t)
	for _, e := range t.Bike.ends() {
		leaveWheel(p, e, t.Way)
	}
	leaveBrakes(p, t)
	leaveDrive(p, t)
	if t.Way.handled() {
		leavePost(p, t.Bike)
		leaveBars(p, t.Bike)
	}
	leaveBag(p, t)
	return p.steps
}

// leaveBefore is what is done while the bike stands on its wheels.
func leaveBefore(p *plan, t Trip) {
	said := "as_built"
	if t.Home {
		said = "as_built_again"
	}
	p.add(Step{ID: asBuiltID, Stage: "before", Tool: TapeMeasure, AsBuilt: written(t), Notes: slices.Concat([]string{said}, when(t.Bike.rotors(), "as_built_runout"))})
	ring := func(e end) bool { return e.disc() && could(e.RotorMount, "lockring") }
	if t.Way.handled() && !t.Home {
		p.add(Step{ID: "try_tools", Stage: "before", Takes: []string{TorqueWrench},
			Notes: slices.Concat([]string{"try_tools"}, when(slices.ContainsFunc(t.Bike.ends(), ring), "lockring_tools_two"))})
	}
	if t.Bike.shifts() {
		p.add(Step{ID: "smallest_cog", Stage: "before", Needs: []string{asBuiltID}, Notes: []string{"smallest_cog"}})
	}
	if t.Way.handled() && t.Bike.electric() {
		p.loosen(Step{ID: "battery_off", Stage: "before", Must: true, Needs: []string{"smallest_cog"},
			Notes: []string{"battery_off", "battery_wh"}, Values: []Value{{"most_wh", AskWh}}})
	}
	if t.Way.handled() && t.Bike.Pedals != none {
		p.loosen(Step{ID: "pedals", Stage: "before", Tool: t.Bike.pedalTool(), Notes: []string{"pedals_standing", "pedals_left"}})
	}
}

func (b Bike) pedalTool() string {
	switch b.Pedals {
	case "spanner":
		return Spanner15
	case "hex":
		return Hex8
	}
	return PedalTools
}

// written are the things to write down of this bike: what comes apart, and what a journey may change.
func written(t Trip) []string {
	out := []string{"photos"}
	if t.Way.handled() && t.Bike.Post != none {
		out = append(out, "saddle_height", "saddle_setback", "post_mark")
	}
	if t.Way.handled() && t.Bike.Cockpit != none {
		out = append(out, "reach", "bar_angle", "lever_angle", "spacer_stack")
	}
	out = append(out, "pressures")
	if t.Bike.rotors() {
		out = append(out, "rotor_runout")
	}
	return out
}

func leaveWheel(p *plan, e end, way Way) {
	out, spacer := e.side+"_wheel_out", e.side+"_spacer"
	p.loosen(Step{ID: out, Stage: "wheels", Tool: e.axleTool(), Needs: []string{"smallest_cog", "battery_off", "pedals"}, Notes: slices.Concat(
		when(could(e.Brake, "rim"), "rim_release"), when(could(e.Axle, "quick_release"), "quick_release_open"),
		when(could(e.Axle, "through_axle"), "through_axle_open"), when(e.disc(), "rotor_hot"))})
	if e.disc() {
		p.add(Step{ID: spacer, Stage: "wheels", Must: true, Takes: []string{PadSpacers}, Needs: []string{out}, Notes: []string{"spacer_at_once", "no_lever"}})
	}
	p.add(Step{ID: e.side + "_axle_in", Stage: "wheels", Must: true, Takes: []string{AxleBlocks}, Needs: []string{out, spacer}, Notes: slices.Concat(
		[]string{"block_ends"}, when(could(e.Axle, "through_axle"), "through_axle_back"), when(could(e.Axle, "quick_release"), "skewer_out"))})
	if way.handled() && e.disc() {
		ring := could(e.RotorMount, "lockring")
		p.loosen(Step{ID: e.side + "_rotor", Stage: "wheels", Must: true, Tool: e.rotorTool(), Takes: when(ring, LockringHandle), Needs: []string{out, spacer},
			Notes: slices.Concat([]string{"rotor_arms", "rotor_mark"}, when(could(e.RotorMount, "six_bolt"), "six_bolt_off"), when(ring, "lockring_off"))})
	}
}

func leaveBrakes(p *plan, t Trip) {
	spacers := p.present("front_spacer", "rear_spacer")
	rotors := p.present("front_rotor", "rear_rotor")
	if len(rotors) > 0 {
		p.add(Step{ID: "rotors_sleeve", Stage: "brakes", Must: true, Takes: []string{RotorSleeve}, Needs: rotors, Notes: []string{"rotors_sleeve"}})
	}
	if len(spacers) > 0 {
		p.add(Step{ID: "spacers_look", Stage: "brakes", Needs: spacers, Notes: []string{"spacers_look"}})
	}
}

func leaveDrive(p *plan, t Trip) {
	switch d := t.Bike.Derailleur; {
	case !t.Way.handled() || d == none:
	case could(d, "hanger"):
		p.loosen(Step{ID: "derailleur", Stage: "drive", Tool: Hex45, Needs: []string{"smallest_cog", "rear_wheel_out"}, Notes: []string{"derailleur_off"}})
	default:
		p.add(Step{ID: "derailleur_guard", Stage: "drive", Needs: []string{"rear_wheel_out"}, Notes: []string{"derailleur_stays"}})
	}
	if t.Way != Car {
		p.add(Step{ID: "chain_tied", Stage: "drive", Needs: []string{"rear_wheel_out", "derailleur"}, Notes: []string{"chain_tied"}})
	}
}
