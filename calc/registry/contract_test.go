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
	about                                 string
	optimum, low, high, custom, floor, to [2]float64
}

var none = math.NaN()

var rows = []row{
	{"reference: cloth 28 tubeless, patched", [2]float64{372, 517}, [2]float64{241, 358}, [2]float64{584, 757}, [2]float64{453, 489}, [2]float64{379, 411}, [2]float64{453, 489}},
	{"reference: glove 32 tube, chips", [2]float64{228, 323}, [2]float64{147, 224}, [2]float64{356, 468}, [2]float64{345, 372}, [2]float64{338, 366}, [2]float64{345, 372}},
	{"reference: glove 40 tubeless, pea", [2]float64{145, 208}, [2]float64{89, 140}, [2]float64{236, 310}, [2]float64{232, 251}, [2]float64{194, 211}, [2]float64{232, 251}},
	{"reference: cloth 45 tubeless, walnut", [2]float64{90, 128}, [2]float64{58, 89}, [2]float64{139, 183}, [2]float64{193, 209}, [2]float64{162, 175}, [2]float64{174, 188}},
	{"reference: hose 57 insert, egg", [2]float64{none, none}, [2]float64{40, 40}, [2]float64{56, 71}, [2]float64{133, 144}, [2]float64{85, 92}, [2]float64{120, 130}},
	{"reference: cloth 28 tubeless, smooth at 33 km/h", [2]float64{556, 772}, [2]float64{342, 510}, [2]float64{926, 1188}, [2]float64{453, 489}, [2]float64{379, 411}, [2]float64{453, 510}},
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
	Notices     []struct{ Code, Severity, Wheel, Text string }
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
			near := func(what string, got *float64, want float64) {
				t.Helper()
				if math.IsNaN(want) {
					if got != nil {
						t.Errorf("%s, %d: %s is %v, want none", r.about, i, what, *got)
					}
				} else if got == nil || !(math.Abs(*got-want) <= 0.02*want) {
					t.Errorf("%s, %d: %s is not within 2 %% of %v", r.about, i, what, want)
				}
			}
			near("computed best", w.Optimum, r.optimum[i])
			near("good low", &w.Good[0], r.low[i])
			near("good high", &w.Good[1], r.high[i])
			near("custom", w.Custom, r.custom[i])
			near("floor", w.Floor, r.floor[i])
			near("recommended", w.Recommended, r.to[i])
		}
	}
}

// The published shape of an answer: members that others rely on, in every answer, number or null.
func TestAnswerKeepsItsShape(t *testing.T) {
	wheel := "action at_ride_kpa ceiling_kpa cost_w curve custom_kpa floor_kpa frame_ms2 gauge_kpa good_kpa light_share likely_kpa limited_by load_n loss_w optimum_kpa predicted_mm recommended_kpa set_kpa squash width_from width_mm"
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
