package pack_test

import (
	"strings"
	"testing"

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
	} {
		for _, way := range []pack.Way{pack.AirBag, pack.AirBox, pack.AirCase} {
			v := pack.JudgeGoods(c.goods, way, c.leg)[0]
			if v.Cabin != c.cabin || v.Hold != c.hold || v.ID != c.goods[0].ID || v.Dated != "2026-11-25" {
				t.Errorf("%s, %s: %+v, want %s, %s", way, c.about, v, c.cabin, c.hold)
			}
		}
	}
}

// Every kind has a verdict of its own, in words that fit a phone, on every way.
func TestEveryKindIsJudged(t *testing.T) {
	for _, way := range pack.Ways() {
		for _, leg := range []string{"yes", "no", ""} {
			for _, kind := range pack.GoodKinds() {
				v := pack.JudgeGoods([]pack.Good{some(kind, 1, 0)}, pack.Way(way), leg)[0]
				if !strings.HasSuffix(v.Why, ".") || len([]rune(v.Why)) > 210 || (v.Dated == "") != (way == "car" || way == "train") {
					t.Errorf("%s, %s: %+v", way, kind, v)
				}
				burns := kind == "flammable_spray" || kind == "solvent"
				if strings.Contains(v.Why, "Flammable sprays") != burns && way != "car" && way != "train" {
					t.Errorf("%s, %s is told: %s", way, kind, v.Why)
				}
			}
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

// What may not travel is bought there, each kind once.
func TestBuyThere(t *testing.T) {
	goods := []pack.Good{some("cartridge", 1, 38), some("cartridge", 2, 16), some("solvent", 1, 0), some("tools", 1, 0), some("cartridge", 1, 45)}
	for _, c := range []struct{ way, leg, want string }{
		{"air_bag", "yes", "cartridge solvent"}, {"air_bag", "no", "cartridge solvent"}, {"car", "yes", ""}, {"train", "no", ""},
	} {
		if got := strings.Join(pack.Plan(pack.Bike{}, pack.Way(c.way), c.leg, goods).BuyThere, " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.way, got, c.want)
		}
	}
}
