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
	"six bolts": {Bike: both(check.Wheel{Brake: "disc", Axle: "through_axle", RotorMount: "six_bolt"}), Electric: "no", Pedals: "hex", Derailleur: "hanger"},
	"lockring":  {Bike: both(check.Wheel{Brake: "disc", Axle: "through_axle", RotorMount: "lockring"}), Electric: "yes", Pedals: "hex", Derailleur: "frame"},
	"rim":       {Bike: both(check.Wheel{Brake: "rim", Axle: "quick_release"}), Electric: "no", Pedals: "spanner", Derailleur: "hanger"},
	"one gear":  {Bike: both(check.Wheel{Brake: "rim", Axle: "quick_release"}), Electric: "no", Pedals: "spanner", Derailleur: "none"},
	"mixed": {Bike: check.Bike{Front: check.Wheel{Brake: "disc", Axle: "quick_release", RotorMount: "six_bolt"}, Rear: check.Wheel{Brake: "rim", Axle: "quick_release"}},
		Electric: "no", Pedals: "spanner", Derailleur: "hanger"},
	"unknown": {},
}

// What stands in every list of a way, for a build; "F" and "R" in an id stand for front and rear.
const (
	discOut  = "F_wheel_out F_spacer F_axle_in R_wheel_out R_spacer R_axle_in"
	rimOut   = "F_wheel_out F_axle_in R_wheel_out R_axle_in"
	mixedOut = "F_wheel_out F_spacer F_axle_in R_wheel_out R_axle_in"
	sixOff   = " F_rotor_six R_rotor_six rotors_sleeve"
	ringOff  = " F_rotor_ring R_rotor_ring rotors_sleeve"
	bothOff  = " F_rotor_six F_rotor_ring R_rotor_six R_rotor_ring rotors_sleeve"
	fit      = " post bars electrics tyres_air F_wheel_bagged R_wheel_bagged padding small_parts tools"
	rail     = " electrics F_wheel_bagged R_wheel_bagged padding small_parts tools"
	boot     = " electrics tyres_air F_wheel_bagged R_wheel_bagged small_parts tools"
	discIn   = "F_spacer_out F_wheel_in F_rotor_true R_spacer_out R_wheel_in R_rotor_true"
	rimIn    = "F_wheel_in R_wheel_in"
	mixedIn  = "F_spacer_out F_wheel_in F_rotor_true R_wheel_in"
	fitOn    = " stem_on bars_on post_on"
	last     = " tyres electrics_on gears cage brakes second_person arrival_check"
	flown    = "air_bag air_box air_case courier"
)

