package registry

import (
	"rimside/calc/pressure"
	"rimside/calc/unit"
)

// pressureAnswer is the table of the answer. A null is a number that must not be shown, or that there is none.
func pressureAnswer() *Field {
	return result(
		wheelAnswer("front"), wheelAnswer("rear"),
		parts("notices", key("code", pressure.Codes()...), key("severity", pressure.Severities()...), key("wheel", string(pressure.Front), string(pressure.Rear), string(pressure.Both)), noticeValues()),
		parts("bigger_tyre", key("wheel", sides...), figure("label_mm", "mm"), figure("recommended_kpa", "kPa"), figure("needs_mark_kpa", "kPa")),
	)
}

// noticeValues are what the notices speak of; each code has its own few. Marks are as printed, never carried to the ride.
func noticeValues() *Field {
	return part("values",
		key("limit", pressure.Limits()...).optional(), // whose mark: at_limit_*, floor_above_ceiling, over_limit_now
		figure("mark_kpa", "kPa").optional(),          // that mark; of held_unread what an unread one counts as
		key("missing", missingMarks...).optional(),    // held_unread: which marks nobody has read
		figure("wants_kpa", "kPa").optional(),         // held_unread: the want at the ride
		figure("wants_here_kpa", "kPa").optional(),    // held_unread: what the gauge would show of it where one stands
		key("floor_by", floors...).optional(),         // floor_above_ceiling: which floor
		figure("floor_needs_kpa", "kPa").optional(),   // floor_above_ceiling: the mark that floor asks for
		figure("label_mm", "mm").optional(),           // of the pair; floor_above_ceiling: of a tyre that would do
		figure("needs_mark_kpa", "kPa").optional(),    // floor_above_ceiling: the least its sidewall must show
		figure("inner_mm", "mm").optional(),           // of the pair
		figure("least_label_mm", "mm").optional(),     // hookless_too_narrow: the narrowest allowed
		figure("min_kpa", "kPa").optional(),           // at_printed_minimum
		figure("share", "").optional(),                // partly_soft: of the distance
		figure("softer_kpa", "kPa").optional(),        // partly_soft: by how much it lowers the number at the ride
		figure("ratio", "").optional(),                // front_raised_to_rear, front_over_rear: front over rear
	)
}

var (
	missingMarks = []string{string(pressure.MissingTyre), string(pressure.MissingRim), string(pressure.MissingBoth)}
	floors       = []string{string(pressure.LimitFloor), string(pressure.LimitPrintedMinimum)}
)

func wheelAnswer(name string) *Field {
	return part(name,
		figure("custom_kpa", "kPa").nullable(), figure("want_kpa", "kPa").nullable(), figure("optimum_kpa", "kPa").nullable(),
		figure("floor_kpa", "kPa").nullable(), figure("ceiling_kpa", "kPa").nullable(), key("limited_by", pressure.Limits()...),
		parts("curve", figure("kpa", "kPa"), figure("casing_w", "W"), figure("roughness_w", "W")),
		figure("width_mm", "mm").nullable(), key("width_from", "measured", "predicted"), figure("predicted_mm", "mm").nullable(), figure("load_n", "N"),
		figure("p0_kpa", "kPa").nullable(), figure("recommended_kpa", "kPa").nullable(), figure("set_kpa", "kPa").nullable(), figure("gauge_kpa", "kPa").nullable(),
		figure("here_gauge_kpa", "kPa").nullable(), figure("at_ride_kpa", "kPa").nullable(), rangeOf("good_kpa", "kPa").nullable(),
		rangeOf("likely_kpa", "kPa").nullable(), figure("squash", "").nullable(),
		part("action", key("do", pressure.Deeds()...), figure("by_kpa", "kPa"), figure("strokes", "").nullable()).nullable(),
		figure("cost_w", "W").nullable(),
		part("loss_w", figure("casing", "W"), figure("roughness", "W"), figure("total", "W")).nullable(),
		figure("light_share", "").nullable(), figure("frame_ms2", "m/s2").nullable(),
	)
}

func kpa(p unit.Pascal) *float64 { return pointer(p.KPa()) }

func kpaRange(r pressure.Range) *pair { return &pair{r.Low.KPa(), r.High.KPa()} }

func pointer(x float64) *float64 { return &x }

