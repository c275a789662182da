package tyre_test

import (
	"testing"

	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// pairOf is a tyre named for hookless rims, bead seats alike.
func pairOf(label, inner float64, edge tyre.Profile) tyre.Pair {
	return tyre.Pair{TyreBeadSeat: mm(622), RimBeadSeat: mm(622), Label: mm(label), Inner: mm(inner), Profile: edge, HooklessNamed: true}
}

func (c pairCase) pair() tyre.Pair {
	p := pairOf(c.label, c.inner, c.edge)
	if c.change != nil {
		c.change(&p)
	}
	return p
}

type pairCase struct {
	name         string
	label, inner float64
	edge         tyre.Profile
	change       func(*tyre.Pair)
	want         tyre.Verdict
}

func table(lo, hi float64) func(*tyre.Pair) {
	return func(p *tyre.Pair) { p.Table = tyre.Table{MinLabel: mm(lo), MaxLabel: mm(hi)} }
}

// narrowest is the answer to the question of the narrowest listed width, and nothing else of a table.
func narrowest(lo float64) func(*tyre.Pair) {
	return func(p *tyre.Pair) { p.Table.MinLabel = mm(lo) }
}

func notNamed(p *tyre.Pair) { p.HooklessNamed = false }

// The ordered rules for a tyre on a rim. Hookless widths: a rim maker's published statements (ETRTO 2022, 2023) and the trade
// press rule of inner + 5 mm, the stricter one; hooked ratios from memory; bead seats ISO 5775.
func TestRefusal(t *testing.T) {
	for _, c := range []pairCase{
		{"bead seats differ", 40, 23, "hooked", func(p *tyre.Pair) { p.TyreBeadSeat = mm(584) }, tyre.BeadDiffers},
		{"bead seats differ first of all", 20, 30, "hookless", func(p *tyre.Pair) { p.TyreBeadSeat = mm(630); p.HooklessNamed = false }, tyre.BeadDiffers},
		{"not named for hookless", 40, 23, "hookless", notNamed, tyre.NotForHookless}, // also with a tube inside
		{"not named, edge unknown", 40, 23, "unknown", notNamed, tyre.NotForHookless},
		{"not named, edge not given", 40, 23, "", notNamed, tyre.NotForHookless},
		{"not named, hooked", 40, 23, "hooked", notNamed, ""},

		{"28 on 25", 28, 25, "hookless", nil, tyre.HooklessNarrow},
		{"28 on 25, even in the rim's table", 28, 25, "hookless", table(28, 57), tyre.HooklessNarrow},
		{"28 on 25, edge unknown", 28, 25, "unknown", nil, tyre.HooklessNarrow},
		{"29 on 25", 29, 25, "hookless", nil, tyre.HooklessNarrow},
		{"29 on 25 in the rim's table", 29, 25, "hookless", table(29, 57), ""},
		{"29 on 25, a table with a maximum only", 29, 25, "hookless", func(p *tyre.Pair) { p.Table.Max = 4e5 }, tyre.HooklessNarrow},
		{"29 on 25, below the table", 29, 25, "hookless", table(30, 57), tyre.HooklessNarrow},
		{"30 on 25", 30, 25, "hookless", nil, ""},
		{"30 on 25, edge unknown", 30, 25, "unknown", nil, ""},
		{"25 on 21", 25, 21, "hookless", nil, tyre.HooklessNarrow},
		{"27 on 21", 27, 21, "hookless", nil, tyre.HooklessNarrow},
		{"27 on 21, even in the rim's table", 27, 21, "hookless", table(25, 57), tyre.HooklessNarrow},
		{"28 on 23", 28, 23, "hookless", nil, ""},
		{"28 on 24", 28, 24, "hookless", nil, tyre.HooklessNarrow},
		{"29 on 24", 29, 24, "hookless", nil, ""},
		{"31 on 27", 31, 27, "hookless", nil, tyre.HooklessNarrow},
		{"31 on 27, even in the rim's table", 31, 27, "hookless", table(29, 57), tyre.HooklessNarrow},
		{"32 on 27", 32, 27, "hookless", nil, ""},
		{"34 on 30", 34, 30, "hookless", nil, tyre.HooklessNarrow},
		{"35 on 30", 35, 30, "hookless", nil, ""},
		{"32 on 29", 32, 29, "hookless", nil, tyre.HooklessNarrow},

		{"below the table", 34, 23, "hooked", table(35, 50), tyre.OutsideTable},
		{"above the table", 51, 23, "hooked", table(35, 50), tyre.OutsideTable},
		{"at the table's edge", 50, 23, "hooked", table(35, 50), ""},
		{"hookless above the table", 51, 23, "hookless", table(35, 50), tyre.OutsideTable},

		// Hooked: below 1.15 a question, below 1.00 no, whatever is listed (32 on 29, ratio 1.10, is ridden and measures 36.5).
		{"hooked ratio 1.14", 24, 21, "hooked", nil, tyre.AskNarrowest},
		{"32 on 29 hooked", 32, 29, "hooked", nil, tyre.AskNarrowest},
		{"32 on 29 hooked, listed from 32", 32, 29, "hooked", narrowest(32), ""},
		{"32 on 29 hooked, listed from 30", 32, 29, "hooked", narrowest(30), ""},
		{"32 on 29 hooked, listed from 33", 32, 29, "hooked", narrowest(33), tyre.OutsideTable},
		{"32 on 29 hooked, a table with a widest only", 32, 29, "hooked", func(p *tyre.Pair) { p.Table.MaxLabel = mm(57) }, tyre.AskNarrowest},
		{"hooked ratio 1.00", 30, 30, "hooked", narrowest(28), ""},
		{"hooked ratio 0.97", 29, 30, "hooked", nil, tyre.TooNarrow},
		{"hooked ratio 0.97, even in the rim's table", 29, 30, "hooked", narrowest(28), tyre.TooNarrow},
		{"hooked ratio 1.15", 23, 20, "hooked", nil, ""},
		{"hooked ratio 1.19", 25, 21, "hooked", nil, ""},
		{"hookless has no low ratio", 35, 30, "hookless", nil, ""}, // 1.17
		{"ratio 2.48", 52, 21, "hooked", nil, ""},
		{"ratio 2.52", 53, 21, "hooked", nil, tyre.TooWide},
		{"ratio 2.52 hookless", 53, 21, "hookless", nil, tyre.TooWide},
		{"ratio 2.52 in the rim's table", 53, 21, "hooked", table(28, 57), ""},
		{"ratio 2.52, a table with a narrowest only", 53, 21, "hooked", narrowest(28), tyre.TooWide},
		{"ratio 2.52, a table with a maximum only", 53, 21, "hooked", func(p *tyre.Pair) { p.Table.Max = 4e5 }, tyre.TooWide},
	} {
		if got := c.pair().Refusal(); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// Cares: below 1.25 hooked (trade press), above 2.25 (from memory), wide hookless without its table (our choice from 35 mm).
func TestWarning(t *testing.T) {
	for _, c := range []pairCase{
		{"hooked ratio 1.19", 25, 21, "hooked", nil, tyre.NarrowCare},
		{"hooked ratio 1.33", 28, 21, "hooked", nil, ""},
		{"hooked ratio 1.25", 25, 20, "hooked", nil, ""},
		{"32 on 29 hooked, listed", 32, 29, "hooked", narrowest(32), tyre.NarrowCare},
		{"hookless ratio 1.2", 30, 25, "hookless", nil, ""},
		{"ratio 2.24", 47, 21, "hooked", nil, ""},
		{"ratio 2.29", 48, 21, "hooked", nil, tyre.WideCare},
		{"ratio 2.29, a table with a narrowest only", 48, 21, "hooked", narrowest(28), tyre.WideCare},
		{"ratio 2.29 in the rim's table", 48, 21, "hooked", table(28, 57), ""},
		{"35 hookless", 35, 23, "hookless", nil, tyre.HooklessNoTable},
		{"34 hookless", 34, 23, "hookless", nil, ""},
		{"35 hookless with a table", 35, 23, "hookless", func(p *tyre.Pair) { p.Table.Max = 4e5 }, ""},
		{"40, edge unknown", 40, 23, "unknown", nil, tyre.HooklessNoTable},
	} {
		if got := c.pair().Warning(); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// max(28, inner + 5): the stricter of two published rules.
func TestMinHooklessLabel(t *testing.T) {
	for inner, want := range map[float64]float64{17: 28, 21: 28, 23: 28, 24: 29, 25: 30, 27: 32, 30: 35} {
		within(t, "narrowest, mm", tyre.MinHooklessLabel(mm(inner)).MM(), want, 1e-9)
	}
	// 500 kPa on hookless rims: a tyre maker's page quoting ETRTO. One rim maker's 73 psi is 503 kPa and loses.
	within(t, "cap, kPa", tyre.HooklessCap.KPa(), 500, 1e-9)
	if unit.FromPSI(73) <= tyre.HooklessCap {
		t.Error("73 psi should lie above the cap")
	}
}
