package registry

import (
	"rimside/calc/fit"
	"rimside/calc/unit"
)

var fitCalculation = calculation{
	name: "fit",
	table: []*Field{
		beadSeatField,
		num("well_depth_mm", "mm", 0.1, 15), num("flange_mm", "mm", 1, 15),
		num("tape_layers", "", 0, 6).instead(0), num("tape_mm", "mm", 0, 1).instead(0),
		num("bead_undersize_mm", "mm", 0, 10).instead(0),
		num("valve_width_mm", "mm", 0, 30).instead(0), num("valve_height_mm", "mm", 0, 20).instead(0),
		num("well_width_mm", "mm", 1, 60).optional(), num("bead_mm", "mm", 0.5, 15).optional(),
		yesNo("insert").instead(false),
	},
	example: `{"bead_seat_mm":622,"well_depth_mm":3.2,"flange_mm":6,"tape_layers":2,"tape_mm":0.1,"bead_undersize_mm":1.5,"valve_width_mm":6,"valve_height_mm":2,"insert":false}`,
	run:     runFit,
}

func runFit(v values) (any, *Error) {
	if v.yes("insert") {
		return nil, cannot("insert", fit.ErrInsert)
	}
	if v.has("well_width_mm") != v.has("bead_mm") {
		missing, with := "bead_mm", "well_width_mm"
		if v.has("bead_mm") {
			missing, with = with, missing
		}
		return nil, wrong(CodeMissing, missing, "with", with)
	}
	layer := unit.FromMM(v.num("tape_mm"))
	rim := fit.Rim{
		BeadSeat: unit.FromMM(v.num("bead_seat_mm")), Well: unit.FromMM(v.num("well_depth_mm")), Flange: unit.FromMM(v.num("flange_mm")),
		Tape: layer * unit.Metre(v.num("tape_layers")), Undersize: unit.FromMM(v.num("bead_undersize_mm")),
		ValveWidth: unit.FromMM(v.num("valve_width_mm")), ValveHeight: unit.FromMM(v.num("valve_height_mm")),
	}
	alone, err := fit.RoomOf(rim, layer)
	if err != nil {
		return nil, cannot(fitField[err], err)
	}
	rim.Second = fit.Stacked(unit.FromMM(v.num("bead_mm")), unit.FromMM(v.num("well_width_mm")))
	room, err := fit.RoomOf(rim, layer)
	if err != nil {
		return nil, cannot("well_width_mm", err)
	}
	return fields{
		{"depth_mm", alone.Depth.MM()}, {"slack_mm", room.Slack.MM()}, {"need_mm", room.Need.MM()}, {"valve_costs_mm", room.Valve.MM()},
		{"free_arc_mm", fields{{"finish_at_valve", room.FinishAtValve.MM()}, {"start_at_valve", room.StartAtValve.MM()}}},
		{"each_tape_layer_costs_mm", room.PerTape.MM()}, {"undersize_costs_mm", room.Undersize.MM()}, {"second_bead_costs_mm", (alone.Slack - room.Slack).MM()},
		{"goes_on", string(room.Grade)},
	}, nil
}

// fitField is where a person mends what the geometry complains of.
var fitField = map[error]string{fit.ErrTape: "tape_mm", fit.ErrValve: "valve_height_mm", fit.ErrMeasure: "well_depth_mm"}

func fitAnswer() *Field {
	return result(figure("depth_mm", "mm"), figure("slack_mm", "mm"), figure("need_mm", "mm"), figure("valve_costs_mm", "mm"),
		part("free_arc_mm", figure("finish_at_valve", "mm"), figure("start_at_valve", "mm")),
		figure("each_tape_layer_costs_mm", "mm"), figure("undersize_costs_mm", "mm"), figure("second_bead_costs_mm", "mm"), key("goes_on", fit.Grades()...))
}
