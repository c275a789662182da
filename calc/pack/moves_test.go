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
	return pack.Bike{
		Bike:     check.Bike{Front: drawWheel(t), Rear: drawWheel(t), Frame: pick(t, "frame", "carbon", "steel", ""), Bar: pick(t, "bar", "carbon", "aluminium", "")},
		Electric: pick(t, "electric", "yes", "no", ""), Pedals: pick(t, "pedals", "spanner", "hex", ""), Derailleur: pick(t, "derailleur", "hanger", "frame", "none", ""),
	}
}

func drawWay(t *rapid.T) pack.Way { return pack.Way(rapid.SampledFrom(pack.Ways()).Draw(t, "way")) }

func drawGoods(t *rapid.T) []pack.Good {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) pack.Good {
		return pack.Good{
			ID: rapid.SampledFrom(pack.GoodKinds()).Draw(t, "id"), Count: rapid.IntRange(1, 6).Draw(t, "count"),
			Grams: rapid.SampledFrom([]float64{0, 12, 16, 28, 28.5, 38, 600}).Draw(t, "grams"), Wh: rapid.SampledFrom([]float64{0, 5, 100, 101, 160, 161, 500}).Draw(t, "wh"),
			ML: rapid.SampledFrom([]float64{0, 21, 50, 51, 100, 101, 500, 501}).Draw(t, "ml"),
		}
	}), 0, 8).Draw(t, "goods")
}

func drawPlan(t *rapid.T) (pack.Bike, pack.Way, pack.Answer) {
	bike, way := drawBike(t), drawWay(t)
	return bike, way, pack.Plan(bike, way, pick(t, "leg", "yes", "no", ""), drawGoods(t))
}

// place of a step in its list, -1 where there is none.
func place(list []pack.Step, id string) int {
	return slices.IndexFunc(list, func(s pack.Step) bool { return s.ID == id })
}

// Each step stands once, and all it needs stands before it: so no needs run in a circle.
func TestNeedsStandEarlier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, _, a := drawPlan(t)
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
			}
		}
	})
}

// The way out: as-built before anything is loosened, a spacer right after each wheel, rotors off before the wheel is in its bag.
func TestOrderOfTheWayOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bike, way, a := drawPlan(t)
		for i, s := range a.Steps {
			if s.Loosens && (i == 0 || !slices.Contains(s.Needs, "as_built")) || s.Must || len(s.Undoes) > 0 {
				t.Fatalf("%+v", s)
			}
		}
		flown := way != pack.Train && way != pack.Car
		for side, w := range map[string]check.Wheel{"front": bike.Front, "rear": bike.Rear} {
			out, spacer := place(a.Steps, side+"_wheel_out"), place(a.Steps, side+"_spacer")
			if rim := w.Brake == "rim"; rim != (spacer < 0) || !rim && spacer != out+1 {
				t.Fatalf("%s: wheel out at %d, spacer at %d", side, out, spacer)
			}
			bagged := a.Steps[place(a.Steps, side+"_wheel_bagged")]
			for _, mount := range []struct{ id, key string }{{side + "_rotor_six", "six_bolt"}, {side + "_rotor_ring", "lockring"}} {
				wanted := flown && w.Brake != "rim" && (w.RotorMount == mount.key || w.RotorMount == "")
				if there := place(a.Steps, mount.id) >= 0; there != wanted || there != slices.Contains(bagged.Needs, mount.id) {
					t.Fatalf("%s by %s: there %v, want %v; the bag waits for %v", mount.id, way, there, wanted, bagged.Needs)
				}
			}
		}
	})
}

// Every tool, on both ways, is in the bag once, and nothing forbidden is.
func TestTheBag(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, _, a := drawPlan(t)
		used := map[string]bool{}
		for _, s := range slices.Concat(a.Steps, a.Arrival) {
			if s.Tool != "" {
				used[s.Tool] = true
			}
			if s.Tool != "" && !slices.Contains(a.Bag, s.Tool) {
				t.Fatalf("%s wants a %s, which is not in %v", s.ID, s.Tool, a.Bag)
			}
		}
		if len(used) != len(a.Bag) {
			t.Fatalf("the bag holds %v for %v", a.Bag, used)
		}
		for _, item := range a.Bag {
			if slices.ContainsFunc(append(a.BuyThere, "cartridge", "battery", "bank", "spray", "alcohol", "cement", "solvent"), func(no string) bool {
				return strings.Contains(item, strings.ReplaceAll(no, "_", " "))
			}) {
				t.Fatalf("%s is in the bag, and %v may not travel", item, a.BuyThere)
			}
		}
		for _, v := range a.Goods {
			if refused := v.Cabin == pack.No && v.Hold == pack.No; refused && !slices.Contains(a.BuyThere, v.ID) {
				t.Fatalf("%s may not travel and is not bought there: %v", v.ID, a.BuyThere)
			}
		}
		for i, id := range a.BuyThere {
			if slices.Contains(a.BuyThere[:i], id) || !slices.ContainsFunc(a.Goods, func(v pack.Verdict) bool { return v.ID == id && v.Cabin == pack.No && v.Hold == pack.No }) {
				t.Fatalf("%s is bought there without need, or twice", id)
			}
		}
	})
}

