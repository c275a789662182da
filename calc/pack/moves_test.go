package pack_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/check"
	"rimside/calc/pack"
)

func pick(t *rapid.T, name string, choices ...string) string {
	return rapid.SampledFrom(choices).Draw(t, name)
}

// drawWheel also draws what is not known.
func drawWheel(t *rapid.T) check.Wheel {
	return check.Wheel{
		Brake: pick(t, "brake", "disc", "disc", "rim", ""), Axle: pick(t, "axle", "quick_release", "through_axle", ""),
		RotorMount: pick(t, "mount", "six_bolt", "lockring", ""),
	}
}

func drawBike(t *rapid.T) pack.Bike {
	one := func(name string, choices []string) string { return pick(t, name, append(choices, "")...) }
	return pack.Bike{
		Bike:     check.Bike{Front: drawWheel(t), Rear: drawWheel(t), Frame: pick(t, "frame", "carbon", "steel", ""), Bar: pick(t, "bar", "carbon", "aluminium", "")},
		Electric: pick(t, "electric", "yes", "no", ""), Shifting: one("shifting", pack.Shiftings()), Pedals: one("pedals", pack.Pedals()),
		Derailleur: one("derailleur", pack.Derailleurs()), Post: one("post", pack.Posts()), Cockpit: one("cockpit", pack.Cockpits()),
	}
}

func drawGoods(t *rapid.T) []pack.Good {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) pack.Good {
		return pack.Good{
			ID: rapid.SampledFrom(pack.GoodKinds()).Draw(t, "id"), Count: rapid.IntRange(1, 6).Draw(t, "count"), Who: pick(t, "who", "", "Ana", "Ben"),
			Grams: rapid.SampledFrom([]float64{0, 12, 16, 28, 28.5, 38, 600}).Draw(t, "grams"), Wh: rapid.SampledFrom([]float64{0, 5, 100, 101, 160, 161, 500}).Draw(t, "wh"),
			ML: rapid.SampledFrom([]float64{0, 21, 50, 51, 100, 101, 500, 501}).Draw(t, "ml"),
		}
	}), 0, 8).Draw(t, "goods")
}

func drawTrip(t *rapid.T) pack.Trip {
	return pack.Trip{
		Bike: drawBike(t), Way: pack.Way(rapid.SampledFrom(pack.Ways()).Draw(t, "way")), Home: rapid.Bool().Draw(t, "home"),
		USLeg: pick(t, "leg", "yes", "no", ""), Goods: drawGoods(t),
	}
}

// place of a step in its list, -1 where there is none.
func place(list []pack.Step, id string) int {
	return slices.IndexFunc(list, func(s pack.Step) bool { return s.ID == id })
}

// Each step stands once, and all it needs stands before it: so no needs run in a circle.
func TestNeedsStandEarlier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := pack.Plan(drawTrip(t))
		for _, list := range [][]pack.Step{a.Steps, a.Arrival} {
			for i, s := range list {
				if place(list, s.ID) != i {
					t.Fatalf("%s stands twice", s.ID)
				}
				for _, need := range s.Needs {
					if at := place(list, need); at < 0 || at >= i {
						t.Fatalf("%s at %d needs %s at %d", s.ID, i, need, at)
					}
				}
				if len(s.Notes) == 0 {
					t.Fatalf("%s says nothing", s.ID)
				}
			}
		}
	})
}

// Packing: as-built before anything is loosened, a spacer right after each wheel, rotors off before the wheel is in its bag, and the step
// that keeps from harm is a must.
func TestOrderOfPacking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		trip := drawTrip(t)
		a := pack.Plan(trip)
		for i, s := range a.Steps {
			if s.Loosens && (i == 0 || !slices.Contains(s.Needs, "as_built")) || len(s.Undoes) > 0 {
				t.Fatalf("%+v", s)
			}
		}
		flown := trip.Way != pack.Train && trip.Way != pack.Car
		for side, w := range map[string]check.Wheel{"front": trip.Bike.Front, "rear": trip.Bike.Rear} {
			out, spacer, blocks, rotor := place(a.Steps, side+"_wheel_out"), place(a.Steps, side+"_spacer"), place(a.Steps, side+"_axle_in"), place(a.Steps, side+"_rotor")
			if rim := w.Brake == "rim"; rim != (spacer < 0) || !rim && (spacer != out+1 || !a.Steps[spacer].Must) {
				t.Fatalf("%s: wheel out at %d, spacer at %d", side, out, spacer)
			}
			if !a.Steps[blocks].Must || !slices.Contains(a.Steps[blocks].Notes, "block_ends") {
				t.Fatalf("the %s ends stand empty: %+v", side, a.Steps[blocks])
			}
			bagged := a.Steps[place(a.Steps, side+"_wheel_bagged")]
			if wanted := flown && w.Brake != "rim"; (rotor >= 0) != wanted || wanted != slices.Contains(bagged.Needs, side+"_rotor") || wanted && !a.Steps[rotor].Must {
				t.Fatalf("%s rotor by %s: at %d, want %v; the bag waits for %v", side, trip.Way, rotor, wanted, bagged.Needs)
			}
		}
		forkLoose := place(a.Steps, "stem") >= 0 || place(a.Steps, "bars_turn") >= 0
		held := slices.ContainsFunc(a.Steps, func(s pack.Step) bool {
			return slices.Contains(s.Notes, "fork_hold") && slices.Contains(s.Notes, "ring_order")
		})
		if forkLoose != held || flown && trip.Bike.Cockpit != "none" != (forkLoose || place(a.Steps, "bars") >= 0) {
			t.Fatalf("cockpit %q: fork loose %v, held %v in %s", trip.Bike.Cockpit, forkLoose, held, ids(a.Steps))
		}
		if trip.Bike.Cockpit == "hoses" && (place(a.Steps, "stem") >= 0 || place(a.Steps, "bars") >= 0) {
			t.Fatalf("hoses run through the head tube, and the bars come off: %s", ids(a.Steps))
		}
	})
}

