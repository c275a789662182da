package pack

func leaveWheel(p *plan, e end) {
	out := e.side + "_wheel_out"
	p.loosen(Step{ID: out, Stage: e.side + "_wheel", Tool: e.axleTool(), Needs: []string{"smallest_cog", "pedals_spanner", "pedals_hex"},
		Text: e.words + " wheel out. " + e.open()})
	if e.disc() {
		p.add(Step{ID: e.side + "_spacer", Stage: e.side + "_wheel", Needs: []string{out},
			Text: only(e.surelyDisc(), "with a disc brake") +
				"Pad spacer in at once, before the bike is laid down. No lever without it. Pulled by mistake: push the pads back with a clean plastic lever."})
	}
	p.add(Step{ID: e.side + "_axle_in", Stage: e.side + "_wheel", Needs: []string{out, e.side + "_spacer"}, Text: e.guard()})
}

func (e end) axleTool() string {
	if could(e.Axle, "through_axle") {
		return hex6
	}
	return ""
}

func (e end) open() string {
	text := ""
	if could(e.Brake, "rim") {
		text += "Rim brake: open its own release first. "
	}
	if could(e.Axle, "quick_release") {
		text += "Quick release: open the lever, a few turns at the nut. "
	}
	if could(e.Axle, "through_axle") {
		text += "Through axle: unscrew it all the way, pull it out clean. "
	}
	if e.disc() {
		text += "A rotor just used burns."
	}
	return trimmed(text)
}

// guard keeps fork and rear end from being squeezed.
func (e end) guard() string {
	text := ""
	if could(e.Axle, "through_axle") {
		text += "Through axle: screw it back into the empty ends, finger tight. "
	}
	if could(e.Axle, "quick_release") {
		text += "Quick release: skewer out of the hub, springs kept; a spacer between the ends. "
	}
	return trimmed(text)
}

func leaveRotors(p *plan, bike Bike) {
	var off []string
	for _, e := range bike.ends() {
		for _, m := range e.mounts() {
			p.loosen(Step{ID: m.id, Stage: "rotors", Tool: m.tool, Needs: []string{e.side + "_wheel_out", e.side + "_spacer"},
				Text: only(m.known, m.words) + e.words + " rotor off. Mark it " + e.side + " and its direction, on an arm. " + how[m.key] +
					" Hold it by the arms: no finger on the track."})
			off = append(off, m.id)
		}
	}
	if len(off) > 0 {
		p.add(Step{ID: "rotors_sleeve", Stage: "rotors", Needs: off,
			Text: "Rotors flat together in a stiff card sleeve, clean, where nothing presses: not under a hub, not at the wall of a bag."})
	}
}

var how = map[string]string{
	"six_bolt": "Six bolts, a little each, in star order; bolts and plate in a marked bag.",
	"lockring": "Lockring off: two kinds of tool exist, inside and outside notches, so try yours now.",
}

func trimmed(text string) string {
	if n := len(text); n > 0 && text[n-1] == ' ' {
		return text[:n-1]
	}
	return text
}
