package pack

import "slices"

// arrive is the way back from what was done, in the order in which parts hang on each other.
func arrive(bike Bike, out []Step) []Step {
	left, p := &plan{steps: out}, &plan{}
	p.add(Step{ID: "unpack", Stage: "unpack", Notes: []string{"unpack", "blow"},
		Undoes: left.present("padding", "small_parts", "tools", "chain_tied", "derailleur_guard")})
	arriveRotors(p, left, bike)
	arriveDerailleur(p, left)
	for _, e := range bike.ends() {
		arriveWheel(p, left, e)
	}
	arriveFit(p, left, bike)
	p.add(Step{ID: "tyres", Stage: "tyres", Tool: PumpGauge, Needs: []string{"front_wheel_in", "rear_wheel_in"}, Undoes: left.present("tyres_air"),
		AsBuilt: []string{"pressures"}, Notes: []string{"bead_line", "pressure_here"}})
	arriveGears(p, left, bike)
	arriveBrakes(p, bike)
	musts := p.ids(func(s Step) bool { return s.Must })
	p.add(Step{ID: "second_person", Stage: "ride", Needs: musts, Notes: []string{"second_person"}})
	p.add(Step{ID: "arrival_check", Stage: "ride", Needs: p.ids(func(Step) bool { return true }),
		AsBuilt: []string{"photos"}, Notes: []string{"compare_photos", "walk_after"}})
	return p.steps
}

func arriveRotors(p, left *plan, bike Bike) {
	for _, e := range bike.ends() {
		if !left.has(e.side + "_rotor") {
			continue
		}
		six, ring := could(e.RotorMount, "six_bolt"), could(e.RotorMount, "lockring")
		s := Step{ID: e.side + "_rotor_on", Stage: "rotors", Tool: e.rotorTool(), Takes: append([]string{TorqueWrench}, when(ring, LockringHandle)...), Must: true,
			Undoes: []string{e.side + "_rotor", "rotors_sleeve"}, Notes: []string{"rotor_arrow", "clean_fingers"}}
		if six {
			s.Notes, s.Values = append(s.Notes, "six_bolt_on"), append(s.Values, rotorBolts.values("bolts_")...)
		}
		if ring {
			s.Notes, s.Values = append(s.Notes, "lockring_on"), append(s.Values, rotorRing.values("ring_")...)
		}
		p.add(s)
	}
}

func arriveWheel(p, left *plan, e end) {
	in := e.side + "_wheel_in"
	if e.disc() {
		p.add(Step{ID: e.side + "_spacer_out", Stage: "wheels_in", Must: true, Undoes: left.present(e.side + "_spacer"),
			Needs: []string{e.side + "_rotor_on"}, Notes: []string{"spacer_last"}})
	}
	s := Step{ID: in, Stage: "wheels_in", Tool: e.axleTool(), Must: true, Undoes: []string{e.side + "_wheel_out", e.side + "_axle_in", e.side + "_wheel_bagged"},
		Needs: []string{e.side + "_rotor_on", e.side + "_spacer_out"}, Notes: []string{"seated"}}
	if e.side == "rear" {
		s.Needs = append(s.Needs, "derailleur_on")
	}
	if could(e.Axle, "through_axle") {
		s.Takes, s.Notes, s.Values = []string{TorqueWrench}, append(s.Notes, "through_axle_in", "torque"), axle.values("")
	}
	if could(e.Axle, "quick_release") {
		s.Notes = append(s.Notes, "quick_release_shut")
	}
	p.add(s)
	if e.disc() {
		p.add(Step{ID: e.side + "_rotor_true", Stage: "wheels_in", Must: true, Needs: []string{in}, AsBuilt: []string{"rotor_runout"},
			Notes: []string{"runout_compare", "clean_track"}})
	}
}

func arriveDerailleur(p, left *plan) {
	if left.has("derailleur") {
		p.add(Step{ID: "hanger", Stage: "wheels_in", Notes: []string{"hanger_straight"}})
		p.add(Step{ID: "derailleur_on", Stage: "wheels_in", Tool: Hex45, Takes: []string{TorqueWrench}, Needs: []string{"hanger"}, Undoes: []string{"derailleur"},
			Notes: []string{"derailleur_stop", "torque"}, Values: derailleurBolt.values("")})
	}
}

func arriveGears(p, left *plan, bike Bike) {
	if electric := left.present("battery_off", "electrics"); len(electric) > 0 {
		p.add(Step{ID: "electrics_on", Stage: "gears", Undoes: electric, Notes: []string{"electrics_on"}})
	}
	if !bike.shifts() {
		return
	}
	p.add(Step{ID: "gears", Stage: "gears", Needs: []string{"derailleur_on", "rear_wheel_in", "electrics_on"}, Undoes: left.present("smallest_cog"), Notes: []string{"gears_by_hand"}})
	p.add(Step{ID: "cage", Stage: "gears", Must: left.has("derailleur"), Needs: []string{"gears"}, Notes: []string{"cage_clear"}})
}

func arriveBrakes(p *plan, bike Bike) {
	rim := func(e end) bool { return could(e.Brake, "rim") }
	p.add(Step{ID: "brakes", Stage: "ride", Must: true, Notes: append(when(slices.ContainsFunc(bike.ends(), rim), "rim_release_shut"), "lever_twice", "rock_spin"),
		Needs: []string{"front_wheel_in", "rear_wheel_in", "front_spacer_out", "rear_spacer_out", "front_rotor_true", "rear_rotor_true", "stem_on", "bars_on"}})
}
