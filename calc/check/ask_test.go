package check_test

import (
	"strings"
	"testing"

	"rimside/calc/check"
	"rimside/calc/unit"
)

// both is a bike with two such wheels.
func both(w check.Wheel) check.Bike {
	return check.Bike{Front: w, Rear: w, Frame: "steel", Bar: "aluminium"}
}

var (
	roadDisc = check.Wheel{Setup: "tubeless", Profile: "hookless", Rim: "carbon", Nipple: "aluminium", Spoke: "stainless", Hub: "aluminium",
		Brake: "disc", Axle: "through_axle", RotorMount: "lockring"}
	gravel = check.Wheel{Setup: "insert", Profile: "hooked", Rim: "aluminium", Nipple: "brass", Spoke: "stainless", Hub: "aluminium",
		Brake: "disc", Axle: "through_axle", RotorMount: "six_bolt"}
	old = check.Wheel{Setup: "tube", Profile: "hooked", Rim: "aluminium", Nipple: "brass", Spoke: "stainless", Hub: "aluminium",
		Brake: "rim", Axle: "quick_release"}
	steel      = check.Wheel{Setup: "tube", Profile: "hooked", Rim: "steel", Nipple: "brass", Spoke: "stainless", Hub: "steel", Brake: "rim", Axle: "quick_release"}
	carbonBike = check.Bike{Front: roadDisc, Rear: roadDisc, Frame: "carbon", Bar: "carbon"}
)

func on(day int, kind string) check.Event { return check.Event{Day: unit.Day(day), Kind: kind} }

func looked(day int, moment string) check.Event {
	return check.Event{Day: unit.Day(day), Kind: "check", Moment: moment}
}

func rode(day int, conditions string) check.Event {
	return check.Event{Day: unit.Day(day), Kind: "ride", Conditions: conditions}
}

func fitted(day int, kind string) check.Event {
	return check.Event{Day: unit.Day(day), Kind: kind, New: true}
}

// asking is a bike at a moment, with what happened to it.
type asking struct {
	bike    check.Bike
	moment  string
	history []check.Event
}

var washed = []check.Event{on(9, "wash")}

func at(w check.Wheel, moment string, history ...check.Event) asking {
	return asking{both(w), moment, history}
}