// covers says which one item of a bag holds several.
var covers = map[string][]string{pack.PedalTools: {pack.Spanner15, pack.Hex8}, pack.RotorTools: {pack.Torx25, pack.LockringTool}}

// Every tool, and what else a step takes, is in the bag once; nothing forbidden is; the bag holds nothing without use.
func TestTheBag(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		trip := drawTrip(t)
		a := pack.Plan(trip)
		used := map[string]bool{}
		for _, s := range slices.Concat(a.Steps, a.Arrival) {
			for _, item := range append([]string{s.Tool}, s.Takes...) {
				used[item] = item != ""
				if item != "" && !slices.Contains(a.Bag, item) {
					t.Fatalf("%s wants %s, which is not in %v", s.ID, item, a.Bag)
				}
			}
			if torque := slices.ContainsFunc(s.Values, func(v pack.Value) bool { return strings.HasSuffix(v.Name, "_nm") }); torque && !slices.Contains(s.Takes, pack.TorqueWrench) {
				t.Fatalf("%s tells a torque and takes no wrench", s.ID)
			}
		}
		delete(used, "")
		if len(used) != len(a.Bag) {
			t.Fatalf("the bag holds %v for %v", a.Bag, used)
		}
		for _, item := range a.Bag {
			if slices.Contains(pack.GoodKinds(), item) || !slices.Contains(pack.Tools(), item) {
				t.Fatalf("%s is in the bag", item)
			}
		}
		if ring := slices.Contains(a.Bag, pack.LockringTool) || slices.Contains(a.Bag, pack.RotorTools); ring != slices.Contains(a.Bag, pack.LockringHandle) {
			t.Fatalf("a lockring tool without its handle: %v", a.Bag)
		}
		for i, id := range a.BuyThere {
			wanted := slices.ContainsFunc(a.Goods, func(v pack.Verdict) bool { return v.ID == id && v.Cabin == pack.No && v.Hold == pack.No })
			if slices.Contains(a.BuyThere[:i], id) || !wanted && id != "alcohol" || id == "power_bank" || pack.SizeOf(id) == "wh" {
				t.Fatalf("%s is bought there without need, or twice", id)
			}
		}
	})
}

// What came apart, with the step of arrival that must put it back before anybody rides.
var guards = map[string][]string{
	"front_rotor": {"front_rotor_on"}, "rear_rotor": {"rear_rotor_on"}, "front_wheel_out": {"front_wheel_in"}, "rear_wheel_out": {"rear_wheel_in"},
	"front_spacer": {"front_spacer_out"}, "rear_spacer": {"rear_spacer_out"}, "stem": {"stem_on"}, "bars": {"bars_on"}, "bars_turn": {"stem_on", "bars_on"},
	"post": {"post_on"}, "pedals": {"pedals_on"},
}

// Arrival takes back all that was loosened, every spacer and every protection, and only what was there; what holds the rider is a must,
// and the last steps wait for every must.
func TestArrivalUndoesEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		trip := drawTrip(t)
		a := pack.Plan(trip)
		undone := map[string]bool{}
		for _, s := range a.Arrival {
			if s.Loosens {
				t.Fatalf("%s loosens on arrival", s.ID)
			}
			for _, id := range s.Undoes {
				if place(a.Steps, id) < 0 {
					t.Fatalf("%s undoes %s, which was not done", s.ID, id)
				}
				undone[id] = true
			}
		}
		nothingToUndo := []string{"as_built", "try_tools", "smallest_cog", "spacers_look", "weigh", "saddle_bag", "leave_there"}
		musts := map[string]bool{"brakes": true}
		for _, s := range a.Steps {
			if !undone[s.ID] && !slices.Contains(nothingToUndo, s.ID) {
				t.Fatalf("nothing undoes %s", s.ID)
			}
			for _, id := range guards[s.ID] {
				musts[id] = true
				if at := place(a.Arrival, id); at < 0 || !a.Arrival[at].Must || !slices.Contains(a.Arrival[at].Undoes, s.ID) {
					t.Fatalf("%s is not guarded by %s", s.ID, id)
				}
			}
			if s.ID == "derailleur" && trip.Bike.Shifting != "none" {
				musts["cage"] = true
			}
		}
		for side, w := range map[string]check.Wheel{"front": trip.Bike.Front, "rear": trip.Bike.Rear} {
			musts[side+"_rotor_true"] = w.Brake != "rim"
		}
		second := a.Arrival[place(a.Arrival, "second_person")]
		for _, s := range a.Arrival {
			if s.Must != musts[s.ID] {
				t.Fatalf("%s must be done: %v, want %v", s.ID, s.Must, musts[s.ID])
			}
			if s.Must && !slices.Contains(second.Needs, s.ID) {
				t.Fatalf("nobody waits for %s", s.ID)
			}
		}
		last := a.Arrival[len(a.Arrival)-1]
		if last.ID != "arrival_check" || len(last.Needs) != len(a.Arrival)-1 {
			t.Fatalf("the last step is %s after %v", last.ID, last.Needs)
		}
		if brakes := a.Arrival[place(a.Arrival, "brakes")]; trip.Bike.Front.Brake != "rim" && !slices.Contains(brakes.Needs, "front_spacer_out") {
			t.Fatalf("brakes are pulled before the spacer is out: %v", brakes.Needs)
		}
		for _, s := range a.Arrival {
			for _, key := range s.AsBuilt {
				if !slices.Contains(a.Steps[0].AsBuilt, key) {
					t.Fatalf("%s shows %s, which nobody wrote down", s.ID, key)
				}
			}
		}
	})
}

