package record_test

import (
	"encoding/json"
	"slices"
	"testing"

	"rimside/store/record"
)

// The kinds that phones and servers have agreed on: taking one away would hide what was saved.
var agreed = map[record.Role][]string{
	record.Description: {"person", "bike", "wheel", "tyre", "gauge", "pump", "trip", "event", "spare", "template", "device", "setting"},
	record.Entry: {
		"measure", "pressure_set", "note", "ride", "wash", "check", "finding", "finding_closed", "service", "pack_tick",
		"spare_out", "spare_in", "photo", "ground", "trial",
	},
	record.Control: {"erase", "agreement"},
}

func TestEveryAgreedKindIsThere(t *testing.T) {
	count := 0
	for role, names := range agreed {
		for _, name := range names {
			count++
			if kind, found := record.Kinds()[name]; !found || kind.Is != role {
				t.Errorf("%s must be there as %s, got %q", name, role, kind.Is)
			}
		}
	}
	if len(record.Kinds()) != count {
		t.Errorf("%d kinds are listed, %d agreed", len(record.Kinds()), count)
	}
}

func TestEveryFieldIsWhole(t *testing.T) {
	types := []string{"number", "text", "choice", "flag", "ref", "day", "time", "blob", "list", "object", "any"}
	for name, kind := range record.Kinds() {
		if len(kind.Fields) == 0 {
			t.Errorf("%s has no fields", name)
		}
		for field, f := range kind.Fields {
			about := name + "." + field
			whole(t, about, f, types)
			if f.Type == "list" {
				if f.Of == nil {
					t.Fatalf("%s: a list of what?", about)
				}
				whole(t, about+"[]", *f.Of, types)
			}
		}
	}
}

func whole(t *testing.T, about string, f record.Field, types []string) {
	t.Helper()
	if !slices.Contains(types, f.Type) {
		t.Errorf("%s has the unknown type %q", about, f.Type)
	}
	switch f.Type {
	case "number":
		if f.Min == nil || f.Max == nil || *f.Min >= *f.Max {
			t.Errorf("%s needs bounds", about)
		}
	case "text":
		if f.Max == nil {
			t.Errorf("%s needs a greatest length", about)
		}
	case "choice":
		if len(f.Options) < 2 {
			t.Errorf("%s needs options", about)
		}
	case "ref":
		for _, kind := range f.Kinds {
			if _, known := record.Kinds()[kind]; kind != "*" && !known {
				t.Errorf("%s points to %q, which is no kind", about, kind)
			}
		}
	}
}

func TestValuesAreJudgedByTheirField(t *testing.T) {
	for _, test := range []struct{ kind, field, value, fault string }{
		{"tyre", "measured_mm", `41.5`, ""},
		{"tyre", "measured_mm", `null`, ""},
		{"tyre", "measured_mm", `15`, ""},
		{"tyre", "measured_mm", `14.9`, "must be at least 15 mm"},
		{"tyre", "measured_mm", `151`, "must be at most 150 mm"},
		{"tyre", "measured_mm", `"41"`, "must be a number"},
		{"tyre", "measured_mm", `{`, "must be a JSON value"},
		{"tyre", "name", `"Ochre"`, ""},
		{"tyre", "name", `7`, "must be a text"},
		{"person", "number", `"1234567890123"`, "must have at most 12 characters"},
		{"wheel", "setup", `"insert"`, ""},
		{"wheel", "setup", `"glue"`, "must be one of [tube tubeless insert]"},
		{"wheel", "retired", `true`, ""},
		{"wheel", "retired", `1`, "must be true or false"},
		{"wheel", "tyre", `"0123456789abcdef0123456789abcdef"`, ""},
		{"wheel", "tyre", `""`, ""},
		{"wheel", "tyre", `"tyre 7"`, "must be the id of a record: 32 hex digits"},
		{"tyre", "fitted", `"2026-05-31"`, ""},
		{"tyre", "fitted", `"31.5.26"`, "must be a day such as 2026-05-31"},
		{"photo", "sha256", `"ab"`, "must be a file's SHA-256: 64 hex digits"},
		{"trip", "items", `[{"name":"pump"}]`, ""},
		{"trip", "items", `[7]`, "item 1 must be an object"},
		{"trip", "items", `{}`, "must be a list"},
		{"setting", "value", `[1]`, ""},
	} {
		err := record.Kinds()[test.kind].Fields[test.field].Check(json.RawMessage(test.value))
		said := ""
		if err != nil {
			said = err.Error()
		}
		if said != test.fault {
			t.Errorf("%s.%s = %s: got %q, want %q", test.kind, test.field, test.value, said, test.fault)
		}
	}
}