// table: for each row of the catalogue, where it is asked and where it is not.
var table = []struct {
	name       string
	asked, not []asking
}{
	{"wheel.tyre", []asking{at(old, "start"), at(roadDisc, "start")}, []asking{at(old, "evening"), at(old, "crash")}},
	{"wheel.held", []asking{at(old, "start"), at(roadDisc, "start")}, []asking{at(old, "evening")}},
	{"wheel.pressure", []asking{at(old, "evening"), at(old, "arrival")}, []asking{at(old, "after"), at(old, "start")}},
	{"wheel.cuts", []asking{at(old, "evening"), at(old, "after"), at(roadDisc, "crash")}, []asking{at(old, "start")}},
	{"wheel.hidden", []asking{at(roadDisc, "evening"), at(gravel, "after"), at(check.Wheel{}, "after")}, []asking{at(old, "evening"), at(roadDisc, "start")}},
	{"wheel.casing", []asking{at(old, "evening"), at(roadDisc, "wash_day")}, []asking{at(old, "start"), at(old, "arrival")}},
	{"wheel.bead_rim", []asking{at(old, "evening"), at(roadDisc, "crash"), at(gravel, "arrival")}, []asking{at(old, "start"), at(old, "after")}},
	{"wheel.carbon_chafe", []asking{at(roadDisc, "evening"), at(check.Wheel{}, "after")}, []asking{at(gravel, "evening"), at(roadDisc, "start")}},
	{"wheel.bead_line", []asking{at(old, "evening"), at(roadDisc, "arrival")}, []asking{at(roadDisc, "after")}},
	{"wheel.hookless", []asking{at(roadDisc, "evening"), at(check.Wheel{Profile: "unknown"}, "evening"), at(check.Wheel{}, "arrival")}, []asking{at(gravel, "evening"), at(roadDisc, "after")}},
	{"wheel.valve", []asking{at(old, "evening"), at(roadDisc, "after")}, []asking{at(old, "start"), at(old, "wash_day")}},
	{"wheel.valve_leans", []asking{at(old, "evening"), at(check.Wheel{}, "after")}, []asking{at(roadDisc, "evening"), at(gravel, "after"), at(old, "crash")}},
	{"wheel.sealant", []asking{at(roadDisc, "evening"), at(gravel, "evening"), at(check.Wheel{}, "evening")}, []asking{at(old, "evening"), at(roadDisc, "after")}},
	{"wheel.insert", []asking{at(gravel, "evening"), at(check.Wheel{}, "evening")}, []asking{at(roadDisc, "evening"), at(old, "evening"), at(gravel, "after")}},
	{"wheel.nipple_holes", []asking{at(old, "evening"), at(roadDisc, "crash")}, []asking{at(old, "start"), at(old, "after")}},
	{"wheel.powder", []asking{at(roadDisc, "wash_day"), at(old, "wash_day"), at(check.Wheel{}, "wash_day")}, []asking{at(steel, "wash_day"), at(roadDisc, "evening")}},
	{"wheel.powder_sweat",
		[]asking{at(old, "after"), at(old, "evening", rode(10, "indoor"), washed[0]), at(old, "after", washed[0], rode(10, "")), at(old, "after", washed[0], rode(10, "wet"), on(11, "wipe")), at(old, "after", washed[0], rode(10, "wet"), rode(11, "dry"))},
		[]asking{at(old, "after", washed...), at(old, "after", washed[0], rode(10, "dry")), at(steel, "after"), at(old, "after", rode(9, "salted"), washed[0]), at(old, "wash_day")}},
	{"wheel.nipples_carbon", []asking{at(roadDisc, "evening"), at(check.Wheel{Rim: "carbon"}, "wash_day")}, []asking{at(gravel, "evening"), at(old, "wash_day"), at(roadDisc, "after")}},
	{"wheel.spokes", []asking{at(old, "evening"), at(roadDisc, "arrival")}, []asking{at(old, "start")}},
	{"wheel.run_out", []asking{at(old, "evening"), at(roadDisc, "crash")}, []asking{at(old, "after")}},
	{"wheel.quick_release", []asking{at(old, "evening"), at(check.Wheel{}, "arrival")}, []asking{at(roadDisc, "evening"), at(old, "after")}},
	{"wheel.through_axle", []asking{at(roadDisc, "arrival"), at(check.Wheel{}, "crash")}, []asking{at(old, "arrival"), at(roadDisc, "after")}},
	{"wheel.play", []asking{at(old, "evening"), at(gravel, "crash")}, []asking{at(old, "after")}},
	{"wheel.room", []asking{at(old, "evening"), at(gravel, "arrival")}, []asking{at(old, "after")}},
	{"wheel.carbon_rim", []asking{at(roadDisc, "crash"), at(roadDisc, "evening", on(3, "crash")), at(check.Wheel{}, "crash")},
		[]asking{at(roadDisc, "evening"), at(roadDisc, "evening", on(3, "crash"), looked(4, "crash")), at(gravel, "crash")}},
	{"brake.disc", []asking{at(gravel, "start"), at(check.Wheel{}, "start")}, []asking{at(old, "start"), at(gravel, "evening")}},
	{"brake.rim", []asking{at(old, "start"), at(check.Wheel{}, "start")}, []asking{at(gravel, "start"), at(old, "evening")}},
	{"brake.rotor_clean", []asking{at(gravel, "evening"), at(roadDisc, "wash_day")}, []asking{at(old, "evening"), at(gravel, "start")}},
	{"brake.rotor_whole", []asking{at(gravel, "after"), at(roadDisc, "crash")}, []asking{at(old, "after"), at(gravel, "wash_day")}},
	{"brake.rotor_thickness", []asking{at(gravel, "evening"), at(check.Wheel{}, "evening")}, []asking{at(old, "evening"), at(gravel, "start"), at(gravel, "after")}},
	{"brake.rotor_true", []asking{at(gravel, "evening"), at(gravel, "arrival")}, []asking{at(old, "arrival"), at(gravel, "start")}},
	{"brake.rotor_six", []asking{at(gravel, "evening"), at(check.Wheel{}, "arrival")}, []asking{at(roadDisc, "evening"), at(old, "evening")}},
	{"brake.rotor_ring", []asking{at(roadDisc, "evening"), at(check.Wheel{}, "arrival")}, []asking{at(gravel, "evening"), at(old, "evening")}},
	{"brake.pads", []asking{at(gravel, "evening"), at(gravel, "after")}, []asking{at(old, "evening"), at(gravel, "start")}},
	{"brake.bedding", []asking{at(gravel, "evening", rode(4, "dry"), fitted(5, "pads")), at(gravel, "evening", fitted(5, "rotor"), rode(5, "wet"))},
		[]asking{at(gravel, "evening"), at(gravel, "evening", fitted(5, "pads"), rode(6, "dry")), at(gravel, "evening", on(5, "pads")), at(old, "evening", fitted(5, "pads"))}},
	{"brake.calliper", []asking{at(gravel, "evening"), at(gravel, "arrival")}, []asking{at(old, "arrival"), at(gravel, "after")}},
	{"brake.spacer", []asking{at(gravel, "arrival"), at(gravel, "evening", on(3, "transport")), at(check.Wheel{}, "arrival")},
		[]asking{at(gravel, "evening"), at(old, "arrival"), at(gravel, "evening", on(3, "transport"), looked(3, "arrival"))}},
	{"brake.wall", []asking{at(old, "evening"), at(check.Wheel{}, "wash_day")}, []asking{at(gravel, "evening"), at(old, "after")}},
	{"brake.surface", []asking{at(old, "evening"), at(old, "crash")}, []asking{at(gravel, "evening"), at(old, "start")}},
	{"brake.rim_pads", []asking{at(old, "evening"), at(old, "after")}, []asking{at(gravel, "after"), at(old, "start")}},
	{"bar.levers", []asking{at(old, "start"), at(gravel, "evening"), at(gravel, "arrival")}, []asking{at(old, "wash_day")}},
	{"bar.headset", []asking{at(old, "start"), at(gravel, "crash")}, []asking{at(old, "after")}},
	{"bar.stem_bolts", []asking{at(old, "evening"), at(old, "arrival")}, []asking{at(old, "start"), at(old, "after")}},
	{"bar.grips", []asking{at(old, "crash"), at(old, "arrival"), at(old, "evening")}, []asking{at(old, "start")}},
	{"bar.carbon_bar", []asking{{carbonBike, "crash", nil}, {check.Bike{}, "arrival", nil}}, []asking{at(old, "crash"), {carbonBike, "evening", nil}}},
	{"bar.sweat_clamps", []asking{at(old, "after", rode(3, "indoor")), at(old, "evening")}, []asking{at(old, "after", washed...), at(old, "start")}},
	{"bar.clamps", []asking{at(old, "wash_day")}, []asking{at(old, "evening")}},
	{"frame.frame", []asking{at(old, "start"), at(old, "evening"), at(old, "wash_day")}, nil},
	{"frame.cage", []asking{at(old, "crash"), at(old, "arrival"), at(old, "start", on(2, "transport")), at(old, "start", on(2, "crash"), looked(3, "evening")), at(old, "start", on(2, "transport"), looked(3, "start"))},
		[]asking{at(old, "start"), at(old, "evening"), at(old, "start", on(2, "transport"), looked(2, "arrival")), at(old, "start", on(2, "transport"), looked(1, "arrival"), looked(4, "evening"))}},
	{"frame.carbon_frame", []asking{{carbonBike, "crash", nil}, {check.Bike{}, "arrival", nil}, {carbonBike, "after", []check.Event{on(1, "crash")}}}, []asking{at(old, "crash"), {carbonBike, "evening", nil}}},
	{"frame.post", []asking{at(old, "crash"), at(old, "arrival")}, []asking{at(old, "evening")}},
	{"frame.pedals", []asking{at(old, "crash"), at(old, "arrival"), at(old, "evening")}, []asking{at(old, "start")}},
	{"frame.crank", []asking{at(old, "crash"), at(old, "arrival"), at(old, "evening")}, []asking{at(old, "after")}},
	{"frame.chain", []asking{at(old, "evening")}, []asking{at(old, "crash")}},
	{"frame.shifting", []asking{at(old, "evening")}, []asking{at(old, "after")}},
}