var lists = []struct{ ways, build, steps, arrival, bag string }{
	{flown, "six bolts", "as_built smallest_cog pedals_hex " + discOut + sixOff + " derailleur" + fit,
		"F_rotor_six_on R_rotor_six_on hanger derailleur_on " + discIn + fitOn + " pedals_hex_on" + last,
		"tape measure, 8 mm hex key, 6 mm hex key, T25 key, 4 and 5 mm hex keys, pump with gauge"},
	{flown, "lockring", "as_built smallest_cog battery_off pedals_hex " + discOut + ringOff + fit,
		"F_rotor_ring_on R_rotor_ring_on " + discIn + fitOn + " pedals_hex_on" + last,
		"tape measure, 8 mm hex key, 6 mm hex key, rotor lockring tool, 4 and 5 mm hex keys, pump with gauge"},
	{flown, "rim", "as_built smallest_cog pedals_spanner " + rimOut + " derailleur" + fit,
		"hanger derailleur_on " + rimIn + fitOn + " pedals_spanner_on" + last,
		"tape measure, 15 mm pedal spanner, 4 and 5 mm hex keys, pump with gauge"},
	{flown, "one gear", "as_built pedals_spanner " + rimOut + fit,
		rimIn + fitOn + " pedals_spanner_on tyres electrics_on brakes second_person arrival_check",
		"tape measure, 15 mm pedal spanner, 4 and 5 mm hex keys, pump with gauge"},
	{flown, "mixed", "as_built smallest_cog pedals_spanner " + mixedOut + " F_rotor_six rotors_sleeve derailleur" + fit,
		"F_rotor_six_on hanger derailleur_on " + mixedIn + fitOn + " pedals_spanner_on" + last,
		"tape measure, 15 mm pedal spanner, T25 key, 4 and 5 mm hex keys, pump with gauge"},
	{flown, "unknown", "as_built smallest_cog battery_off pedals_spanner pedals_hex " + discOut + bothOff + " derailleur" + fit,
		"F_rotor_six_on F_rotor_ring_on R_rotor_six_on R_rotor_ring_on hanger derailleur_on " + discIn + fitOn + " pedals_spanner_on pedals_hex_on" + last,
		"tape measure, 15 mm pedal spanner, 8 mm hex key, 6 mm hex key, T25 key, rotor lockring tool, 4 and 5 mm hex keys, pump with gauge"},
	{"train", "six bolts", "as_built smallest_cog pedals_hex " + discOut + " derailleur" + rail, "hanger derailleur_on " + discIn + " pedals_hex_on" + last,
		"tape measure, 8 mm hex key, 6 mm hex key, 4 and 5 mm hex keys, pump with gauge"},
	{"train", "rim", "as_built smallest_cog pedals_spanner " + rimOut + " derailleur" + rail, "hanger derailleur_on " + rimIn + " pedals_spanner_on" + last,
		"tape measure, 15 mm pedal spanner, 4 and 5 mm hex keys, pump with gauge"},
	{"car", "lockring", "as_built smallest_cog battery_off " + discOut + boot, discIn + last, "tape measure, 6 mm hex key, pump with gauge"},
	{"car", "rim", "as_built smallest_cog " + rimOut + boot, "hanger " + rimIn + last, "tape measure, pump with gauge"},
	{"car", "unknown", "as_built smallest_cog battery_off " + discOut + boot, "hanger " + discIn + last, "tape measure, 6 mm hex key, pump with gauge"},
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
			a := pack.Plan(builds[c.build], pack.Way(way), "no", nil)
			if got, want := ids(a.Steps), sides.Replace(c.steps); got != want {
				t.Errorf("%s, %s, the way out:\n%s, want\n%s", way, c.build, got, want)
			}
			if got, want := ids(a.Arrival), sides.Replace(c.arrival); got != want {
				t.Errorf("%s, %s, arrival:\n%s, want\n%s", way, c.build, got, want)
			}
			if got := strings.Join(a.Bag, ", "); got != c.bag {
				t.Errorf("%s, %s: the bag holds %s, want %s", way, c.build, got, c.bag)
			}
		}
	}
	for _, way := range pack.Ways() {
		if !tried[way] {
			t.Errorf("%s was not tried", way)
		}
	}
	for build := range builds {
		if !tried[build] {
			t.Errorf("%s was not tried", build)
		}
	}
}

func step(t *testing.T, list []pack.Step, id string) pack.Step {
	t.Helper()
	i := slices.IndexFunc(list, func(s pack.Step) bool { return s.ID == id })
	if i < 0 {
		t.Fatalf("no step %s", id)
	}
	return list[i]
}

