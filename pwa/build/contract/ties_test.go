package contract

import (
	"slices"
	"strings"
	"testing"

	"rimside/calc/registry"
	"rimside/store/record"
)

// ties are fields of records that go into requests as they are. A record's field must not hold what the request then refuses, nor
// refuse what the form of the request takes. (kinds.json is a format for ever and stands on its own; this holds the two together.)
var ties = map[string][]string{
	"person.mass_kg":           {"pressure rider_kg"},
	"bike.mass_kg":             {"pressure bike_kg"},
	"bike.front_share":         {"pressure front_share"},
	"bike.front_load_kg":       {"pressure front_load_kg"},
	"bike.rear_load_kg":        {"pressure rear_load_kg"},
	"bike.firmness":            {"pressure firmness"},
	"bike.brake":               {"checks bike.brake", "due bike.brake", "pack bike.brake", "match bike.brake"},
	"wheel.brake":              {"checks bike.front.brake", "due bike.rear.brake", "match spares.*.brake"},
	"wheel.setup":              {"pressure front.tyre.setup", "pressure rear.tyre.setup", "checks bike.front.setup"},
	"wheel.inner_mm":           {"pressure front.rim.inner_mm", "pressure rear.rim.inner_mm", "ready bike.front.inner_mm"},
	"wheel.profile":            {"pressure front.rim.profile", "pressure rear.rim.profile", "checks bike.front.profile"},
	"wheel.bead_seat_mm":       {"pressure front.rim.bead_seat_mm", "pressure rear.rim.bead_seat_mm", "ready bike.front.bead_seat_mm", "match spares.*.bead_seat_mm", "fit bead_seat_mm"},
	"wheel.max_kpa":            {"pressure front.rim.max_kpa", "pressure rear.rim.max_kpa"},
	"wheel.table_min_label_mm": {"pressure front.rim.table_min_label_mm", "pressure rear.rim.table_min_label_mm", "ready bike.front.table_min_label_mm"},
	"wheel.table_max_label_mm": {"pressure front.rim.table_max_label_mm", "pressure rear.rim.table_max_label_mm", "ready bike.front.table_max_label_mm"},
	"wheel.table_max_kpa":      {"pressure front.rim.table_max_kpa", "pressure rear.rim.table_max_kpa"},
	"wheel.rim_material":       {"checks bike.front.rim_material", "salt materials.rim"},
	"wheel.nipple_material":    {"checks bike.front.nipple_material", "salt materials.nipple"},
	"wheel.spoke_material":     {"checks bike.front.spoke_material", "salt materials.spoke"},
	"wheel.hub_material":       {"checks bike.front.hub_material", "salt materials.hub"},
	"wheel.rotor_mount":        {"checks bike.front.rotor_mount"},
	"wheel.rotor_min_mm":       {"checks bike.front.rotor_min_mm", "ready bike.front.rotor_min_mm"},
	"wheel.rotor_mm":           {"match spares.*.rotor_mm", "match bike.rotor_mm"},
	"wheel.speeds":             {"match spares.*.speeds"},
	"wheel.max_cog":            {"match spares.*.max_cog"},
	"bike.speeds":              {"match bike.speeds"},
	"bike.max_cog":             {"match bike.max_cog"},
	"tyre.label_mm":            {"pressure front.tyre.label_mm", "pressure rear.tyre.label_mm", "ready bike.front.label_mm"},
	"tyre.measured_mm":         {"pressure front.tyre.measured_mm", "pressure rear.tyre.measured_mm", "match spares.*.tyre_mm"},
	"tyre.bead_seat_mm":        {"pressure front.tyre.bead_seat_mm", "ready bike.front.tyre_bead_seat_mm"},
	"tyre.sidewall":            {"pressure front.tyre.sidewall", "pressure rear.tyre.sidewall"},
	"tyre.max_kpa":             {"pressure front.tyre.max_kpa", "pressure rear.tyre.max_kpa"},
	"tyre.min_kpa":             {"pressure front.tyre.min_kpa", "pressure rear.tyre.min_kpa"},
	"tyre.bead_undersize_mm":   {"fit bead_undersize_mm"},
	"wheel.valve_width_mm":     {"fit valve_width_mm"},
	"wheel.valve_height_mm":    {"fit valve_height_mm"},
	"wheel.tape_layers":        {"fit tape_layers"},
	"wheel.tape_mm":            {"fit tape_mm"},
	"wheel.hub_width_mm":       {"match spares.*.hub_width_mm", "match bike.hub_width_mm", "cover bikes.*.rear.hub_width_mm"},
	"wheel.axle_mm":            {"match spares.*.axle_mm", "match bike.axle_mm"},
	"bike.room_front_mm":       {"match bike.room_mm", "cover bikes.*.front.room_mm"},
	"bike.room_rear_mm":        {"match bike.room_mm", "cover bikes.*.rear.room_mm"},
	"gauge.error_kpa":          {"pressure gauge_error_kpa"},
	"pump.stroke_ml":           {"pressure now.pump_stroke_ml", "pump stroke_ml"},
	"trip.way":                 {"pack way"},
	"ride.hours":               {"salt log.*.hours", "due history.*.hours"},
	"ride.km":                  {"due history.*.km"},
	"ride.kind":                {"due history.*.conditions"},
	"ride.sweat":               {"salt log.*.sweat", "due history.*.sweat"},
	"check.moment":             {"checks moment", "due history.*.moment", "ready events.*.moment"},
	"finding.severity":         {"ready events.*.severity"},
	"finding.item":             {"ready events.*.item"},
	"measure.mm":               {"ready events.*.mm"},
	"wheel.free_left_mm":       {"lacing left.length_mm", "spokes length_mm"},
	"wheel.free_right_mm":      {"lacing right.length_mm"},
	"wheel.spoke_mm":           {"lacing left.diameter_mm", "lacing right.diameter_mm", "spokes diameter_mm"},
	"wheel.spoke_most_n":       {"lacing most_n"},
}

