package registry_test

import (
	"encoding/json"
	"math"
	"sort"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// row is one line of the design's reference points, front and rear in kPa, made by an independent implementation of the same
// model: rider 72 kg, bike 11 kg, front share 0.42, bead seat 622 mm. A NaN optimum is none.
type row struct {
	about                                   string
	optimum, practice, floor, to, low, high [2]float64
}

var none = math.NaN()

var rows = []row{
	{"reference: cloth 28 tubeless, patched", [2]float64{372, 517}, [2]float64{491.0, 529.9}, [2]float64{379.1, 410.7}, [2]float64{482.9, 528.9}, [2]float64{379, 411}, [2]float64{604, 661}},
	{"reference: glove 32 tube, chips", [2]float64{228, 323}, [2]float64{380.8, 411.0}, [2]float64{338.0, 366.1}, [2]float64{369.1, 402.6}, [2]float64{338, 366}, [2]float64{439, 497}},
	{"reference: glove 40 tubeless, pea", [2]float64{145, 208}, [2]float64{232.4, 250.9}, [2]float64{194.5, 210.7}, [2]float64{226.8, 247.4}, [2]float64{194, 211}, [2]float64{280, 309}},
	{"reference: cloth 45 tubeless, walnut", [2]float64{90, 128}, [2]float64{188.4, 203.3}, [2]float64{161.8, 175.3}, [2]float64{179.7, 195.1}, [2]float64{162, 175}, [2]float64{203, 223}},
	{"reference: hose 57 insert, egg", [2]float64{none, none}, [2]float64{117.1, 126.4}, [2]float64{84.9, 92.0}, [2]float64{110.6, 119.1}, [2]float64{85, 92}, [2]float64{123, 132}},
	{"reference: cloth 28 tubeless, smooth at 33 km/h", [2]float64{556, 772}, [2]float64{491.0, 529.9}, [2]float64{379.1, 410.7}, [2]float64{494.0, 544.1}, [2]float64{379, 452}, [2]float64{617, 680}},
	{"reference: glove 40 tubeless, setts", [2]float64{53, 81}, [2]float64{232.4, 250.9}, [2]float64{194.5, 210.7}, [2]float64{204.0, 218.4}, [2]float64{194, 211}, [2]float64{214, 229}},
}

// grounds is what the design prints of one more table, front and rear in whole kPa: glove 41 tubeless, rider 73 kg, bike 10 kg.
var grounds = map[string][2]float64{
	"soft blend: q 0": {218, 237}, "soft blend: q 0.25": {210, 229}, "soft blend: q 0.5": {202, 220}, "soft blend: q 0.75": {195, 211}, "soft blend: q 1": {187, 203},
	"ground: smooth": {226, 248}, "ground: pea": {218, 237}, "ground: walnut": {211, 228}, "ground: egg": {203, 218}, "ground: fist": {197, 210},
}

type wheelAnswer struct {
	Custom      *float64      `json:"custom_kpa"`
	Optimum     *float64      `json:"optimum_kpa"`
	Good        *[2]float64   `json:"good_kpa"`
	Floor       *float64      `json:"floor_kpa"`
	Ceiling     *float64      `json:"ceiling_kpa"`
	Recommended *float64      `json:"recommended_kpa"`
	Set         *float64      `json:"set_kpa"`
	Gauge       *float64      `json:"gauge_kpa"`
	Curve       []curveAnswer `json:"curve"`
}

type curveAnswer struct {
	KPa float64 `json:"kpa"`
}

type pressureAnswer struct {
	Front, Rear wheelAnswer
	Notices     []struct {
		Code, Severity, Wheel string
		Values                map[string]any
	}
	Bigger []struct {
		Wheel string
		Label float64 `json:"label_mm"`
		To    float64 `json:"recommended_kpa"`
		Mark  float64 `json:"needs_mark_kpa"`
	} `json:"bigger_tyre"`
}

func (a pressureAnswer) wheels() map[string]wheelAnswer {
	return map[string]wheelAnswer{"front": a.Front, "rear": a.Rear}
}

func ask(t *testing.T, body []byte) pressureAnswer {
	t.Helper()
	raw, err := registry.Call("pressure", body)
	if err != nil {
		t.Fatal(err)
	}
	var a pressureAnswer
	if err := json.Unmarshal(raw, &a); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestGoldenReferencePoints(t *testing.T) {
	bodies := map[string]json.RawMessage{}
	for _, g := range readGolden(t) {
		bodies[g.About] = g.Body
	}
	for _, r := range rows {
		a := ask(t, bodies[r.about])
		for i, w := range []wheelAnswer{a.Front, a.Rear} {
			near := func(what string, got *float64, want, step float64) {
				t.Helper()
				if math.IsNaN(want) {
					if got != nil {
						t.Errorf("%s, %d: %s is %v, want none", r.about, i, what, *got)
					}
				} else if got == nil || !(math.Abs(*got-want) <= step/2+1e-9) {
					t.Errorf("%s, %d: %s is not printed as %v", r.about, i, what, want)
				}
			}
			near("computed best", w.Optimum, r.optimum[i], 1)
			near("fine low", &w.Good[0], r.low[i], 1)
			near("fine high", &w.Good[1], r.high[i], 1)
			near("usual practice", w.Custom, r.practice[i], 0.1)
			near("floor", w.Floor, r.floor[i], 0.1)
			near("recommended", w.Recommended, r.to[i], 0.1)
		}
	}
	for about, want := range grounds {
		a := ask(t, bodies[about])
		for i, w := range []wheelAnswer{a.Front, a.Rear} {
			if w.Recommended == nil || !(math.Abs(*w.Recommended-want[i]) <= 0.5) {
				t.Errorf("%s, %d: not printed as %v", about, i, want[i])
			}
		}
	}
}

// The published shape of an answer: members that others rely on, in every answer, number or null.
func TestAnswerKeepsItsShape(t *testing.T) {
	wheel := "action at_ride_kpa ceiling_kpa cost_w curve custom_kpa floor_kpa frame_ms2 gauge_kpa good_kpa here_gauge_kpa light_share likely_kpa limited_by load_n loss_w optimum_kpa p0_kpa predicted_mm recommended_kpa set_kpa squash want_kpa width_from width_mm"
	for _, g := range readGolden(t) {
		if g.Name != "pressure" {
			continue
		}
		raw, err := registry.Call(g.Name, g.Body)
		if err != nil {
			t.Fatal(err)
		}
		var members map[string]any
		if err := json.Unmarshal(raw, &members); err != nil {
			t.Fatal(err)
		}
		for _, side := range []string{"front", "rear"} {
			var names []string
			for name := range members[side].(map[string]any) {
				names = append(names, name)
			}
			sort.Strings(names)
			if got := strings.Join(names, " "); got != wheel {
				t.Errorf("%s: %s has %s, want %s", g.About, side, got, wheel)
			}
		}
		for _, list := range []string{"notices", "bigger_tyre"} {
			if _, isList := members[list].([]any); !isList {
				t.Errorf("%s: %s is %v, no list", g.About, list, members[list])
			}
		}
		checkStopsAndCurves(t, g.About, ask(t, g.Body))
	}
}

// checkStopsAndCurves: after a stop there is no number to hold; a curve has 60 points, evenly spaced in the logarithm from 0.7 of
// the floor.
func checkStopsAndCurves(t *testing.T, about string, a pressureAnswer) {
	t.Helper()
	for side, w := range a.wheels() {
		stopped := false
		for _, n := range a.Notices {
			stopped = stopped || n.Wheel == side && n.Severity == "stop"
		}
		if stopped != (w.Recommended == nil) || stopped != (w.Set == nil) || stopped != (w.Gauge == nil) {
			t.Errorf("%s: %s stopped %v, but recommended %v", about, side, stopped, w.Recommended)
		}
		n := len(w.Curve)
		if n == 0 {
			continue
		}
		step := w.Curve[1].KPa / w.Curve[0].KPa
		if n != 60 || math.Abs(w.Curve[0].KPa / *w.Floor - 0.7) > 1e-9 || math.Abs(math.Pow(step, 59)/(w.Curve[59].KPa/w.Curve[0].KPa)-1) > 1e-9 {
			t.Errorf("%s: %s curve has %d points from %v", about, side, n, w.Curve[0].KPa)
		}
	}
}
