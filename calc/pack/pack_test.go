package pack_test

import (
	"slices"
	"strings"
	"testing"

	"rimside/calc/check"
	"rimside/calc/pack"
)

func both(w check.Wheel) check.Bike { return check.Bike{Front: w, Rear: w} }

// Builds that differ in all that packing asks about.
var builds = map[string]pack.Bike{
	"gravel": {Bike: both(check.Wheel{Brake: "disc", Axle: "through_axle", RotorMount: "six_bolt"}), Shifting: "cable", Pedals: "hex", Derailleur: "hanger", Post: "plain", Cockpit: "faceplate"},
	"hoses":  {Bike: both(check.Wheel{Brake: "disc", Axle: "through_axle", RotorMount: "lockring"}), Shifting: "electric", Pedals: "hex", Derailleur: "hanger", Post: "wires", Cockpit: "hoses"},
	"axle":   {Bike: both(check.Wheel{Brake: "disc", Axle: "through_axle", RotorMount: "lockring"}), Shifting: "electric", Pedals: "hex", Derailleur: "axle", Post: "dropper", Cockpit: "stem"},
	"rim":    {Bike: both(check.Wheel{Brake: "rim", Axle: "quick_release"}), Shifting: "cable", Pedals: "spanner", Derailleur: "hanger", Post: "plain", Cockpit: "stem"},
	"bare":   {Bike: both(check.Wheel{Brake: "rim", Axle: "quick_release"}), Shifting: "none", Pedals: "none", Derailleur: "none", Post: "none", Cockpit: "none"},
	"mixed": {Bike: check.Bike{Front: check.Wheel{Brake: "disc", Axle: "quick_release", RotorMount: "six_bolt"}, Rear: check.Wheel{Brake: "rim", Axle: "quick_release"}},
		Shifting: "cable", Pedals: "spanner", Derailleur: "hanger", Post: "plain", Cockpit: "faceplate"},
	"unknown": {},
}

// What stands in the lists; "F" and "R" in an id stand for front and rear.
const (
	discOut = " F_wheel_out F_spacer F_axle_in F_rotor R_wheel_out R_spacer R_axle_in R_rotor rotors_sleeve spacers_look"
	rimOut  = " F_wheel_out F_axle_in R_wheel_out R_axle_in"
	bagged  = " electrics tyres_air F_wheel_bagged R_wheel_bagged padding small_parts tools weigh saddle_bag"
	railOut = "as_built smallest_cog F_wheel_out F_spacer F_axle_in R_wheel_out R_spacer R_axle_in spacers_look"
	discIn  = " F_spacer_out F_wheel_in F_rotor_true R_spacer_out R_wheel_in R_rotor_true"
	rotorOn = "unpack F_rotor_on R_rotor_on"
	last    = " tyres electrics_on gears cage brakes second_person arrival_check"
	still   = " tyres gears cage brakes second_person arrival_check"
	flown   = "air_bag air_box air_case courier"
	shared  = " pad_spacers axle_blocks"
	end     = " hub_caps padding_straps parts_bag"
)

var lists = []struct{ ways, build, steps, arrival, bag string }{
	{flown, "gravel", "as_built try_tools smallest_cog pedals" + discOut + " derailleur chain_tied post bars" + bagged,
		rotorOn + " hanger derailleur_on" + discIn + " bars_on post_on pedals_on" + last,
		"tape_measure torque_wrench hex_8 hex_6" + shared + " torx_25 rotor_sleeve hex_4_5" + end + " pump_gauge"},
	{flown, "hoses", "as_built try_tools smallest_cog battery_off pedals" + discOut + " derailleur chain_tied post bars_turn" + bagged,
		rotorOn + " hanger derailleur_on" + discIn + " stem_on bars_on post_on pedals_on" + last,
		"tape_measure torque_wrench hex_8 hex_6" + shared + " lockring_tool lockring_handle rotor_sleeve hex_4_5" + end + " pump_gauge"},
	{flown, "axle", "as_built try_tools smallest_cog battery_off pedals" + discOut + " derailleur_guard chain_tied post stem" + bagged,
		rotorOn + discIn + " stem_on post_on pedals_on" + last,
		"tape_measure torque_wrench hex_8 hex_6" + shared + " lockring_tool lockring_handle rotor_sleeve hex_4_5" + end + " pump_gauge"},
	{flown, "rim", "as_built try_tools smallest_cog pedals" + rimOut + " derailleur chain_tied post stem" + bagged,
		"unpack hanger derailleur_on F_wheel_in R_wheel_in stem_on post_on pedals_on" + last,
		"tape_measure torque_wrench spanner_15 axle_blocks hex_4_5" + end + " pump_gauge"},
	{flown, "bare", "as_built try_tools" + rimOut + " chain_tied" + bagged,
		"unpack F_wheel_in R_wheel_in tyres electrics_on brakes second_person arrival_check",
		"tape_measure torque_wrench axle_blocks" + end + " pump_gauge"},
	{flown, "mixed", "as_built try_tools smallest_cog pedals F_wheel_out F_spacer F_axle_in F_rotor R_wheel_out R_axle_in rotors_sleeve spacers_look derailleur chain_tied post bars" + bagged,
		"unpack F_rotor_on hanger derailleur_on F_spacer_out F_wheel_in F_rotor_true R_wheel_in bars_on post_on pedals_on" + last,
		"tape_measure torque_wrench spanner_15" + shared + " torx_25 rotor_sleeve hex_4_5" + end + " pump_gauge"},
	{flown, "unknown", "as_built try_tools smallest_cog battery_off pedals" + discOut + " derailleur chain_tied post bars_turn" + bagged,
		rotorOn + " hanger derailleur_on" + discIn + " stem_on bars_on post_on pedals_on" + last,
		"tape_measure torque_wrench pedal_tools hex_6" + shared + " rotor_tools lockring_handle rotor_sleeve hex_4_5" + end + " pump_gauge"},
	{"train", "hoses", railOut + " chain_tied F_wheel_bagged R_wheel_bagged padding small_parts tools", "unpack" + discIn + still,
		"tape_measure hex_6" + shared + end + " torque_wrench pump_gauge"},
	{"train", "rim", "as_built smallest_cog" + rimOut + " chain_tied F_wheel_bagged R_wheel_bagged padding small_parts tools", "unpack F_wheel_in R_wheel_in" + still,
		"tape_measure axle_blocks" + end + " pump_gauge"},
	{"car", "hoses", railOut + " F_wheel_bagged R_wheel_bagged small_parts tools", "unpack" + discIn + still,
		"tape_measure hex_6" + shared + " hub_caps parts_bag torque_wrench pump_gauge"},
	{"car", "unknown", railOut + " F_wheel_bagged R_wheel_bagged small_parts tools", "unpack" + discIn + still,
		"tape_measure hex_6" + shared + " hub_caps parts_bag torque_wrench pump_gauge"},
}