func TestRecordsAndRequestsHaveTheSameBounds(t *testing.T) {
	rows := map[string]registry.Row{}
	for _, c := range registry.Contracts() {
		for _, row := range registry.Rows(c.Request) {
			rows[c.Name+" "+row.Path] = row
		}
	}
	for name, paths := range ties {
		kind, field, _ := strings.Cut(name, ".")
		f, found := record.Kinds()[kind].Fields[field]
		if !found {
			t.Errorf("kinds.json has no %s", name)
			continue
		}
		for _, path := range paths {
			row, found := rows[path]
			if !found {
				t.Errorf("no request has %s", path)
			} else if wrong := apart(f, row); wrong != "" {
				t.Errorf("%s and %s: %s", name, path, wrong)
			}
		}
	}
}

// apart says how a record's field and a request's differ; "" where they agree.
func apart(f record.Field, row registry.Row) string {
	switch string(row.Kind) {
	case "number", "integer":
		if f.Min == nil || f.Max == nil || *f.Min != row.Min || *f.Max != row.Max {
			return "other bounds: " + recordRow(f) + " and " + strings.Join(facts(row.Field), ", ")
		}
	case "choice":
		options, choices := slices.Sorted(slices.Values(f.Options)), slices.Sorted(slices.Values(row.Choices))
		if !slices.Equal(options, choices) {
			return "other choices: " + recordRow(f) + " and " + strings.Join(facts(row.Field), ", ")
		}
	case "text":
		if f.Max == nil || *f.Max > row.Max {
			return "a longer text: " + recordRow(f) + " and " + strings.Join(facts(row.Field), ", ")
		}
	default:
		return "cannot be compared"
	}
	return ""
}

// The comparison can fail.
func TestTheComparisonHasTeeth(t *testing.T) {
	one, two := 1.0, 2.0
	row := registry.Rows(registry.Contracts()[1].Request)[0] // a number
	row.Min, row.Max = 1, 2
	if wrong := apart(record.Field{Type: "number", Min: &one, Max: &two}, row); wrong != "" {
		t.Error(wrong)
	}
	for _, f := range []record.Field{{Type: "number", Min: &two, Max: &two}, {Type: "number", Min: &one, Max: &one}, {Type: "number", Min: &one}, {Type: "text"}} {
		if apart(f, row) == "" {
			t.Errorf("%+v passes for the same", f)
		}
	}
}