// Arrival takes back all that was loosened, every spacer and every protection, and only what was there.
func TestArrivalUndoesEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bike, _, a := drawPlan(t)
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
		for _, s := range a.Steps {
			if !undone[s.ID] && s.ID != "as_built" && s.ID != "smallest_cog" {
				t.Fatalf("nothing undoes %s", s.ID)
			}
		}
		for _, s := range a.Arrival {
			name := strings.NewReplacer("front_", "", "rear_", "").Replace(s.ID)
			must := slices.Contains([]string{"rotor_six_on", "rotor_ring_on", "rotor_true", "spacer_out", "wheel_in", "brakes"}, name)
			if s.Must != must {
				t.Fatalf("%s must be done: %v, want %v", s.ID, s.Must, must)
			}
		}
		last := a.Arrival[len(a.Arrival)-1]
		if last.ID != "arrival_check" || len(last.Needs) != len(a.Arrival)-1 {
			t.Fatalf("the last step is %s after %v", last.ID, last.Needs)
		}
		if brakes := a.Arrival[place(a.Arrival, "brakes")]; bike.Front.Brake != "rim" && !slices.Contains(brakes.Needs, "front_spacer_out") {
			t.Fatalf("brakes are pulled before the spacer is out: %v", brakes.Needs)
		}
		written := a.Steps[0].AsBuilt
		for _, s := range a.Arrival {
			for _, key := range s.AsBuilt {
				if !slices.Contains(written, key) {
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
		&bike.Electric, &bike.Pedals, &bike.Derailleur, &bike.Frame, &bike.Bar,
	}[what] = ""
	return bike
}

// Not knowing asks at least as much, brings at least as many tools and lets no more fly.
func TestUnknownAsksAtLeastAsMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bike, way, goods := drawBike(t), drawWay(t), drawGoods(t)
		leg := pick(t, "leg", "yes", "no")
		known := pack.Plan(bike, way, leg, goods)
		less := pack.Plan(forget(bike, rapid.IntRange(0, 10).Draw(t, "forgotten")), way, "", goods)
		for _, pair := range [][2][]pack.Step{{known.Steps, less.Steps}, {known.Arrival, less.Arrival}} {
			for _, s := range pair[0] {
				at := place(pair[1], s.ID)
				if at < 0 {
					t.Fatalf("%s is lost", s.ID)
				}
				for _, need := range s.Needs {
					if !slices.Contains(pair[1][at].Needs, need) {
						t.Fatalf("%s no longer waits for %s", s.ID, need)
					}
				}
			}
		}
		for _, tool := range known.Bag {
			if !slices.Contains(less.Bag, tool) {
				t.Fatalf("%s is left at home", tool)
			}
		}
		for i := range known.Goods {
			notFreer(t, known.Goods[i], less.Goods[i])
		}
		for i := range goods {
			// A size that nobody read may be any of these.
			if goods[i].Wh > 5 {
				blank := slices.Clone(goods)
				blank[i].Wh = 0
				if kind := goods[i].ID; kind == "power_bank" || kind == "spare_battery" || kind == "lithium_installed" {
					if v := pack.Plan(bike, way, leg, blank).Goods[i]; goods[i].Wh <= pack.AskWh {
						notFreer(t, known.Goods[i], v)
					}
				}
			}
		}
	})
}

func notFreer(t *rapid.T, known, less pack.Verdict) {
	order := []string{pack.Yes, pack.Ask, pack.No}
	if slices.Index(order, less.Cabin) < slices.Index(order, known.Cabin) || slices.Index(order, less.Hold) < slices.Index(order, known.Hold) {
		t.Fatalf("%+v, knowing less %+v", known, less)
	}
}
