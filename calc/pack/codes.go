package pack

// StepIDs lists every step that some bike has, out and on arrival.
func StepIDs() []string {
	return []string{
		asBuiltID, "try_tools", "smallest_cog", "battery_off", "pedals",
		"front_wheel_out", "front_spacer", "front_axle_in", "front_rotor", "rear_wheel_out", "rear_spacer", "rear_axle_in", "rear_rotor",
		"rotors_sleeve", "spacers_look", "derailleur", "derailleur_guard", "chain_tied", "post", "bars", "stem", "bars_turn",
		"electrics", "tyres_air", "front_wheel_bagged", "rear_wheel_bagged", "padding", "small_parts", "tools", "weigh", "saddle_bag", "leave_there",
		"unpack", "front_rotor_on", "rear_rotor_on", "hanger", "derailleur_on", "front_spacer_out", "front_wheel_in", "front_rotor_true", "rear_spacer_out", "rear_wheel_in", "rear_rotor_true",
		"stem_on", "bars_on", "post_on", "pedals_on", "tyres", "electrics_on", "gears", "cage", "brakes", "second_person", "arrival_check",
	}
}

// AsBuilt lists what may be written down.
func AsBuilt() []string {
	return []string{"photos", "saddle_height", "saddle_setback", "post_mark", "reach", "bar_angle", "lever_angle", "spacer_stack", "pressures", "rotor_runout"}
}

// Notes lists every code of what is said about a step.
func Notes() []string {
	return []string{
		"as_built", "as_built_again", "as_built_runout", "try_tools", "lockring_tools_two", "smallest_cog", "battery_off", "battery_wh", "pedals_standing", "pedals_left",
		"rim_release", "quick_release_open", "through_axle_open", "rotor_hot", "spacer_at_once", "no_lever", "block_ends", "through_axle_back", "skewer_out",
		"rotor_arms", "rotor_mark", "six_bolt_off", "lockring_off", "rotors_sleeve", "spacers_look", "derailleur_off", "derailleur_stays", "chain_tied",
		"post_mark", "post_wedge", "post_wires", "post_dropper", "bars_faceplate", "hoses_kink", "bolts_back", "fork_hold", "ring_order", "stem_wedge", "hoses_stay",
		"electrics", "tyres_air", "wheel_bagged", "rotor_stays", "padding", "small_parts", "tools_parcel", "tools_hold", "tools_near", "weigh", "saddle_bag", "leave_there",
		"unpack", "blow", "rotor_arrow", "clean_fingers", "six_bolt_on", "lockring_on", "spacer_last", "seated", "through_axle_in", "torque", "quick_release_shut",
		"runout_compare", "clean_track", "hanger_straight", "derailleur_stop", "stem_order", "preload", "stem_align", "bars_square", "carbon_clamp", "post_to_mark",
		"pedals_fingers", "bead_line", "pressure_here", "electrics_on", "gears_by_hand", "cage_clear", "rim_release_shut", "lever_twice", "rock_spin",
		"second_person", "compare_photos", "walk_after",
	}
}