// answerJSON is the answer as it is sent.
func answerJSON(a pressure.Answer) fields {
	notices, bigger := []any{}, []any{}
	for _, n := range a.Notices {
		notices = append(notices, fields{
			{"code", string(n.Code)}, {"severity", string(n.Severity)}, {"wheel", string(n.Side)}, {"values", toldValues(n.Values)},
		})
	}
	for _, b := range a.Bigger {
		bigger = append(bigger, fields{
			{"wheel", string(b.Side)}, {"label_mm", b.Label.MM()}, {"recommended_kpa", b.Recommended.KPa()}, {"needs_mark_kpa", b.NeedsMark.KPa()},
		})
	}
	return fields{
		{"front", wheelJSON(a.Front)}, {"rear", wheelJSON(a.Rear)}, {"notices", notices}, {"bigger_tyre", bigger},
	}
}

// toldValues writes a notice's values, each number in the unit that its name then carries.
func toldValues(values []pressure.Value) fields {
	out := fields{}
	for _, v := range values {
		switch v.Is {
		case pressure.IsPressure:
			out = append(out, field{v.Name + "_kpa", unit.Pascal(v.Number).KPa()})
		case pressure.IsLength:
			out = append(out, field{v.Name + "_mm", tidy(unit.Metre(v.Number).MM())})
		case pressure.IsKey:
			out = append(out, field{v.Name, v.Key})
		default:
			out = append(out, field{v.Name, v.Number})
		}
	}
	return out
}

func wheelJSON(w pressure.Wheel) fields {
	var width, predicted *float64
	if w.Predicted > 0 {
		predicted = pointer(w.Predicted.MM())
	}
	if w.Width > 0 {
		width = pointer(w.Width.MM())
	}
	from := "predicted"
	if w.Measured {
		from = "measured"
	}
	out := figuresJSON(w.Figures)
	out = append(out, fields{{"width_mm", width}, {"width_from", from}, {"predicted_mm", predicted}, {"load_n", float64(w.Load)}}...)
	return append(out, adviceJSON(w.Advice)...)
}

// figuresJSON is what an answer rests on; all null for a refused or unknown pair.
func figuresJSON(f *pressure.Figures) fields {
	var custom, want, optimum, floor, ceiling *float64
	limited, curve := string(pressure.LimitNone), []any{}
	if f != nil {
		custom, want, floor, ceiling, limited = kpa(f.Practice), kpa(f.Want), kpa(f.Floor), kpa(f.Ceiling), string(f.Limited)
		if f.Optimum != nil {
			optimum = kpa(*f.Optimum)
		}
		for _, c := range f.Curve {
			curve = append(curve, fields{{"kpa", c.Pressure.KPa()}, {"casing_w", float64(c.Casing)}, {"roughness_w", float64(c.Roughness)}})
		}
	}
	return fields{
		{"custom_kpa", custom}, {"want_kpa", want}, {"optimum_kpa", optimum}, {"floor_kpa", floor},
		{"ceiling_kpa", ceiling}, {"limited_by", limited}, {"curve", curve},
	}
}

// adviceJSON is what to do; all null after a stop.
func adviceJSON(a *pressure.Advice) fields {
	var p0, recommended, set, gauge, hereGauge, atRide, squash *float64
	var good, likely *pair
	var cost *pressure.Cost
	var action *pressure.Action
	if a != nil {
		p0, recommended, set, gauge, hereGauge, atRide = kpa(a.P0), kpa(a.Recommended), kpa(a.Set), kpa(a.Gauge), kpa(a.HereGauge), kpa(a.AtRide)
		likely, squash, cost, action = kpaRange(a.Likely), pointer(a.Squash), a.Cost, a.Action
		if a.Good != nil {
			good = kpaRange(*a.Good)
		}
	}
	out := fields{
		{"p0_kpa", p0}, {"recommended_kpa", recommended}, {"set_kpa", set}, {"gauge_kpa", gauge}, {"here_gauge_kpa", hereGauge},
		{"at_ride_kpa", atRide}, {"good_kpa", good}, {"likely_kpa", likely}, {"squash", squash}, {"action", actionJSON(action)},
	}
	return append(out, costJSON(cost)...)
}

func actionJSON(a *pressure.Action) any {
	if a == nil {
		return nil
	}
	return fields{{"do", string(a.Do)}, {"by_kpa", a.By.KPa()}, {"strokes", a.Strokes}}
}

func costJSON(c *pressure.Cost) fields {
	if c == nil {
		return fields{{"cost_w", nil}, {"loss_w", nil}, {"light_share", nil}, {"frame_ms2", nil}}
	}
	casing, roughness := float64(c.Casing), float64(c.Roughness)
	loss := fields{{"casing", casing}, {"roughness", roughness}, {"total", casing + roughness}}
	return fields{
		{"cost_w", float64(c.AboveBest)}, {"loss_w", loss}, {"light_share", c.Light}, {"frame_ms2", float64(c.Acceleration)},
	}
}