// count is how often a row of this name is asked: once for each wheel or brake, once elsewhere.
func (a asking) count(name string) int {
	n := 0
	for _, c := range check.Ask(a.bike, a.moment, a.history) {
		id := strings.NewReplacer("front_", "", "rear_", "").Replace(c.ID)
		if id == name {
			n++
		}
	}
	return n
}

func TestEachRowIsAskedWhereItBelongs(t *testing.T) {
	tried := map[string]bool{}
	for _, c := range table {
		tried[c.name] = true
		want := 1
		if strings.HasPrefix(c.name, "wheel.") || strings.HasPrefix(c.name, "brake.") {
			want = 2
		}
		for i, a := range c.asked {
			if got := a.count(c.name); got != want {
				t.Errorf("%s, asked %d: %d times, want %d", c.name, i, got, want)
			}
		}
		for i, a := range c.not {
			if got := a.count(c.name); got != 0 {
				t.Errorf("%s, not asked %d: %d times", c.name, i, got)
			}
		}
	}
	for _, moment := range check.Moments() {
		for _, c := range check.Ask(check.Bike{}, moment, []check.Event{on(1, "crash"), on(1, "transport"), fitted(1, "pads")}) {
			if name := strings.NewReplacer("front_", "", "rear_", "").Replace(c.ID); !tried[name] {
				t.Errorf("%s is in the catalogue and not in this table", name)
			}
		}
	}
}

