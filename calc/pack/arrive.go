package pack

import (
	"slices"

	"rimside/calc/check"
)

// arrive is the way back from what was done, in the order in which parts hang on each other.
func arrive(bike Bike, out []Step) []Step {
	left := &plan{steps: out}
	p := &plan{}
	arriveRotors(p, left, bike)
	arriveDerailleur(p, left, bike)
	for _, e := range bike.ends() {
		arriveWheel(p, left, e)
	}
	arriveFit(p, left, bike)
	arrivePedals(p, left, bike)
	p.add(Step{ID: "tyres", Stage: "tyres", Tool: pump, Needs: []string{"front_wheel_in", "rear_wheel_in"}, Undoes: left.present("tyres_air"),
		AsBuilt: []string{"pressures"},
		Text:    "Bead line the same height all round, both sides. Then the pressure for this altitude and temperature, never above the lower maximum."})
	arriveGears(p, left, bike)
	arriveBrakes(p, bike)
	wheels := []string{"front_wheel_in", "rear_wheel_in", "stem_on", "bars_on", "brakes"}
	p.add(Step{ID: "second_person", Stage: "last_look", Needs: wheels,
		Text: "A second person checks axles, stem and brakes. Alone: once more from the start, reading each step aloud."})
	p.add(Step{ID: "arrival_check", Stage: "last_look", Needs: p.ids(func(Step) bool { return true }), Undoes: left.present("padding", "small_parts", "tools"),
		AsBuilt: []string{"photos"}, Text: "Compare with the photos, no part left over. Then walk around the bike: the arrival check."})
	return p.steps
}

func arriveRotors(p, left *plan, bike Bike) {
	for _, e := range bike.ends() {
		for _, m := range e.mounts() {
			if !left.has(m.id) {
				continue
			}
			text := map[string]string{
				"six_bolt": "Star order, two rounds, " + tighten(rotorBolts) + " New bolts where the thread-lock is spent.",
				"lockring": "Ring started by hand, no grease unless the maker says so, " + tighten(rotorRing),
			}[m.key]
			p.add(Step{ID: m.id + "_on", Stage: "rotors", Tool: m.tool, Must: true, Undoes: []string{m.id, "rotors_sleeve"},
				Text: only(m.known, m.words) + e.words + " rotor on, arrow the way the wheel turns, clean fingers off the track. " + text})
		}
	}
}

func arriveDerailleur(p, left *plan, bike Bike) {
	if couldHang(bike) {
		p.add(Step{ID: "hanger", Stage: "derailleur", Text: "Look along the derailleur hanger from behind: straight, in line with the wheel. Bent: to a shop before you shift."})
	}
	if left.has("derailleur") {
		p.add(Step{ID: "derailleur_on", Stage: "derailleur", Tool: hexSmall, Needs: []string{"hanger"}, Undoes: []string{"derailleur"},
			Text: "Rear derailleur on, its stop against the hanger’s, chain round the wheels as in the photo. " + tighten(derailleurBolt)})
	}
}

func arriveWheel(p, left *plan, e end) {
	if e.disc() {
		p.add(Step{ID: e.side + "_spacer_out", Stage: e.side + "_wheel", Must: true, Undoes: left.present(e.side + "_spacer"),
			Needs: []string{e.side + "_rotor_six_on", e.side + "_rotor_ring_on"},
			Text:  only(e.surelyDisc(), "with a disc brake") + e.words + " pad spacer out, now and not earlier. No lever until the rotor is between the pads."})
	}
	p.add(Step{ID: e.side + "_wheel_in", Stage: e.side + "_wheel", Tool: e.axleTool(), Must: true,
		Undoes: []string{e.side + "_wheel_out", e.side + "_axle_in", e.side + "_wheel_bagged"},
		Needs:  append([]string{e.side + "_rotor_six_on", e.side + "_rotor_ring_on", e.side + "_spacer_out"}, e.behind()...),
		Text:   e.words + " wheel in, seated in both ends. " + e.shut()})
	if e.disc() {
		p.add(Step{ID: e.side + "_rotor_true", Stage: e.side + "_wheel", Must: true, Needs: []string{e.side + "_wheel_in"}, AsBuilt: []string{"rotor_runout"},
			Text: only(e.surelyDisc(), "with a disc brake") + "Spin the wheel, fingers clear: run-out of the rotor as written down, at most " +
				short(check.RotorRunOutMM) + " mm. More than before: it was bent on the way. Touched track: isopropyl alcohol, clean cloth."})
	}
}

// behind is what hangs at this end before its wheel goes in.
func (e end) behind() []string {
	if e.side == "rear" {
		return []string{"derailleur_on"}
	}
	return nil
}

func (e end) shut() string {
	text := ""
	if could(e.Axle, "through_axle") {
		text += "Through axle by hand first: a stiff start is the wrong thread, stop. Then " + tighten(axle) + " "
	}
	if could(e.Axle, "quick_release") {
		text += "Quick release: resistance from half way, a firm push to shut. "
	}
	return trimmed(text)
}

func arriveBrakes(p *plan, bike Bike) {
	text := ""
	if slices.ContainsFunc(bike.ends(), func(e end) bool { return could(e.Brake, "rim") }) {
		text = "Rim brake: its own release shut, pads on the wall. "
	}
	p.add(Step{ID: "brakes", Stage: "brakes", Must: true,
		Needs: []string{"front_wheel_in", "rear_wheel_in", "front_spacer_out", "rear_spacer_out", "front_rotor_true", "rear_rotor_true", "bars_on"},
		Text:  text + "Both wheels in: pull each lever hard twice, it stays well before the bar. Rock the bike, spin each wheel, fingers clear: nothing knocks or rubs."})
}
