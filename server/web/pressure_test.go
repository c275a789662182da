package web_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"rimside/server/web"
)

// The design's reference points once more, by HTTP: recommended front and rear in kPa, as printed.
var pressureReferences = map[string][3]float64{ // front, rear, last printed digit
	"reference: cloth 28 tubeless, patched": {482.9, 528.9, 0.1}, "reference: glove 32 tube, chips": {369.1, 402.6, 0.1},
	"reference: glove 40 tubeless, pea": {226.8, 247.4, 0.1}, "reference: cloth 45 tubeless, walnut": {179.7, 195.1, 0.1},
	"reference: hose 57 insert, egg": {110.6, 119.1, 0.1}, "reference: cloth 28 tubeless, smooth at 33 km/h": {494.0, 544.1, 0.1},
	"reference: glove 40 tubeless, setts": {204.0, 218.4, 0.1},
	"soft blend: q 0":                     {218, 237, 1}, "soft blend: q 0.25": {210, 229, 1}, "soft blend: q 0.5": {202, 220, 1},
	"soft blend: q 0.75": {195, 211, 1}, "soft blend: q 1": {187, 203, 1},
	"ground: smooth": {226, 248, 1}, "ground: pea": {218, 237, 1}, "ground: walnut": {211, 228, 1}, "ground: egg": {203, 218, 1}, "ground: fist": {197, 210, 1},
}

// recommendations are what a test reads of an answer.
type recommendations struct {
	Front, Rear struct {
		Recommended float64 `json:"recommended_kpa"`
	}
}

func askPressure(t *testing.T, server *running, body string) (a recommendations) {
	t.Helper()
	s := scenario{method: "POST", path: "/api/calc/pressure", body: body, server: server}
	response, text := exchange(t, server.addr, s.request())
	if response.StatusCode != 200 {
		t.Fatalf("%d: %s", response.StatusCode, text)
	}
	if err := json.Unmarshal([]byte(text), &a); err != nil {
		t.Fatal(err)
	}
	return a
}

func TestPressureReferencesByHTTP(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("..", "..", "calc", "registry", "testdata", "golden.json"))
	if err != nil {
		t.Fatal(err)
	}
	var list []struct {
		Name, About string
		Body        json.RawMessage
	}
	if err := json.Unmarshal(raw, &list); err != nil {
		t.Fatal(err)
	}
	real := start(t, web.Options{Calculations: realCalculations})
	asked := 0
	for _, each := range list {
		want, isReference := pressureReferences[each.About]
		if each.Name != "pressure" || !isReference {
			continue
		}
		asked++
		a := askPressure(t, real, string(each.Body))
		for i, got := range []float64{a.Front.Recommended, a.Rear.Recommended} {
			if !(math.Abs(got-want[i]) <= want[2]/2+1e-9) {
				t.Errorf("%s: %.3f, printed as %v", each.About, got, want[i])
			}
		}
	}
	if asked != len(pressureReferences) {
		t.Errorf("%d of %d reference points were asked", asked, len(pressureReferences))
	}
}

func TestPressureBadInputByHTTP(t *testing.T) {
	real := start(t, web.Options{Calculations: realCalculations})
	wheel := `{"tyre":{"label_mm":40,"sidewall":"glove","setup":"tubeless","max_kpa":400},"rim":{"bead_seat_mm":622,"inner_mm":23,"profile":"hooked","max_kpa":400}}`
	body := func(more string) string {
		return `{"rider_kg":72,"bike_kg":11,"front":` + wheel + `,"rear":` + wheel + `,"ground":[{"kind":"pea","share":1}],"set":{"c":20,"m":0},"ride":{"c":20,"m":0}` + more + `}`
	}
	ask := func(name, more string, status int, has ...string) scenario {
		return scenario{name: name, server: real, method: "POST", path: "/api/calc/pressure", body: body(more), status: status, json: status != 200, has: has}
	}
	play(t, []scenario{
		ask("the fewest fields", "", 200, `"here_gauge_kpa":`, `"p0_kpa":`),
		ask("scales that show less than the rider", `,"front_load_kg":30,"rear_load_kg":40`, 422, `"conflict"`, `"rear_load_kg"`, "less than the rider's 72 kg"),
		ask("scales that show more than all", `,"front_load_kg":50,"rear_load_kg":50`, 422, `"conflict"`, "more than the 83 kg"),
		ask("a reading above 20 bar", `,"now":{"front_gauge_kpa":2001}`, 422, `"now.front_gauge_kpa"`, "2000 kPa"),
		ask("a shift of both wheels", `,"shift":0.1`, 422, `"shift"`, `"wrong_type"`),
		ask("standing elsewhere", `,"here":"car"`, 422, `"here"`, "set, ride"),
	})
}
