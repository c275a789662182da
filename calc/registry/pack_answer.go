package registry

import (
	"math"

	"rimside/calc/pack"
)

var (
	may    = []string{pack.Yes, pack.No, pack.Ask}
	places = []string{pack.InBag, pack.InCabin, pack.NotCarried}
)

func packAnswer() *Field {
	return result(packSteps("steps"), keys("bag", pack.Tools()...), keys("buy_there", pack.GoodKinds()...),
		parts("goods", key("id", pack.GoodKinds()...), key("cabin", may...), key("hold", may...), key("why", pack.Whys()...), valuesOf("values"),
			key("place", places...), key("asks", "", "legs_us", "grams", "wh", "ml"), flag("parcel"), wording("dated")),
		packSteps("arrival"),
		parts("ask", key("field", pack.Questions()...), key("side", "", "front", "rear")),
		onDay("rules_read"))
}

func packSteps(name string) *Field {
	return parts(name, key("id", pack.StepIDs()...), key("stage", pack.Stages()...), key("tool", append([]string{""}, pack.Tools()...)...),
		keys("needs", pack.StepIDs()...), flag("must"), valuesOf("values"), keys("notes", pack.Notes()...),
		flag("loosens").optional(), keys("undoes", pack.StepIDs()...).optional(), keys("as_built", pack.AsBuilt()...).optional())
}

// keys is a list of keys that a package lists.
func keys(name string, choices ...string) *Field {
	return &Field{Name: name, Kind: list, Item: choice, Choices: choices, Max: math.Inf(1)}
}

func packJSON(a pack.Answer) any {
	goods := make([]any, len(a.Goods))
	for i, g := range a.Goods {
		goods[i] = fields{
			{"id", g.ID}, {"cabin", g.Cabin}, {"hold", g.Hold}, {"why", g.Why}, {"values", stepValues(g.Values)}, {"place", g.Place}, {"asks", g.Asks},
			{"parcel", g.Parcel}, {"dated", g.Dated},
		}
	}
	ask := make([]any, len(a.Ask))
	for i, q := range a.Ask {
		ask[i] = fields{{"field", q.Field}, {"side", q.Side}}
	}
	return fields{
		{"steps", stepsJSON(a.Steps)}, {"bag", texts(a.Bag)}, {"buy_there", texts(a.BuyThere)}, {"goods", goods}, {"arrival", stepsJSON(a.Arrival)}, {"ask", ask},
		{"rules_read", pack.ReadOn},
	}
}

// stepsJSON writes what every step has, and beside it only what this one has.
func stepsJSON(steps []pack.Step) []any {
	out := make([]any, len(steps))
	for i, s := range steps {
		f := fields{
			{"id", s.ID}, {"stage", s.Stage}, {"tool", s.Tool}, {"needs", texts(s.Needs)}, {"must", s.Must}, {"values", stepValues(s.Values)}, {"notes", texts(s.Notes)},
		}
		if s.Loosens {
			f = append(f, field{"loosens", true})
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

// stepValues are the numbers in a code's sentence, by name.
func stepValues(list []pack.Value) fields {
	out := make(fields, len(list))
	for i, v := range list {
		out[i] = field{v.Name, v.Number}
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
