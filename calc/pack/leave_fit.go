package pack

import "slices"

// leavePost takes out what gives the saddle its place. What holds a post from inside is not pulled at.
func leavePost(p *plan, bike Bike) {
	if bike.Post == none {
		return
	}
	p.loosen(Step{ID: "post", Stage: "bars", Tool: Hex45, Must: true, Notes: slices.Concat(
		[]string{"post_mark", "post_wedge"}, when(could(bike.Post, "wires"), "post_wires"), when(could(bike.Post, "dropper"), "post_dropper"))})
}

// leaveBars: each way of taking bars off has a step of its own. Where it is not known, the one that pulls at no hose and lets no fork fall.
func leaveBars(p *plan, bike Bike) {
	switch bike.Cockpit {
	case none:
	case "faceplate":
		p.loosen(Step{ID: "bars", Stage: "bars", Tool: Hex45, Must: true, Notes: []string{"bars_faceplate", "hoses_kink", "bolts_back"}})
	case "stem":
		p.loosen(Step{ID: "stem", Stage: "bars", Tool: Hex45, Must: true, Notes: []string{"fork_hold", "ring_order", "stem_wedge", "hoses_kink", "bolts_back"}})
	default:
		p.loosen(Step{ID: "bars_turn", Stage: "bars", Tool: Hex45, Must: true, Notes: []string{"hoses_stay", "fork_hold", "ring_order", "stem_wedge"}})
	}
}