// What must stand where it matters: the words that keep hands, rotors and tyres whole.
func TestWordsAtTheStep(t *testing.T) {
	for _, c := range []struct {
		way, build, id string
		arrival        bool
		words          []string
	}{
		{"air_bag", "six bolts", "front_spacer", false, []string{"at once", "No lever"}},
		{"air_bag", "six bolts", "rear_rotor_six", false, []string{"Mark it rear and its direction", "no finger on the track", "Six bolts"}},
		{"air_bag", "lockring", "front_rotor_ring", false, []string{"Mark it front and its direction", "no finger on the track", "two kinds"}},
		{"air_bag", "six bolts", "rotors_sleeve", false, []string{"flat together", "stiff card sleeve", "nothing presses"}},
		{"air_bag", "six bolts", "tyres_air", false, []string{"stay as they are", "Only within 45 kPa", "let a little out"}},
		{"air_bag", "six bolts", "pedals_hex", false, []string{"stands on its wheels", "left-hand thread"}},
		{"air_bag", "unknown", "front_rotor_ring", false, []string{"Only with a rotor lockring."}},
		{"air_bag", "unknown", "derailleur", false, []string{"bolted straight to the frame it stays on"}},
		{"air_bag", "lockring", "battery_off", false, []string{"Shifted already?", "160 Wh"}},
		{"car", "six bolts", "front_wheel_bagged", false, []string{"never lay the wheel on its rotor with weight on top"}},
		{"train", "six bolts", "rear_wheel_bagged", false, []string{"never lies on it with weight on top"}},
		{"air_box", "six bolts", "front_rotor_six_on", true, []string{"Star order, two rounds", "5 to 6 N m", "number on the part wins", "5 kg at the end of 10 cm"}},
		{"air_box", "lockring", "front_rotor_ring_on", true, []string{"40 N m", "16 kg at the end of 25 cm"}},
		{"air_box", "six bolts", "rear_wheel_in", true, []string{"12 to 15 N m", "stiff start is the wrong thread, stop"}},
		{"air_box", "rim", "rear_wheel_in", true, []string{"resistance from half way"}},
		{"air_box", "rim", "brakes", true, []string{"own release shut", "hard twice"}},
		{"air_box", "six bolts", "front_rotor_true", true, []string{"fingers clear", "as written down", "0.2 mm"}},
		{"air_box", "six bolts", "derailleur_on", true, []string{"8 to 9.6 N m"}},
		{"air_box", "six bolts", "stem_on", true, []string{"top cap 1 to 2 N m", "5 to 6 N m"}},
		{"air_box", "six bolts", "bars_on", true, []string{"4 to 6 N m", "may look sound and fail later"}},
		{"air_box", "six bolts", "post_on", true, []string{"4 to 5 N m"}},
		{"air_box", "six bolts", "pedals_hex_on", true, []string{"35 to 39 N m", "left-hand thread"}},
		{"air_box", "six bolts", "cage", true, []string{"biggest cog", "must clear the spokes", "ingers clear"}},
		{"air_box", "six bolts", "tyres", true, []string{"Bead line", "this altitude and temperature"}},
		{"car", "rim", "second_person", true, []string{"axles, stem and brakes"}},
	} {
		a := pack.Plan(builds[c.build], pack.Way(c.way), "no", nil)
		list := a.Steps
		if c.arrival {
			list = a.Arrival
		}
		text := step(t, list, c.id).Text
		for _, w := range c.words {
			if !strings.Contains(text, w) {
				t.Errorf("%s, %s, %s does not say %q: %s", c.way, c.build, c.id, w, text)
			}
		}
	}
}

// Known builds are told without doubt, and a bike without rotors hears nothing of them.
func TestNothingIsSaidOfWhatIsNotThere(t *testing.T) {
	for _, way := range pack.Ways() {
		for _, build := range []string{"six bolts", "lockring", "rim", "one gear", "mixed"} {
			a := pack.Plan(builds[build], pack.Way(way), "no", nil)
			for _, s := range slices.Concat(a.Steps, a.Arrival) {
				if strings.HasPrefix(s.Text, "Only ") {
					t.Errorf("%s, %s, %s doubts a known build: %s", way, build, s.ID, s.Text)
				}
				if low := strings.ToLower(s.Text); (build == "rim" || build == "one gear") && (strings.Contains(low, "rotor") || strings.Contains(low, "pad spacer")) {
					t.Errorf("%s, %s, %s: %s", way, build, s.ID, s.Text)
				}
			}
		}
	}
}

// Torque by hand: 40 N m are 16 kg at the end of 25 cm.
func TestPull(t *testing.T) {
	for _, c := range []struct {
		torque, cm float64
		want       string
	}{{40, 25, "16"}, {5, 10, "5"}, {12, 20, "6"}, {35, 25, "14"}} {
		if got := pack.Pull(c.torque, c.cm); got != c.want {
			t.Errorf("%v N m at %v cm: %s kg, want %s", c.torque, c.cm, got, c.want)
		}
	}
}
