package registry_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// fault calls a calculation that must refuse, and holds the error to the shape that every error has.
func fault(t *testing.T, name, body string) *registry.Error {
	t.Helper()
	answer, err := registry.Call(name, []byte(body))
	var e *registry.Error
	if !errors.As(err, &e) {
		t.Errorf("%s: no error, but %.80s for %.200s", name, answer, body)
		return &registry.Error{}
	}
	var sent struct {
		Errors []struct {
			Code, Field string
			Values      map[string]any
		}
	}
	if jsonErr := json.Unmarshal(e.JSON(), &sent); jsonErr != nil || len(sent.Errors) != len(e.All()) {
		t.Errorf("%s: sent as %s", name, e.JSON())
	}
	for i, each := range e.All() {
		if s := sent.Errors[i]; s.Code != each.Code || s.Field != each.Field || len(s.Values) != len(each.Values) {
			t.Errorf("%s: sent as %s", name, e.JSON())
		}
		if !slices.Contains(registry.Codes(), each.Code) {
			t.Errorf("%s: %q is not among the codes", name, each.Code)
		}
	}
	if answer != nil {
		t.Errorf("%s: an answer beside an error: %s", name, answer)
	}
	return e
}

func refused(t *testing.T, name, body, code, field string) {
	t.Helper()
	if e := fault(t, name, body); e.Code != code || e.Field != field {
		t.Errorf("%s: %s at %q (%v), want %s at %q for %.200s", name, e.Code, e.Field, e.Values, code, field, body)
	}
}

// with swaps a piece of text in the example, which must be there.
func with(t *testing.T, name, old, replacement string) string {
	t.Helper()
	example := registry.Example(name)
	if !strings.Contains(example, old) {
		t.Fatalf("the example of %s has no %s", name, old)
	}
	return strings.Replace(example, old, replacement, 1)
}

func TestBodiesThatAreNoRequest(t *testing.T) {
	for _, name := range registry.Names() {
		example := registry.Example(name)
		for _, c := range []struct{ body, code string }{
			{"", "malformed"}, {" ", "malformed"}, {"\x00", "malformed"}, {"{", "malformed"}, {`{"`, "malformed"}, {`{"a`, "malformed"},
			{"nul", "malformed"}, {"NaN", "malformed"}, {"{a:1}", "malformed"}, {"{'a':1}", "malformed"}, {"[1,]", "malformed"},
			{example[:len(example)-1], "malformed"}, {example[:len(example)-1] + ",}", "malformed"}, {"\ufeff" + example, "malformed"},
			{example + "x", "trailing_data"}, {example + example, "trailing_data"}, {example + "]", "trailing_data"}, {example + "\x00", "trailing_data"},
			{"null", "wrong_type"}, {"[]", "wrong_type"}, {"1", "wrong_type"}, {`"text"`, "wrong_type"}, {"true", "wrong_type"}, {"1e400", "wrong_type"},
			{strings.Repeat("[", 100000), "malformed"}, {strings.Repeat(`{"a":`, 100000), "malformed"},
		} {
			if e := fault(t, name, c.body); e.Code != c.code {
				t.Errorf("%s: %.60q is %s (%v), want %s", name, c.body, e.Code, e.Values, c.code)
			}
		}
		if _, err := registry.Call(name, []byte(" \n\t"+example+" \r\n")); err != nil {
			t.Errorf("%s: white space around the request: %v", name, err)
		}
		if missing := fault(t, name, "{}"); missing.Code != "missing" {
			t.Errorf("%s: an empty object is %s", name, missing.Code)
		}
	}
	refused(t, "presure", "{}", "unknown_calculation", "")
	refused(t, "Pressure", registry.Example("pressure"), "unknown_calculation", "")
	refused(t, "", "", "unknown_calculation", "")
}

