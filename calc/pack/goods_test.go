package pack_test

import (
	"slices"
	"strings"
	"testing"

	"rimside/calc/check"
	"rimside/calc/pack"
)

func some(id string, count int, size float64) pack.Good {
	g := pack.Good{ID: id, Count: count}
	switch id {
	case "cartridge":
		g.Grams = size
	case "power_bank", "spare_battery", "lithium_installed", "shifting_battery", "battery_pump":
		g.Wh = size
	default:
		g.ML = size
	}
	return g
}

func of(who string, g pack.Good) pack.Good {
	g.Who = who
	return g
}

// The published regulation, row by row. The first of the goods is judged; the rest is its company.
func TestWhatMayFly(t *testing.T) {
	for _, c := range []struct {
		about, leg  string
		goods       []pack.Good
		cabin, hold string
	}{
		{"L8: a United States leg, one filled 16 g cartridge", "yes", []pack.Good{some("cartridge", 1, 16)}, "no", "no"},
		{"L9: no such leg, 4 x 16 g", "no", []pack.Good{some("cartridge", 4, 16)}, "no", "ask"},
		{"L9: 5 x 16 g", "no", []pack.Good{some("cartridge", 5, 16)}, "no", "no"},
		{"L9: 1 x 38 g", "no", []pack.Good{some("cartridge", 1, 38)}, "no", "no"},
		{"L10: 3 power banks", "no", []pack.Good{some("power_bank", 3, 74)}, "no", "no"},
		{"L10: one spare of 130 Wh", "no", []pack.Good{some("spare_battery", 1, 130)}, "ask", "no"},
		{"L10: one of 300 Wh", "no", []pack.Good{some("spare_battery", 1, 300)}, "no", "no"},

		{"legs not known", "", []pack.Good{some("cartridge", 1, 16)}, "no", "no"},
		{"28 g", "no", []pack.Good{some("cartridge", 1, 28)}, "no", "ask"},
		{"50 mL", "no", []pack.Good{{ID: "cartridge", Count: 1, ML: 50}}, "no", "ask"},
		{"51 mL", "no", []pack.Good{{ID: "cartridge", Count: 1, ML: 51}}, "no", "no"},
		{"28 g in 51 mL", "no", []pack.Good{{ID: "cartridge", Count: 1, Grams: 28, ML: 51}}, "no", "no"},
		{"a size nobody read", "no", []pack.Good{some("cartridge", 1, 0)}, "no", "no"},
		{"3 and 2 cartridges", "no", []pack.Good{some("cartridge", 3, 16), some("cartridge", 2, 12)}, "no", "no"},
		{"4, and one too big that stays at home", "no", []pack.Good{some("cartridge", 4, 16), some("cartridge", 1, 38)}, "no", "ask"},

		{"2 power banks", "yes", []pack.Good{some("power_bank", 2, 74)}, "yes", "no"},
		{"1 and 2 power banks", "no", []pack.Good{some("power_bank", 1, 74), some("power_bank", 2, 20)}, "no", "no"},
		{"a power bank of 120 Wh", "no", []pack.Good{some("power_bank", 1, 120)}, "ask", "no"},
		{"a power bank nobody read", "no", []pack.Good{some("power_bank", 1, 0)}, "ask", "no"},
		{"100 Wh", "no", []pack.Good{some("spare_battery", 20, 100)}, "yes", "no"},
		{"21 spares", "no", []pack.Good{some("spare_battery", 21, 5)}, "no", "no"},
		{"20 spares and one on the derailleur’s shelf", "no", []pack.Good{some("spare_battery", 20, 5), some("shifting_battery", 1, 0)}, "no", "no"},
		{"160 Wh", "no", []pack.Good{some("spare_battery", 2, 160)}, "ask", "no"},
		{"160.5 Wh", "no", []pack.Good{some("spare_battery", 1, 160.5)}, "no", "no"},
		{"3 of 130 Wh", "no", []pack.Good{some("spare_battery", 2, 130), some("power_bank", 1, 130)}, "no", "no"},
		{"fitted, small", "no", []pack.Good{some("lithium_installed", 3, 5)}, "yes", "yes"},
		{"fitted, 130 Wh", "no", []pack.Good{some("lithium_installed", 1, 130)}, "ask", "ask"},
		{"fitted, not read", "no", []pack.Good{some("lithium_installed", 1, 0)}, "ask", "ask"},
		{"fitted, of a motor", "no", []pack.Good{some("lithium_installed", 1, 500)}, "no", "no"},
		{"clip-on", "no", []pack.Good{some("shifting_battery", 1, 0)}, "yes", "no"},
		{"in the frame", "no", []pack.Good{some("shifting_built_in", 1, 0)}, "no", "ask"},
		{"battery pump", "no", []pack.Good{some("battery_pump", 1, 0)}, "yes", "no"},

		{"can of 100 mL", "no", []pack.Good{some("aerosol", 1, 100)}, "yes", "yes"},
		{"can of 101 mL", "no", []pack.Good{some("aerosol", 1, 101)}, "no", "yes"},
		{"can of 500 mL", "no", []pack.Good{some("aerosol", 4, 500)}, "no", "yes"},
		{"can of 501 mL", "no", []pack.Good{some("aerosol", 1, 501)}, "no", "no"},
		{"5 cans of 500 mL", "no", []pack.Good{some("aerosol", 1, 500), some("aerosol", 4, 500)}, "no", "no"},
		{"can of 501 g", "no", []pack.Good{{ID: "aerosol", Count: 1, Grams: 501}}, "no", "no"},
		{"5 cans of 500 g", "no", []pack.Good{{ID: "aerosol", Count: 5, Grams: 500}}, "no", "no"},
		{"can nobody read", "no", []pack.Good{some("aerosol", 1, 0)}, "no", "ask"},
		{"flammable spray", "no", []pack.Good{some("flammable_spray", 1, 50)}, "no", "no"},
		{"solvent", "no", []pack.Good{some("solvent", 1, 50)}, "no", "no"},
		{"rubber cement", "no", []pack.Good{some("rubber_cement", 1, 5)}, "no", "no"},
		{"sealant, 100 mL", "no", []pack.Good{some("sealant", 1, 100)}, "yes", "yes"},
		{"sealant, 500 mL", "no", []pack.Good{some("sealant", 1, 500)}, "no", "yes"},
		{"mineral oil, not read", "no", []pack.Good{some("mineral_oil", 1, 0)}, "no", "yes"},
		{"brake fluid, 100 mL", "no", []pack.Good{some("brake_fluid", 1, 100)}, "yes", "yes"},
		{"tools", "no", []pack.Good{some("tools", 1, 0)}, "no", "yes"},
		{"pump", "no", []pack.Good{some("pump", 1, 0)}, "no", "yes"},
		{"alcohol for the rotors", "no", []pack.Good{some("alcohol", 1, 50)}, "no", "no"},

		{"2 banks each", "no", []pack.Good{of("Ana", some("power_bank", 2, 74)), of("Ben", some("power_bank", 2, 74))}, "yes", "no"},
		{"3 of one", "no", []pack.Good{of("Ana", some("power_bank", 2, 74)), of("Ana", some("power_bank", 1, 74))}, "no", "no"},
		{"nobody's may be anybody's", "no", []pack.Good{of("Ana", some("power_bank", 2, 74)), some("power_bank", 1, 74)}, "no", "no"},
		{"nobody's, beside whoever has most", "no", []pack.Good{some("power_bank", 1, 74), of("Ben", some("power_bank", 1, 74)), of("Ana", some("power_bank", 2, 74))}, "no", "no"},
		{"4 cartridges each", "no", []pack.Good{of("Ana", some("cartridge", 4, 16)), of("Ben", some("cartridge", 4, 16))}, "no", "ask"},
		{"2 L of cans each", "no", []pack.Good{of("Ana", some("aerosol", 4, 500)), of("Ben", some("aerosol", 4, 500))}, "no", "yes"},
	} {
		for _, way := range []pack.Way{pack.AirBag, pack.AirBox, pack.AirCase} {
			v := pack.JudgeGoods(c.goods, way, c.leg)[0]
			if v.Cabin != c.cabin || v.Hold != c.hold || v.ID != c.goods[0].ID {
				t.Errorf("%s, %s: %+v, want %s, %s", way, c.about, v, c.cabin, c.hold)
			}
		}
	}
}

