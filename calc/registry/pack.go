package registry

import "rimside/calc/pack"

const (
	exampleGoods = `[{"id":"cartridge","count":4,"grams":16},{"id":"cartridge","grams":38},{"id":"power_bank","count":2,"wh":74,"who":"Ana"},` +
		`{"id":"spare_battery","wh":130},{"id":"lithium_installed","count":3,"wh":5},{"id":"aerosol","ml":75},{"id":"sealant","ml":500},` +
		`{"id":"solvent"},{"id":"tools"},{"id":"pump"},{"id":"alcohol"}]`
	maxGoods = 200
	maxWho   = 80 // characters: a name or a record's id
)

var directions = []string{"out", "home"}

var goodsField = listOf("goods", 0, maxGoods,
	oneOf("id", pack.GoodKinds()),
	count("count"),
	num("grams", "g", 0.1, 20000).optional(),
	num("wh", "Wh", 0.1, 5000).optional(),
	num("ml", "mL", 0.1, 20000).optional(),
	label("who", maxWho).optional(),
).optional()

// count is a whole number, one where nobody says.
func count(name string) *Field {
	f := num(name, "", 1, 100).instead(1)
	f.Kind = integer
	return f
}

var packCalculation = calculation{
	name: "pack",
	table: []*Field{
		builtBike, oneOf("way", pack.Ways()), oneOf("direction", directions).instead("out"), yesNo("legs_us").optional().nullable(), goodsField,
	},
	example: `{"bike":` + examplePacked + `,"way":"air_bag","direction":"out","legs_us":false,"goods":` + exampleGoods + `}`,
	run: func(v values) (any, *Error) {
		return packJSON(pack.Plan(pack.Trip{
			Bike: packedBike(v.in("bike")), Way: pack.Way(v.text("way")), Home: v.text("direction") == "home", USLeg: v.said("legs_us"), Goods: goodsOf(v),
		})), nil
	},
}

// examplePacked is the example's bike with what packing asks besides.
var examplePacked = exampleBike[:len(exampleBike)-1] +
	`,"shifting":"electric","pedals":"hex","derailleur":"hanger","seatpost":"wires","cockpit":"hoses","bar_material":"carbon"}`

func packedBike(bike values) pack.Bike {
	return pack.Bike{
		Bike: builtBikeOf(bike).Bike, Electric: bike.said("electric"), Shifting: bike.text("shifting"), Pedals: bike.text("pedals"),
		Derailleur: bike.text("derailleur"), Post: bike.text("seatpost"), Cockpit: bike.text("cockpit"),
	}
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
		out = append(out, pack.Good{ID: g.text("id"), Count: int(g.num("count")), Grams: g.num("grams"), Wh: g.num("wh"), ML: g.num("ml"), Who: g.text("who")})
	}
	return out
}
