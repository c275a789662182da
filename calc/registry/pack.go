package registry

import "rimside/calc/pack"

const (
	exampleGoods = `[{"id":"cartridge","count":4,"grams":16},{"id":"cartridge","grams":38},{"id":"power_bank","count":2,"wh":74},` +
		`{"id":"spare_battery","wh":130},{"id":"lithium_installed","count":3,"wh":5},{"id":"aerosol","ml":75},{"id":"sealant","ml":500},` +
		`{"id":"solvent"},{"id":"tools"},{"id":"pump"}]`
	maxGoods = 200
)

var goodsField = listOf("goods", 0, maxGoods,
	oneOf("id", pack.GoodKinds()),
	count("count"),
	num("grams", "g", 0.1, 20000).optional(),
	num("wh", "Wh", 0.1, 5000).optional(),
	num("ml", "mL", 0.1, 20000).optional(),
).optional()

// count is a whole number, one where nobody says.
func count(name string) *Field {
	f := num(name, "", 1, 100).instead(1)
	f.Kind = integer
	return f
}

var packCalculation = calculation{
	name:    "pack",
	table:   []*Field{builtBike, oneOf("way", pack.Ways()), yesNo("legs_us").optional(), goodsField},
	example: `{"bike":` + exampleBike + `,"way":"air_bag","legs_us":false,"goods":` + exampleGoods + `}`,
	run: func(v values) (any, *Error) {
		bike := v.in("bike")
		a := pack.Plan(pack.Bike{
			Bike: builtBikeOf(bike).Bike, Electric: bike.said("electric"), Pedals: bike.text("pedals"), Derailleur: bike.text("derailleur"),
		}, pack.Way(v.text("way")), v.said("legs_us"), goodsOf(v))
		goods := make([]any, len(a.Goods))
		for i, g := range a.Goods {
			goods[i] = fields{{"id", g.ID}, {"cabin", g.Cabin}, {"hold", g.Hold}, {"why", g.Why}, {"dated", g.Dated}}
		}
		return fields{
			{"steps", stepsJSON(a.Steps)}, {"bag", texts(a.Bag)}, {"buy_there", texts(a.BuyThere)}, {"goods", goods}, {"arrival", stepsJSON(a.Arrival)},
		}, nil
	},
}

// said is yes or no, and "" where nobody said.
func (v values) said(name string) string {
	switch {
	case !v.has(name):
		return ""
	case v.yes(name):
		return "yes"
	}
	return "no"
}

func goodsOf(v values) []pack.Good {
	var out []pack.Good
	for _, g := range v.items("goods") {
		n := 1
		if g.has("count") {
			n = int(g.num("count"))
		}
		out = append(out, pack.Good{ID: g.text("id"), Count: n, Grams: g.num("grams"), Wh: g.num("wh"), ML: g.num("ml")})
	}
	return out
}

// stepsJSON writes what every step has, and beside it only what this one has.
func stepsJSON(steps []pack.Step) []any {
	out := make([]any, len(steps))
	for i, s := range steps {
		f := fields{{"id", s.ID}, {"stage", s.Stage}, {"text", s.Text}, {"tool", s.Tool}, {"needs", texts(s.Needs)}}
		for _, flag := range []struct {
			name string
			set  bool
		}{{"loosens", s.Loosens}, {"must", s.Must}} {
			if flag.set {
				f = append(f, field{flag.name, true})
			}
		}
		if len(s.Undoes) > 0 {
			f = append(f, field{"undoes", texts(s.Undoes)})
		}
		if len(s.AsBuilt) > 0 {
			f = append(f, field{"as_built", texts(s.AsBuilt)})
		}
		out[i] = f
	}
	return out
}

func texts(list []string) []any {
	out := make([]any, len(list))
	for i, s := range list {
		out[i] = s
	}
	return out
}