// forget makes one thing about a bike unknown.
func forget(bike pack.Bike, what int) pack.Bike {
	*[]*string{
		&bike.Front.Brake, &bike.Rear.Brake, &bike.Front.Axle, &bike.Rear.Axle, &bike.Front.RotorMount, &bike.Rear.RotorMount,
		&bike.Electric, &bike.Pedals, &bike.Derailleur, &bike.Frame, &bike.Bar, &bike.Shifting, &bike.Post, &bike.Cockpit,
	}[what] = ""
	return bike
}

// sameWork: where it is not known how bars come off, one step stands for the ways; where the derailleur hangs, taking it off stands for guarding it.
var sameWork = map[string]string{"bars": "bars_turn", "stem": "bars_turn", "derailleur_guard": "derailleur"}

// Not knowing asks at least as much, brings at least as many tools and lets no more fly.
func TestUnknownAsksAtLeastAsMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		trip := drawTrip(t)
		trip.USLeg = pick(t, "known leg", "yes", "no")
		blind := trip
		if trip.Bike.Shifting != "" {
			trip.Bike.Electric = "" // a motor is not assumed
		}
		known := pack.Plan(trip)
		blind.Bike, blind.USLeg = forget(trip.Bike, rapid.IntRange(0, 13).Draw(t, "forgotten")), ""
		less := pack.Plan(blind)
		for _, pair := range [][2][]pack.Step{{known.Steps, less.Steps}, {known.Arrival, less.Arrival}} {
			for _, s := range pair[0] {
				at := place(pair[1], s.ID)
				if at < 0 {
					at = place(pair[1], sameWork[s.ID])
				}
				if at < 0 || s.Must && !pair[1][at].Must {
					t.Fatalf("%s is lost", s.ID)
				}
				for _, need := range s.Needs {
					if !slices.Contains(pair[1][at].Needs, need) && !slices.Contains(pair[1][at].Needs, sameWork[need]) {
						t.Fatalf("%s no longer waits for %s", s.ID, need)
					}
				}
			}
		}
		for _, tool := range known.Bag {
			held := slices.ContainsFunc(less.Bag, func(item string) bool { return item == tool || slices.Contains(covers[item], tool) })
			if !held {
				t.Fatalf("%s is left at home: %v", tool, less.Bag)
			}
		}
		if len(less.Ask) < len(known.Ask)-1 {
			t.Fatalf("%v is asked, and knowing less %v", known.Ask, less.Ask)
		}
		for i := range known.Goods {
			notFreer(t, known.Goods[i], less.Goods[i])
		}
	})
}

// A size that nobody read may be any; nobody's goods may be anybody's: neither lets more fly.
func TestUnknownGoodsAreNotFreer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		trip := drawTrip(t)
		if len(trip.Goods) == 0 {
			return
		}
		i := rapid.IntRange(0, len(trip.Goods)-1).Draw(t, "which")
		known := pack.Plan(trip).Goods
		blank := slices.Clone(trip.Goods)
		blank[i].Who = ""
		kind := blank[i].ID
		if banks := kind == "power_bank" || kind == "spare_battery" || kind == "lithium_installed"; banks && blank[i].Wh > 0 && blank[i].Wh <= pack.AskWh {
			blank[i].Wh = 0
		}
		trip.Goods = blank
		notFreer(t, known[i], pack.Plan(trip).Goods[i])
	})
}

func notFreer(t *rapid.T, known, less pack.Verdict) {
	order := []string{pack.Yes, pack.Ask, pack.No}
	if slices.Index(order, less.Cabin) < slices.Index(order, known.Cabin) || slices.Index(order, less.Hold) < slices.Index(order, known.Hold) {
		t.Fatalf("%+v, knowing less %+v", known, less)
	}
}