func ids(steps []pack.Step) string {
	var out []string
	for _, s := range steps {
		out = append(out, s.ID)
	}
	return strings.Join(out, " ")
}

func TestWaysAndBuilds(t *testing.T) {
	sides := strings.NewReplacer("F_", "front_", "R_", "rear_")
	tried := map[string]bool{}
	for _, c := range lists {
		for way := range strings.FieldsSeq(c.ways) {
			tried[way], tried[c.build] = true, true
			a := pack.Plan(pack.Trip{Bike: builds[c.build], Way: pack.Way(way), USLeg: "no"})
			if got, want := ids(a.Steps), sides.Replace(c.steps); got != want {
				t.Errorf("%s, %s, packing:\n%s, want\n%s", way, c.build, got, want)
			}
			if got, want := ids(a.Arrival), sides.Replace(c.arrival); got != want {
				t.Errorf("%s, %s, arrival:\n%s, want\n%s", way, c.build, got, want)
			}
			if got := strings.Join(a.Bag, " "); got != c.bag {
				t.Errorf("%s, %s: the bag holds\n%s, want\n%s", way, c.build, got, c.bag)
			}
		}
	}
	for _, name := range append(pack.Ways(), slices.Collect(keysOf(builds))...) {
		if !tried[name] {
			t.Errorf("%s was not tried", name)
		}
	}
}

func keysOf(m map[string]pack.Bike) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// Home is a list of its own: nothing is tried at home, what was written down is compared, and what was bought there stays there.
func TestHome(t *testing.T) {
	for _, way := range pack.Ways() {
		for name, build := range builds {
			out := pack.Plan(pack.Trip{Bike: build, Way: pack.Way(way), USLeg: "no"})
			home := pack.Plan(pack.Trip{Bike: build, Way: pack.Way(way), USLeg: "no", Home: true})
			want := strings.ReplaceAll(ids(out.Steps), " try_tools", "")
			if way != "train" && way != "car" {
				want += " leave_there"
			}
			if got := ids(home.Steps); got != want || ids(home.Arrival) != ids(out.Arrival) {
				t.Errorf("%s, %s, home:\n%s, want\n%s", way, name, got, want)
			}
			if out.Steps[0].Notes[0] != "as_built" || home.Steps[0].Notes[0] != "as_built_again" {
				t.Errorf("%s, %s: %v, %v", way, name, out.Steps[0].Notes, home.Steps[0].Notes)
			}
		}
	}
}

