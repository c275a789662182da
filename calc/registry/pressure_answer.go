package registry

import (
	"rimside/calc/pressure"
	"rimside/calc/unit"
)

// The answer as it is sent. A nil pointer is null: there is no number to show.
type (
	pressureJSON struct {
		Front   wheelJSON    `json:"front"`
		Rear    wheelJSON    `json:"rear"`
		Notices []noticeJSON `json:"notices"`
		Bigger  []biggerJSON `json:"bigger_tyre"`
	}
	wheelJSON struct {
		Custom      *float64    `json:"custom_kpa"`
		Optimum     *float64    `json:"optimum_kpa"`
		Good        *[2]float64 `json:"good_kpa"`
		Recommended *float64    `json:"recommended_kpa"`
		Set         *float64    `json:"set_kpa"`
		Gauge       *float64    `json:"gauge_kpa"`
		AtRide      *float64    `json:"at_ride_kpa"`
		Floor       *float64    `json:"floor_kpa"`
		Ceiling     *float64    `json:"ceiling_kpa"`
		LimitedBy   string      `json:"limited_by"`
		Likely      *[2]float64 `json:"likely_kpa"`
		Width       *float64    `json:"width_mm"`
		WidthFrom   string      `json:"width_from"`
		Squash      *float64    `json:"squash"`
		Load        float64     `json:"load_n"`
		Cost        *float64    `json:"cost_w"`
		Loss        *lossJSON   `json:"loss_w"`
		Light       *float64    `json:"light_share"`
		Frame       *float64    `json:"frame_ms2"`
		Action      *actionJSON `json:"action"`
		Curve       []pointJSON `json:"curve"`
	}
	lossJSON struct {
		Casing    float64 `json:"casing"`
		Roughness float64 `json:"roughness"`
		Total     float64 `json:"total"`
	}
	actionJSON struct {
		Do      pressure.Deed `json:"do"`
		By      float64       `json:"by_kpa"`
		Strokes *float64      `json:"strokes"`
	}
	pointJSON struct {
		KPa       float64 `json:"kpa"`
		Casing    float64 `json:"casing_w"`
		Roughness float64 `json:"roughness_w"`
	}
	noticeJSON struct {
		Code     pressure.Code     `json:"code"`
		Severity pressure.Severity `json:"severity"`
		Wheel    pressure.Side     `json:"wheel"`
		Text     string            `json:"text"`
	}
	biggerJSON struct {
		Wheel       pressure.Side `json:"wheel"`
		Label       float64       `json:"label_mm"`
		Recommended float64       `json:"recommended_kpa"`
	}
)

func kpa(p unit.Pascal) *float64 { x := p.KPa(); return &x }

func kpaRange(r pressure.Range) *[2]float64 { return &[2]float64{r.Low.KPa(), r.High.KPa()} }

func pointer(x float64) *float64 { return &x }

func answerJSON(a pressure.Answer) pressureJSON {
	out := pressureJSON{Front: wheelAnswer(a.Front), Rear: wheelAnswer(a.Rear), Notices: []noticeJSON{}, Bigger: []biggerJSON{}}
	for _, n := range a.Notices {
		out.Notices = append(out.Notices, noticeJSON{n.Code, n.Severity, n.Side, n.Text})
	}
	for _, b := range a.Bigger {
		out.Bigger = append(out.Bigger, biggerJSON{b.Side, b.Label.MM(), b.Recommended.KPa()})
	}
	return out
}

func wheelAnswer(w pressure.Wheel) wheelJSON {
	out := wheelJSON{LimitedBy: string(pressure.LimitNone), WidthFrom: "predicted", Load: float64(w.Load), Curve: []pointJSON{}}
	if w.Width > 0 {
		out.Width = pointer(w.Width.MM())
	}
	if w.Measured {
		out.WidthFrom = "measured"
	}
	if w.Figures != nil {
		out.figures(w.Figures)
	}
	if w.Advice != nil {
		out.advice(w.Advice)
	}
	return out
}

func (out *wheelJSON) figures(f *pressure.Figures) {
	out.Custom, out.Floor, out.LimitedBy = kpa(f.Custom), kpa(f.Floor), string(f.Limited)
	if f.Optimum != nil {
		out.Optimum = kpa(*f.Optimum)
	}
	if f.Good != nil {
		out.Good = kpaRange(*f.Good)
	}
	if f.Ceiling != nil {
		out.Ceiling = kpa(*f.Ceiling)
	}
	for _, c := range f.Curve {
		out.Curve = append(out.Curve, pointJSON{c.Pressure.KPa(), float64(c.Casing), float64(c.Roughness)})
	}
}

func (out *wheelJSON) advice(a *pressure.Advice) {
	out.Recommended, out.Set, out.Gauge, out.AtRide = kpa(a.Recommended), kpa(a.Set), kpa(a.Gauge), kpa(a.AtRide)
	out.Likely, out.Squash = kpaRange(a.Likely), pointer(a.Squash)
	if c := a.Cost; c != nil {
		out.Loss = &lossJSON{float64(c.Casing), float64(c.Roughness), float64(c.Casing + c.Roughness)}
		out.Cost, out.Light, out.Frame = pointer(float64(c.AboveBest)), pointer(c.Light), pointer(float64(c.Acceleration))
	}
	if a.Action != nil {
		out.Action = &actionJSON{a.Action.Do, a.Action.By.KPa(), a.Action.Strokes}
	}
}