// Every kind has a verdict with a listed reason on every way; each reason is some good's; the date is that of a rule, never the day of reading.
func TestEveryKindIsJudged(t *testing.T) {
	told := map[string]bool{}
	for _, way := range pack.Ways() {
		for _, leg := range []string{"yes", "no", ""} {
			for _, kind := range pack.GoodKinds() {
				for _, size := range []float64{0, 5, 16, 100, 130, 600} {
					for _, count := range []int{1, 3, 5, 21} {
						v := pack.JudgeGoods([]pack.Good{some(kind, count, size)}, pack.Way(way), leg)[0]
						told[v.Why] = true
						flown := way != "car" && way != "train"
						if tools := kind == "tools" || kind == "pump"; (v.Dated != "") != (flown && !tools) || v.Dated == pack.ReadOn {
							t.Errorf("%s, %s is dated %q", way, kind, v.Dated)
						}
						if !slices.Contains(pack.Whys(), v.Why) || v.Parcel != (way == "courier") {
							t.Errorf("%s, %s: %+v", way, kind, v)
						}
						if refused := v.Cabin == pack.No && v.Hold == pack.No; refused != (v.Place == pack.NotCarried) || v.Place == pack.InCabin && v.Cabin == pack.No {
							t.Errorf("%s, %s travels in %s: %+v", way, kind, v.Place, v)
						}
						if asks := v.Asks; asks != "" && asks != "legs_us" && (asks != pack.SizeOf(kind) || size != 0) {
							t.Errorf("%s, %s of %v asks %s", way, kind, size, asks)
						}
					}
				}
			}
		}
	}
	for _, why := range pack.Whys() {
		if !told[why] {
			t.Errorf("nothing is ever judged %s", why)
		}
	}
}

