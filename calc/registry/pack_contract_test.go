package registry_test

import (
	"slices"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// packed is the answer of pack for a bike, a way and what follows.
func packed(t *testing.T, bike, rest string) map[string]any {
	t.Helper()
	return called(t, "pack", `{"bike":`+bike+`,`+rest+`}`).(map[string]any)
}

func stepIDs(list any) []string {
	var out []string
	for _, s := range list.([]any) {
		out = append(out, s.(map[string]any)["id"].(string))
	}
	return out
}

// The published shape: members that others rely on, lists even where they are empty.
func TestPackKeepsItsShape(t *testing.T) {
	for _, body := range []string{registry.Example("pack"), `{"bike":{},"way":"car"}`, `{"bike":{"brake":"rim"},"way":"train","direction":"home","legs_us":null,"goods":[]}`} {
		a := called(t, "pack", body).(map[string]any)
		if names := namesOf(a); names != "arrival ask bag buy_there goods rules_read steps" {
			t.Errorf("pack has %s", names)
		}
		for _, name := range []string{"arrival", "ask", "bag", "buy_there", "goods", "steps"} {
			if _, isList := a[name].([]any); !isList {
				t.Errorf("%s is %v, no list", name, a[name])
			}
		}
		for _, g := range a["goods"].([]any) {
			if names := namesOf(g); names != "asks cabin dated hold id parcel place values why" {
				t.Errorf("a good has %s", names)
			}
		}
		extras := map[string]bool{}
		for _, s := range slices.Concat(a["steps"].([]any), a["arrival"].([]any)) {
			members := s.(map[string]any)
			for _, extra := range []string{"loosens", "undoes", "as_built"} {
				if value, there := members[extra]; there {
					extras[extra] = true
					if list, isList := value.([]any); value != true && (!isList || len(list) == 0) {
						t.Errorf("%v: %s is %v", members["id"], extra, value)
					}
					delete(members, extra)
				}
			}
			if names := namesOf(members); names != "id must needs notes stage tool values" {
				t.Errorf("a step has %s", names)
			}
			if _, isList := members["needs"].([]any); !isList {
				t.Errorf("%v needs %v", members["id"], members["needs"])
			}
		}
		if len(extras) != 3 {
			t.Errorf("only %v were seen", extras)
		}
	}
}

// The way home is another list; left out, the direction is out.
func TestPackReadsTheDirection(t *testing.T) {
	for _, c := range []struct {
		rest string
		home bool
	}{{`"way":"air_box"`, false}, {`"way":"air_box","direction":"out"`, false}, {`"way":"air_box","direction":"home"`, true}} {
		if got := slices.Contains(stepIDs(packed(t, "{}", c.rest)["steps"]), "leave_there"); got != c.home {
			t.Errorf("%s: home %v", c.rest, got)
		}
	}
}

// What is told of a bike arrives where it decides.
func TestPackReadsTheBuild(t *testing.T) {
	for _, c := range []struct {
		bike, id string
		want     bool
	}{
		{`{"brake":"rim"}`, "front_spacer", false}, {`{"brake":"rim","front":{"brake":"disc"}}`, "front_spacer", true}, {`{}`, "front_spacer", true},
		{`{"brake":"disc","rear":{"brake":"rim"}}`, "rear_rotor", false}, {`{"brake":"disc"}`, "rear_rotor", true},
		{`{"electric":false}`, "battery_off", false}, {`{"electric":true}`, "battery_off", true}, {`{}`, "battery_off", true},
		{`{"shifting":"cable"}`, "battery_off", false}, {`{"shifting":"electric"}`, "battery_off", true}, {`{"shifting":"cable","electric":true}`, "battery_off", true},
		{`{"pedals":"none"}`, "pedals", false}, {`{"pedals":"spanner"}`, "pedals", true}, {`{}`, "pedals", true},
		{`{"derailleur":"frame"}`, "derailleur", false}, {`{"derailleur":"axle"}`, "derailleur_guard", true}, {`{"derailleur":"hanger"}`, "derailleur", true},
		{`{"cockpit":"hoses"}`, "bars_turn", true}, {`{"cockpit":"hoses"}`, "bars", false}, {`{"cockpit":"faceplate"}`, "bars", true}, {`{"cockpit":"stem"}`, "stem", true},
		{`{"seatpost":"none"}`, "post", false}, {`{"seatpost":"wires"}`, "post", true},
	} {
		if got := slices.Contains(stepIDs(packed(t, c.bike, `"way":"air_box"`)["steps"]), c.id); got != c.want {
			t.Errorf("%s: %s there %v", c.bike, c.id, got)
		}
	}
}

// Legs that nobody told are taken for the strictest; one piece where nobody counts; a size in the unit that its name carries.
func TestPackReadsTheGoods(t *testing.T) {
	for _, c := range []struct{ rest, want string }{
		{`"way":"air_bag","goods":[{"id":"cartridge","grams":16}]`, "no no"},
		{`"way":"air_bag","legs_us":true,"goods":[{"id":"cartridge","grams":16}]`, "no no"},
		{`"way":"air_bag","legs_us":false,"goods":[{"id":"cartridge","grams":16}]`, "no ask"},
		{`"way":"air_bag","legs_us":false,"goods":[{"id":"cartridge","count":4,"grams":16}]`, "no ask"},
		{`"way":"air_bag","legs_us":false,"goods":[{"id":"cartridge","count":5,"grams":16}]`, "no no"},
		{`"way":"air_bag","legs_us":false,"goods":[{"id":"cartridge","ml":51}]`, "no no"},
		{`"way":"air_bag","goods":[{"id":"spare_battery","wh":130}]`, "ask no"},
		{`"way":"air_bag","goods":[{"id":"power_bank","wh":74}]`, "yes no"},
		{`"way":"air_bag","goods":[{"id":"sealant","ml":60}]`, "yes yes"},
		{`"way":"air_bag","legs_us":null,"goods":[{"id":"cartridge","grams":16}]`, "no no"},
		{`"way":"air_bag","goods":[{"id":"power_bank","count":2,"wh":74,"who":"Ana"},{"id":"power_bank","count":2,"wh":74,"who":"Ben"}]`, "yes no"},
		{`"way":"air_bag","goods":[{"id":"power_bank","count":2,"wh":74,"who":"Ana"},{"id":"power_bank","count":2,"wh":74,"who":"Ana"}]`, "no no"},
	} {
		g := packed(t, "{}", c.rest)["goods"].([]any)[0].(map[string]any)
		if got := strings.Join([]string{g["cabin"].(string), g["hold"].(string)}, " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.rest, got, c.want)
		}
	}
}
