package registry_test

import (
	"encoding/json"
	"slices"
	"sort"
	"strings"
	"testing"

	"rimside/calc/registry"
)

// called answers a request as JSON of any shape.
func called(t *testing.T, name, body string) any {
	t.Helper()
	raw, err := registry.Call(name, []byte(body))
	if err != nil {
		t.Fatal(err)
	}
	var out any
	if err := json.Unmarshal(raw, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func namesOf(object any) string {
	var names []string
	for name := range object.(map[string]any) {
		names = append(names, name)
	}
	sort.Strings(names)
	return strings.Join(names, " ")
}

// The published shapes: members that others rely on.
func TestChecksDueAndSaltKeepTheirShape(t *testing.T) {
	for _, item := range called(t, "checks", registry.Example("checks")).([]any) {
		if names := namesOf(item); names != "care group id limit measure source station worst" {
			t.Errorf("a check has %s", names)
		}
		check := item.(map[string]any)
		if (check["limit"] == nil) != (check["measure"] == nil) || check["limit"] != nil && namesOf(check["limit"]) != "unit value" {
			t.Errorf("%v", check)
		}
	}
	for _, item := range called(t, "due", registry.Example("due")).([]any) {
		if names := namesOf(item); names != "due id overdue_days source why" {
			t.Errorf("a due item has %s", names)
		}
		if names := namesOf(item.(map[string]any)["why"]); names != "code values" {
			t.Errorf("a reason has %s", names)
		}
	}
	answer := called(t, "salt", registry.Example("salt"))
	if names := namesOf(answer); names != "couples since_wash_g wash_due why" {
		t.Errorf("salt has %s", names)
	}
	for _, couple := range answer.(map[string]any)["couples"].([]any) {
		if names := namesOf(couple); names != "anode cathode gap_v over_v rank where" {
			t.Errorf("a couple has %s", names)
		}
	}
}

// Everything about a bike may be unknown; an answer is a list even when it is short.
func TestNothingKnown(t *testing.T) {
	if list := called(t, "checks", `{"bike":{},"moment":"start"}`).([]any); len(list) != 11 {
		t.Errorf("an unknown bike is asked %d at the start", len(list))
	}
	for _, item := range called(t, "due", `{"bike":{},"today":"2026-07-14"}`).([]any) {
		if d := item.(map[string]any); d["due"] != "2026-07-14" || d["overdue_days"] != 0.0 {
			t.Errorf("%v", d)
		}
	}
	salt := called(t, "salt", `{"log":[],"today":"2026-07-14"}`).(map[string]any)
	if couples, isList := salt["couples"].([]any); !isList || len(couples) != 0 || salt["wash_due"] != "" || salt["since_wash_g"] != 0.0 {
		t.Errorf("%v", salt)
	}
}

// A wheel's own brake wins over the bike's word, which stands for a wheel that says nothing.
func TestBrakeOfBikeAndWheel(t *testing.T) {
	asked := func(bike, id string) bool {
		list := called(t, "checks", `{"bike":`+bike+`,"moment":"evening"}`).([]any)
		return slices.ContainsFunc(list, func(c any) bool { return c.(map[string]any)["id"] == id })
	}
	for _, c := range []struct {
		bike, id string
		want     bool
	}{
		{`{"brake":"disc"}`, "front_brake.pads", true}, {`{"brake":"disc"}`, "front_brake.wall", false},
		{`{"brake":"disc","rear":{"brake":"rim"}}`, "rear_brake.wall", true}, {`{"brake":"disc","rear":{"brake":"rim"}}`, "rear_brake.pads", false},
		{`{}`, "front_brake.pads", true}, {`{}`, "front_brake.wall", true},
	} {
		if got := asked(c.bike, c.id); got != c.want {
			t.Errorf("%s: %s asked %v", c.bike, c.id, got)
		}
	}
}

// An interval left out is the usual one, as the field tells.
func TestIntervalsLeftOut(t *testing.T) {
	dueOn := func(intervals string) string {
		body := `{"bike":{},"today":"2026-07-14","history":[{"kind":"bolts","day":"2026-07-01"}]` + intervals + `}`
		for _, item := range called(t, "due", body).([]any) {
			if d := item.(map[string]any); d["id"] == "bolts" {
				return d["due"].(string)
			}
		}
		t.Fatal("bolts are not listed")
		return ""
	}
	told := false
	for _, c := range registry.Contracts() {
		for _, row := range registry.Rows(c.Request) {
			told = told || row.Path == "intervals.bolts_days" && row.Default == 90.0
		}
	}
	if usual, edited := dueOn(""), dueOn(`,"intervals":{"bolts_days":7}`); !told || usual != "2026-09-29" || edited != "2026-07-08" {
		t.Errorf("told %v, usual %s, edited %s", told, usual, edited)
	}
}