// The two wheels of a bike may differ, and each is asked about itself.
func TestWheelsMayDiffer(t *testing.T) {
	mixed := check.Bike{Front: roadDisc, Rear: old}
	ids := map[string]bool{}
	for _, c := range check.Ask(mixed, "evening", washed) {
		ids[c.ID] = true
	}
	for id, want := range map[string]bool{
		"front_wheel.sealant": true, "rear_wheel.sealant": false, "front_brake.pads": true, "rear_brake.pads": false,
		"front_brake.wall": false, "rear_brake.wall": true, "front_wheel.quick_release": false, "rear_wheel.quick_release": true,
	} {
		if ids[id] != want {
			t.Errorf("%s asked %v", id, ids[id])
		}
	}
}

// White powder is looked for where sweat was: not on a wheel whose place another takes indoors, but in the clamps all the same.
func TestAWheelThatIsSparedTheTrainer(t *testing.T) {
	spared := old
	spared.Spared = true
	indoors := []check.Event{looked(1, "evening"), on(2, "wash"), rode(3, "indoor")}
	for name, want := range map[string]int{"wheel.powder_sweat": 0, "bar.sweat_clamps": 1} {
		if got := at(spared, "after", indoors...).count(name); got != want {
			t.Errorf("%s is asked %d times, want %d", name, got, want)
		}
	}
	if got := at(old, "after", indoors...).count("wheel.powder_sweat"); got != 2 {
		t.Errorf("without the mark it is asked %d times", got)
	}
	if got := at(spared, "after", append(indoors, rode(4, "wet"))...).count("wheel.powder_sweat"); got != 2 {
		t.Errorf("after the wet it is asked %d times", got)
	}
}