// What goes in the cabin alone is not in the bag.
func TestWhereGoodsTravel(t *testing.T) {
	for _, c := range []struct {
		way, leg, want string
		good           pack.Good
	}{
		{"air_bag", "no", "bag", some("cartridge", 4, 16)}, {"air_bag", "", "none", some("cartridge", 4, 16)}, {"air_bag", "no", "cabin", some("power_bank", 2, 74)},
		{"air_bag", "no", "none", some("power_bank", 3, 74)}, {"air_bag", "no", "cabin", some("spare_battery", 1, 130)}, {"air_bag", "no", "cabin", some("lithium_installed", 1, 5)},
		{"air_bag", "no", "bag", some("lithium_installed", 1, 130)}, {"air_bag", "no", "bag", some("shifting_built_in", 1, 0)}, {"air_bag", "no", "bag", some("sealant", 1, 60)},
		{"air_bag", "no", "none", some("alcohol", 1, 60)}, {"car", "", "bag", some("alcohol", 1, 60)}, {"courier", "no", "bag", some("lithium_installed", 1, 5)},
		{"courier", "no", "none", some("power_bank", 1, 74)}, {"train", "no", "bag", some("power_bank", 3, 74)},
	} {
		if v := pack.JudgeGoods([]pack.Good{c.good}, pack.Way(c.way), c.leg)[0]; v.Place != c.want {
			t.Errorf("%s, %s travels in %s, want %s", c.way, c.good.ID, v.Place, c.want)
		}
	}
}

// Litres and watt-hours are asked, never assumed; nobody's United States answer is asked, and refuses like a yes.
func TestWhatIsAsked(t *testing.T) {
	for _, c := range []struct {
		leg, asks, why string
		good           pack.Good
	}{
		{"", "legs_us", "legs_unknown", some("cartridge", 1, 16)}, {"no", "grams", "grams_unknown", some("cartridge", 1, 0)}, {"no", "wh", "wh_unknown", some("power_bank", 1, 0)},
		{"no", "wh", "wh_unknown", some("spare_battery", 1, 0)}, {"no", "wh", "fitted_unknown", some("lithium_installed", 1, 0)}, {"no", "ml", "can_unknown", some("aerosol", 1, 0)},
		{"no", "ml", "liquid", some("sealant", 1, 0)}, {"no", "", "cartridge_hold", some("cartridge", 1, 16)}, {"no", "", "burns", some("solvent", 1, 0)},
	} {
		if v := pack.JudgeGoods([]pack.Good{c.good}, pack.AirBag, c.leg)[0]; v.Asks != c.asks || v.Why != c.why {
			t.Errorf("%s asks %q for %s, want %q for %s", c.good.ID, v.Asks, v.Why, c.asks, c.why)
		}
	}
}

// Without a flight its rules do not count; a courier's parcel has no cabin and may fly.
func TestOtherWays(t *testing.T) {
	for _, c := range []struct {
		way, id     string
		size        float64
		cabin, hold string
	}{
		{"car", "cartridge", 38, "yes", "yes"}, {"car", "solvent", 0, "yes", "yes"},
		{"train", "cartridge", 16, "ask", "ask"}, {"train", "solvent", 0, "ask", "ask"}, {"train", "power_bank", 74, "yes", "yes"}, {"train", "tools", 0, "yes", "yes"},
		{"courier", "cartridge", 16, "no", "ask"}, {"courier", "power_bank", 74, "no", "no"}, {"courier", "lithium_installed", 5, "no", "ask"}, {"courier", "tools", 0, "no", "yes"},
	} {
		if v := pack.JudgeGoods([]pack.Good{some(c.id, 1, c.size)}, pack.Way(c.way), "no")[0]; v.Cabin != c.cabin || v.Hold != c.hold {
			t.Errorf("%s, %s: %+v", c.way, c.id, v)
		}
	}
}

// What may not travel is bought there, each kind once, if shops have it; and alcohol where there are rotors to clean.
func TestBuyThere(t *testing.T) {
	goods := []pack.Good{some("cartridge", 1, 38), some("cartridge", 2, 16), some("solvent", 1, 0), some("tools", 1, 0), some("cartridge", 1, 45), some("power_bank", 4, 74)}
	rim := pack.Bike{Bike: check.Bike{Front: check.Wheel{Brake: "rim"}, Rear: check.Wheel{Brake: "rim"}}}
	for _, c := range []struct {
		way, leg string
		bike     pack.Bike
		want     string
	}{
		{"air_bag", "yes", pack.Bike{}, "cartridge solvent alcohol"}, {"air_bag", "no", rim, "cartridge solvent"}, {"car", "yes", pack.Bike{}, ""}, {"train", "no", pack.Bike{}, ""},
	} {
		got := strings.Join(pack.Plan(pack.Trip{Bike: c.bike, Way: pack.Way(c.way), USLeg: c.leg, Goods: goods}).BuyThere, " ")
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.way, got, c.want)
		}
	}
}
