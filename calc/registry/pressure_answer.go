package registry

import (
	"rimside/calc/pressure"
	"rimside/calc/unit"
)

func kpa(p unit.Pascal) *float64 { return pointer(p.KPa()) }

func kpaRange(r pressure.Range) *pair { return &pair{r.Low.KPa(), r.High.KPa()} }

func pointer(x float64) *float64 { return &x }

// answerJSON is the answer as it is sent. A null is a number that must not be shown.
func answerJSON(a pressure.Answer) fields {
	notices, bigger := []any{}, []any{}
	for _, n := range a.Notices {
		notices = append(notices, fields{
			{"code", string(n.Code)}, {"severity", string(n.Severity)}, {"wheel", string(n.Side)}, {"text", n.Text},
		})
	}
	for _, b := range a.Bigger {
		bigger = append(bigger, fields{{"wheel", string(b.Side)}, {"label_mm", b.Label.MM()}, {"recommended_kpa", b.Recommended.KPa()}})
	}
	return fields{
		{"front", wheelJSON(a.Front)}, {"rear", wheelJSON(a.Rear)}, {"notices", notices}, {"bigger_tyre", bigger},
	}
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
	var custom, optimum, floor, ceiling *float64
	var good *pair
	limited, curve := string(pressure.LimitNone), []any{}
	if f != nil {
		custom, floor, limited = kpa(f.Custom), kpa(f.Floor), string(f.Limited)
		if f.Optimum != nil {
			optimum = kpa(*f.Optimum)
		}
		if f.Good != nil {
			good = kpaRange(*f.Good)
		}
		if f.Ceiling != nil {
			ceiling = kpa(*f.Ceiling)
		}
		for _, c := range f.Curve {
			curve = append(curve, fields{{"kpa", c.Pressure.KPa()}, {"casing_w", float64(c.Casing)}, {"roughness_w", float64(c.Roughness)}})
		}
	}
	return fields{
		{"custom_kpa", custom}, {"optimum_kpa", optimum}, {"good_kpa", good}, {"floor_kpa", floor},
		{"ceiling_kpa", ceiling}, {"limited_by", limited}, {"curve", curve},
	}
}

// adviceJSON is what to do; all null after a stop.
func adviceJSON(a *pressure.Advice) fields {
	var recommended, set, gauge, atRide, squash *float64
	var likely *pair
	var cost *pressure.Cost
	var action *pressure.Action
	if a != nil {
		recommended, set, gauge, atRide = kpa(a.Recommended), kpa(a.Set), kpa(a.Gauge), kpa(a.AtRide)
		likely, squash, cost, action = kpaRange(a.Likely), pointer(a.Squash), a.Cost, a.Action
	}
	out := fields{
		{"recommended_kpa", recommended}, {"set_kpa", set}, {"gauge_kpa", gauge}, {"at_ride_kpa", atRide},
		{"likely_kpa", likely}, {"squash", squash}, {"action", actionJSON(action)},
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