func TestBadMembers(t *testing.T) {
	for _, c := range []struct{ name, old, replacement, code, field string }{
		{"pressure", `{"rider_kg":72`, `{"rider_kg":72,"rider_kg":72`, "duplicate", "rider_kg"},
		{"pressure", `{"rider_kg":72`, `{"rider_kg":72,"\u0072ider_kg":73`, "duplicate", "rider_kg"},
		{"pressure", `{"label_mm":40`, `{"label_mm":40,"label_mm":41`, "duplicate", "front.tyre.label_mm"},
		{"pressure", `"kmh":24`, `"kmh":24,"kmh":25`, "duplicate", "ground.0.kmh"},
		{"pressure", `{"label_mm":40`, `{"label_mm":1e400`, "out_of_bounds", "front.tyre.label_mm"},
		{"pressure", `{"label_mm":40`, `{"label_mm":-1e400`, "out_of_bounds", "front.tyre.label_mm"},
		{"pressure", `{"label_mm":40`, `{"label_mm":NaN`, "malformed", "front.tyre.label_mm"},
		{"pressure", `{"label_mm":40`, `{"label_mm":"NaN"`, "wrong_type", "front.tyre.label_mm"},
		{"pressure", `{"label_mm":40`, `{"label_mm":"40"`, "wrong_type", "front.tyre.label_mm"},
		{"pressure", `{"label_mm":40`, `{"label_mm":"32 psi"`, "wrong_type", "front.tyre.label_mm"},
		{"pressure", `{"label_mm":40`, `{"label_mm":4,1`, "malformed", "front.tyre"},
		{"pressure", `"firmness":0`, `"firmness":0.5`, "wrong_type", "firmness"},
		{"pressure", `"firmness":0`, `"firmness":3`, "out_of_bounds", "firmness"},
		{"pressure", `"kind":"pea"`, `"kind":"Pea"`, "unknown_choice", "ground.0.kind"},
		{"pressure", `"ground":[`, `"ground":[3,`, "wrong_type", "ground.0"},
		{"pressure", `"ground":[`, `"ground":[null,`, "wrong_type", "ground.0"},
		{"pressure", `"now":{`, `"Now":{`, "unknown_field", "Now"},
		{"pressure", `"now":{`, `"now":{"power":3,`, "unknown_field", "now.power"},
		// What no single field can say.
		{"pressure", `"gd0":0.0004`, `"gd0":0.0004,"kind":"pea"`, "conflict", "ground.1.gd0"},
		{"pressure", `"gd0":0.0004,`, ``, "missing", "ground.1.kind"},
		{"pressure", `"share":0.3,"kmh":20`, `"share":0.3`, "missing", "ground.1.kmh"},
		{"pressure", `"front_share":0.42`, `"front_load_kg":40`, "missing", "rear_load_kg"},
		{"pressure", `"front_share":0.42`, `"rear_load_kg":40`, "missing", "front_load_kg"},
		{"pressure", `"front_share":0.42`, `"front_load_kg":30,"rear_load_kg":40`, "conflict", "rear_load_kg"}, // less than the rider
		{"pressure", `"front_share":0.42`, `"front_load_kg":45,"rear_load_kg":45`, "conflict", "rear_load_kg"}, // more than both
		{"pressure", `"here":"set"`, `"here":"home"`, "unknown_choice", "here"},
		{"pressure", `"shift":{`, `"shift":{"both":0.1,`, "unknown_field", "shift.both"},
		{"pressure", `"shift":{"front":0.02,"rear":0}`, `"shift":0`, "wrong_type", "shift"},
		{"pressure", `"front_gauge_kpa":230`, `"front_gauge_kpa":2001`, "out_of_bounds", "now.front_gauge_kpa"}, // 20 bar
		{"expected", `"kpa":226`, `"kpa":0`, "out_of_bounds", "front.kpa"},
		{"expected", `"loss_per_day":0.01`, `"loss_per_day":1.01`, "out_of_bounds", "front.loss_per_day"},
		{"expected", `"here":{"c":2,"m":600}`, `"here":{"c":2}`, "missing", "here.m"},
		{"expected", `"at":1784185200000`, `"at":"2026-07-16"`, "wrong_type", "at"},
		{"shift", `"felt":"right"`, `"felt":"floaty"`, "unknown_choice", "notes.1.felt"},
		{"shift", `"wheel":"rear"`, `"wheel":"both"`, "unknown_choice", "notes.1.wheel"},
		{"shift", `"ride":"a"`, `"ride":""`, "out_of_bounds", "notes.0.ride"},
		{"pressure", `"inner_mm":25`, `"inner_mm":25,"table_min_label_mm":50,"table_max_label_mm":30`, "conflict", "front.rim.table_min_label_mm"},
		{"pressure", `"share":0.7,"kmh":24,"washboard":false},{"gd0":0.0004,"share":0.3`, `"share":0},{"gd0":0.0004,"share":0`, "out_of_bounds", "ground.0.share"},
		{"air", `"kpa":200,"from":{"c":20,"m":0}`, `"kpa":-60,"from":{"c":20,"m":5000}`, "cannot_compute", "kpa"}, // 54 kPa of air there (ISO 2533)
		{"leak", `"second":{"kpa":230`, `"second":{"kpa":300`, "cannot_compute", "second.kpa"},
		{"salt", `"day":"2026-07-05"`, `"day":"2026-02-29"`, "wrong_type", "log.2.day"},
		{"salt", `"day":"2026-07-05"`, `"day":20260705`, "wrong_type", "log.2.day"},
		{"salt", `"kind":"wipe"`, `"kind":"Wipe"`, "unknown_choice", "log.3.kind"},
		{"salt", `"hours":4`, `"hours":1e400`, "out_of_bounds", "log.4.hours"},
		{"salt", `"rim":"carbon"`, `"rim":"wood"`, "unknown_choice", "materials.rim"},
		{"checks", `"moment":"evening"`, `"moment":"noon"`, "unknown_choice", "moment"},
		{"checks", `"setup":"tubeless"`, `"setup":"Tubeless"`, "unknown_choice", "bike.front.setup"},
		{"checks", `"rotor_min_mm":1.5`, `"rotor_min_mm":15`, "out_of_bounds", "bike.rear.rotor_min_mm"},
		{"checks", `"km":110`, `"km":"110 km"`, "wrong_type", "history.4.km"},
		{"pack", `"way":"air_bag"`, `"way":"AIR_BAG"`, "unknown_choice", "way"},
		{"pack", `"legs_us":false`, `"legs_us":"no"`, "wrong_type", "legs_us"},
		{"pack", `"count":4`, `"count":0`, "out_of_bounds", "goods.0.count"},
		{"pack", `"count":4`, `"count":1.5`, "wrong_type", "goods.0.count"},
		{"pack", `"grams":38`, `"grams":-38`, "out_of_bounds", "goods.1.grams"},
		{"pack", `"id":"solvent"`, `"id":"dynamite"`, "unknown_choice", "goods.7.id"},
		{"pack", `"derailleur":"hanger"`, `"derailleur":"bent"`, "unknown_choice", "bike.derailleur"},
		{"spokes", `"hz":352.7`, `"hz":352.7,"samples":[0,0.5],"rate":48000`, "conflict", "samples"},
		{"spokes", `"hz":352.7`, `"samples":[0,0.5]`, "missing", "rate"},
		{"spokes", `"hz":352.7`, `"rate":48000`, "missing", "samples"},
		{"spokes", `"hz":352.7,`, ``, "missing", "hz"},
		{"spokes", `"hz":352.7`, `"samples":[0,0.5,1.001],"rate":48000`, "out_of_bounds", "samples.2"},
		{"spokes", `"hz":352.7`, `"samples":[0` + strings.Repeat(",0", 20000) + `],"rate":8000`, "out_of_bounds", "samples"}, // over two seconds
		{"lacing", `{"side":"right","hz":300}`, `{"side":"top","hz":300}`, "unknown_choice", "spokes.1.side"},
		{"ground", `[0,0.1,9.8,0.2]`, `[0,0.1,9.8]`, "out_of_bounds", "samples.0"},
		{"ground", `[0,0.1,9.8,0.2]`, `[0,0.1,9.8,"0.2"]`, "wrong_type", "samples.0.3"},
		{"ground", `[0,0.1,9.8,0.2]`, `[0,0.1,1009.8,0.2]`, "out_of_bounds", "samples.0.2"},
		{"ground", `"kmh":24`, `"kmh":24,"speeds":[[0,24]]`, "conflict", "speeds"},
		{"ground", `"kmh":24`, `"speeds":[[0,240]]`, "out_of_bounds", "speeds.0.1"},
		{"ground", `"mount":"bar"`, `"mount":"pocket"`, "unknown_choice", "mount"},
		{"ground", `[0,0.1,9.8,0.2]`, `[0,0.1,9.8,0.2]` + strings.Repeat(`,[1,0,9.8,0]`, 6000), "out_of_bounds", "samples"},
		{"pressure", `"gd0":0.0004`, `"gd0":0.0004,"gd0_low":0.0005`, "conflict", "ground.1.gd0_low"},
		{"pressure", `"kind":"pea"`, `"kind":"pea","gd0_high":0.0005`, "missing", "ground.0.gd0"},
		{"trial", `"arms":["A","B"]`, `"arms":["A","A"]`, "duplicate", "arms.1"},
		{"trial", `{"arm":"A","value":61.2`, `{"arm":"C","value":61.2`, "unknown_choice", "runs.0.arm"},
		{"trial", `"arms":["A","B"]`, `"arms":["A"]`, "out_of_bounds", "arms"},
		{"deal", `"arms":["A","B"]`, `"arms":["A","B","A"]`, "duplicate", "arms.2"},
		{"shift", `"felt":"right"`, `"trial":{"difference":1,"low":0.5}`, "missing", "notes.1.trial.high"},
		{"due", `"today":"2026-07-14"`, `"today":"today"`, "wrong_type", "today"},
		{"due", `"today":"2026-07-14"`, `"today":"9999-12-31"`, "out_of_bounds", "today"},
		{"due", `"sealant_days":45`, `"sealant_days":0`, "out_of_bounds", "intervals.sealant_days"},
		{"due", `"sealant_days":45`, `"sealant_days":45.5`, "wrong_type", "intervals.sealant_days"},
	} {
		refused(t, c.name, with(t, c.name, c.old, c.replacement), c.code, c.field)
	}
	huge := with(t, "pressure", `"ground":[`, `"ground":[`+strings.Repeat(`{"kind":"pea","share":1},`, 20000))
	refused(t, "pressure", huge, "out_of_bounds", "ground")
	deep := with(t, "pressure", `"wet":false`, `"wet":`+strings.Repeat("[", 50)+strings.Repeat("]", 50))
	if e := fault(t, "pressure", deep); e.Code != "malformed" {
		t.Errorf("deep nesting is %s", e.Code)
	}
	long := with(t, "pressure", `"rider_kg":72`, `"rider_kg":72.`+strings.Repeat("0", 100000))
	if _, err := registry.Call("pressure", []byte(long)); err != nil {
		t.Errorf("a long but good number: %v", err)
	}
}