func step(t *testing.T, list []pack.Step, id string) pack.Step {
	t.Helper()
	for _, s := range list {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no step %s in %s", id, ids(list))
	return pack.Step{}
}

// What a step says follows the build.
func TestWhatIsSaid(t *testing.T) {
	for _, c := range []struct{ build, id, notes string }{
		{"hoses", "bars_turn", "hoses_stay fork_hold ring_order stem_wedge"}, {"axle", "stem", "fork_hold ring_order stem_wedge hoses_kink bolts_back"},
		{"gravel", "bars", "bars_faceplate hoses_kink bolts_back"}, {"unknown", "bars_turn", "hoses_stay fork_hold ring_order stem_wedge"},
		{"hoses", "post", "post_mark post_wedge post_wires"}, {"axle", "post", "post_mark post_wedge post_dropper"}, {"gravel", "post", "post_mark post_wedge"},
		{"gravel", "front_axle_in", "block_ends through_axle_back"}, {"rim", "rear_axle_in", "block_ends skewer_out"},
		{"gravel", "front_rotor", "rotor_arms rotor_mark six_bolt_off"}, {"hoses", "rear_rotor", "rotor_arms rotor_mark lockring_off"},
		{"rim", "front_wheel_out", "rim_release quick_release_open"}, {"gravel", "front_wheel_out", "through_axle_open rotor_hot"},
		{"gravel", "try_tools", "try_tools"}, {"hoses", "try_tools", "try_tools lockring_tools_two"}, {"rim", "as_built", "as_built"},
		{"gravel", "front_rotor_true", "runout_compare clean_track"}, {"rim", "brakes", "rim_release_shut lever_twice rock_spin"}, {"gravel", "brakes", "lever_twice rock_spin"},
	} {
		a := pack.Plan(pack.Trip{Bike: builds[c.build], Way: pack.AirBag, USLeg: "no"})
		if got := strings.Join(step(t, slices.Concat(a.Steps, a.Arrival), c.id).Notes, " "); got != c.notes {
			t.Errorf("%s, %s says %s, want %s", c.build, c.id, got, c.notes)
		}
	}
	for _, c := range []struct {
		way  pack.Way
		note string
	}{{pack.AirBag, "tools_hold"}, {pack.Courier, "tools_parcel"}, {pack.Train, "tools_near"}, {pack.Car, "tools_near"}} {
		if got := step(t, pack.Plan(pack.Trip{Way: c.way}).Steps, "tools").Notes[0]; got != c.note {
			t.Errorf("%s says %s, want %s", c.way, got, c.note)
		}
	}
	a := pack.Plan(pack.Trip{Bike: builds["gravel"], Way: pack.Train, USLeg: "no"})
	if got := step(t, a.Steps, "front_wheel_bagged").Notes; !slices.Contains(got, "rotor_stays") {
		t.Errorf("by train the rotor stays on, and the bag says %v", got)
	}
}

// The torques are those of the published tables, with the pull at a handle: 40 N m are 16 kg at the end of 25 cm.
func TestTorques(t *testing.T) {
	for _, c := range []struct {
		build, id, prefix         string
		low, high, pull, handleCM float64
	}{
		{"gravel", "front_rotor_on", "bolts_", 5, 6, 5, 10}, {"hoses", "front_rotor_on", "ring_", 40, 40, 16, 25}, {"gravel", "rear_wheel_in", "", 12, 15, 6, 20},
		{"gravel", "derailleur_on", "", 8, 9.6, 8, 10}, {"axle", "stem_on", "cap_", 1, 2, 1, 10}, {"axle", "stem_on", "", 5, 6, 5, 10},
		{"gravel", "bars_on", "", 4, 6, 4, 10}, {"gravel", "post_on", "", 4, 5, 4, 10}, {"gravel", "pedals_on", "", 35, 39, 14, 25},
	} {
		s := step(t, pack.Plan(pack.Trip{Bike: builds[c.build], Way: pack.AirBox, USLeg: "no"}).Arrival, c.id)
		for name, want := range map[string]float64{"low_nm": c.low, "high_nm": c.high, "pull_kg": c.pull, "handle_cm": c.handleCM} {
			if at := slices.Index(s.Values, pack.Value{Name: c.prefix + name, Number: want}); at < 0 {
				t.Errorf("%s, %s has %v, want %s%s %v", c.build, c.id, s.Values, c.prefix, name, want)
			}
		}
	}
}

// Only what this way touches is asked, and nothing that is known.
func TestQuestions(t *testing.T) {
	words := func(list []pack.Question) string {
		var out []string
		for _, q := range list {
			out = append(out, strings.TrimSuffix(q.Field+" "+q.Side, " "))
		}
		return strings.Join(out, ", ")
	}
	disc := builds["gravel"]
	disc.Front.RotorMount, disc.Rear.Axle, disc.Cockpit = "", "", ""
	front := builds["gravel"]
	front.Front.Brake = ""
	for _, c := range []struct {
		way, leg string
		bike     pack.Bike
		want     string
	}{
		{"air_bag", "", pack.Bike{}, "legs_us, brake, axle front, axle rear, pedals, shifting, derailleur, seatpost, cockpit"}, {"train", "", pack.Bike{}, "brake, axle front, axle rear"},
		{"courier", "", builds["gravel"], "legs_us"}, {"air_bag", "yes", builds["gravel"], ""}, {"air_bag", "no", builds["bare"], ""}, {"car", "", disc, "axle rear"},
		{"air_bag", "no", disc, "rotor_mount front, axle rear, cockpit"}, {"air_bag", "no", front, "brake front"},
	} {
		if got := words(pack.Plan(pack.Trip{Bike: c.bike, Way: pack.Way(c.way), USLeg: c.leg}).Ask); got != c.want {
			t.Errorf("%s asks %s, want %s", c.way, got, c.want)
		}
	}
}