// All faults are told at once, in the order of the request; those that no single field shows come last, unless they follow from
// one that was told.
func TestAllFaultsAreToldAtOnce(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"air", `{"kpa":"x","from":{"c":200,"m":0},"to":{"C":1,"m":null}}`, "wrong_type kpa, out_of_bounds from.c, unknown_field to.C, null to.m, missing to.c"},
		{"air", `{"kpa":1,"kpa":9e9,"from":{"c":20,"c":21,"m":0}}`, "duplicate kpa, duplicate from.c, missing to"},
		{"air", `{"kpa":"x",`, "malformed"},
		{"air", `{"kpa":1,"kpa":1}x`, "duplicate kpa, trailing_data"},
		{"salt", `{"log":[{"kind":"wipe"},3,{"day":"2026-02-30","kind":"Wipe"}],"today":"2026-07-14"}`,
			"missing log.0.day, wrong_type log.1, wrong_type log.2.day, unknown_choice log.2.kind"},
		{"pressure", with(t, "pressure", `"share":0.3,"kmh":20`, `"share":-1`), "out_of_bounds ground.1.share, missing ground.1.kmh"},
		{"pressure", with(t, "pressure", `"kind":"pea"`, `"kind":"Pea"`), "unknown_choice ground.0.kind"}, // not missing too
		{"pressure", with(t, "pressure", `"front_share":0.42`, `"front_load_kg":400`), "out_of_bounds front_load_kg"},
		{"pressure", with(t, "pressure", `"front_share":0.42`, `"front_load_kg":40,"wheels":2`), "unknown_field wheels, missing rear_load_kg"},
	} {
		var told []string
		for _, e := range fault(t, c.name, c.body).All() {
			told = append(told, e.Error())
		}
		if got := strings.Join(told, ", "); got != c.want {
			t.Errorf("%s, %.80s: %s, want %s", c.name, c.body, got, c.want)
		}
	}
	many := `{"kpa":1` + strings.Repeat(`,"kpa":1`, 1000) + strings.Repeat(`,"x":1`, 1000) + "}"
	if n := len(fault(t, "air", many).All()); n != 100 {
		t.Errorf("%d faults of a hostile body are told, want 100", n)
	}
}

// Two names can be one: a name in another case is told how it is written.
func TestWrongCaseIsTold(t *testing.T) {
	e := fault(t, "air", with(t, "air", `"kpa"`, `"KPA"`))
	if e.Code != "unknown_field" || e.Field != "KPA" || e.Values["write"] != "kpa" {
		t.Errorf("%+v", e)
	}
}
