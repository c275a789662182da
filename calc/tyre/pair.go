package tyre

import (
	"math"

	"rimside/calc/unit"
)

// Profile is the shape of the rim's edge.
type Profile string

// Rim edges. An unknown one is treated as hookless: missing knowledge is not permission.
const (
	Hooked   Profile = "hooked"
	Hookless Profile = "hookless"
	Unknown  Profile = "unknown"
)

// Profiles lists the keys.
func Profiles() []string { return []string{string(Hooked), string(Hookless), string(Unknown)} }

// TreatedHookless says whether the hookless rules hold for this edge.
func (p Profile) TreatedHookless() bool { return p != Hooked }

// HooklessCap is the pressure never passed on a hookless rim, whatever is printed: 500 kPa (a tyre maker's page quoting
// ETRTO; one rim maker prints 73 psi = 503 kPa, and the stricter one is used).
const HooklessCap = unit.Pascal(500e3)

// Table is the rim's own table of tyre widths. Zero fields are not given.
type Table struct {
	MinLabel, MaxLabel unit.Metre
	Max                unit.Pascal
}

// allowsNarrow says that the table names this label as wide enough; a table without a narrowest width says nothing of it.
func (t Table) allowsNarrow(label unit.Metre) bool { return t.MinLabel > 0 && !t.excludes(label) }

// allowsWide says that the table names this label as narrow enough; a table without a widest width says nothing of it.
func (t Table) allowsWide(label unit.Metre) bool { return t.MaxLabel > 0 && !t.excludes(label) }

func (t Table) excludes(label unit.Metre) bool {
	return label < t.MinLabel || (t.MaxLabel > 0 && label > t.MaxLabel)
}

// Pair is a tyre on a rim, as printed and marked.
type Pair struct {
	TyreBeadSeat, RimBeadSeat unit.Metre
	Label, Inner              unit.Metre
	Profile                   Profile
	HooklessNamed             bool // the maker names this tyre for hookless rims, which also means a tubeless bead
	Table                     Table
}

// Verdict is why a pair is refused or needs care; empty when nothing is found.
type Verdict string

// Refusals, then warnings.
const (
	BeadDiffers     Verdict = "bead_differs"
	NotForHookless  Verdict = "not_for_hookless"
	HooklessNarrow  Verdict = "hookless_too_narrow"
	OutsideTable    Verdict = "outside_rim_table"
	TooNarrow       Verdict = "too_narrow"
	AskNarrowest    Verdict = "ask_table_min" // a question: which narrowest width does the rim's maker list?
	TooWide         Verdict = "too_wide"
	NarrowCare      Verdict = "narrow_care"
	WideCare        Verdict = "wide_care"
	HooklessNoTable Verdict = "hookless_no_table"
)

// Verdicts lists the keys, refusals first.
func Verdicts() []Verdict {
	return []Verdict{
		BeadDiffers, NotForHookless, HooklessNarrow, OutsideTable, TooNarrow, AskNarrowest, TooWide, NarrowCare, WideCare, HooklessNoTable,
	}
}

// Limits of printed width over inner width.
const (
	// StopBelowRatio refuses a narrower pair on hooked rims, whatever a table says (our choice).
	StopBelowRatio = 1.00
	// AskBelowRatio refuses a narrower pair on hooked rims unless the rim's maker lists its width (from memory: the trade press
	// rule of 1.25 refuses everyday pairs; a printed 32 on 29 mm is ridden and measures 36.5).
	AskBelowRatio = 1.15
	// CareBelowRatio warns of a narrow tyre on hooked rims (trade press).
	CareBelowRatio = 1.25
	// CareAboveRatio warns of a wide tyre (from memory).
	CareAboveRatio = 2.25
	// StopAboveRatio refuses a wider pair (from memory).
	StopAboveRatio = 2.5
)

// WideHookless is the printed width from which a hookless rim's own table is asked for: makers' limits for wide tyres are
// always below the general cap (our choice of 35 mm).
var WideHookless = unit.FromMM(35)

// What a hookless rim asks of the printed width, mm: see MinHooklessLabel.
const (
	// HooklessLeastMM is the narrowest on any hookless rim.
	HooklessLeastMM = 28
	// HooklessMarginMM is how much wider than the inner width it must be.
	HooklessMarginMM = 5
)

// MinHooklessLabel is the narrowest printed width for a hookless rim, max(28 mm, inner + 5 mm): 28 up to 23 mm inner, 29
// on 24, 30 on 25, 32 on 27, 35 on 30 (trade press rule; a rim maker's published statements of ETRTO 2022 and 2023 ask 28
// and 29 on 25, and the stricter one is used).
func MinHooklessLabel(inner unit.Metre) unit.Metre {
	return unit.FromMM(math.Max(HooklessLeastMM, inner.MM()+HooklessMarginMM))
}

// hooklessNarrow applies the minimum and its one exception: that very rim's table may allow 29 on 25, never 28 on 25.
func (p Pair) hooklessNarrow() bool {
	const slack = 1e-9 // metres; keeps 28 against 23 + 5 from failing on the last bit
	if p.Label >= MinHooklessLabel(p.Inner)-slack {
		return false
	}
	excepted := p.Label >= unit.FromMM(29)-slack && p.Inner <= unit.FromMM(25)+slack && p.Table.allowsNarrow(p.Label)
	return !excepted
}

// ratio is printed width over inner width, free of the last bits that a millimetre has in metres.
func (p Pair) ratio() float64 { return math.Round(float64(p.Label/p.Inner)*1e9) / 1e9 }

// Refusal goes down the ordered list of rules for a tyre on a rim and returns the first that stops it, or "". Widths are
// the printed ones, never measured. (Bead seats: ISO 5775; hookless rules: a rim maker's published statement.)
func (p Pair) Refusal() Verdict {
	ratio, hookless := p.ratio(), p.Profile.TreatedHookless()
	switch {
	case math.Round(p.TyreBeadSeat.MM()) != math.Round(p.RimBeadSeat.MM()):
		return BeadDiffers
	case hookless && !p.HooklessNamed:
		return NotForHookless
	case hookless && p.hooklessNarrow():
		return HooklessNarrow
	case p.Table.excludes(p.Label):
		return OutsideTable
	case !hookless && ratio < StopBelowRatio:
		return TooNarrow
	case !hookless && ratio < AskBelowRatio && !p.Table.allowsNarrow(p.Label):
		return AskNarrowest
	case ratio > StopAboveRatio && !p.Table.allowsWide(p.Label):
		return TooWide
	}
	return ""
}

// Warning is what to take care of with a pair that is not refused, or "".
func (p Pair) Warning() Verdict {
	ratio, hookless := p.ratio(), p.Profile.TreatedHookless()
	switch {
	case !hookless && ratio < CareBelowRatio:
		return NarrowCare
	case ratio > CareAboveRatio && !p.Table.allowsWide(p.Label):
		return WideCare
	case hookless && p.Label >= WideHookless && p.Table.Max == 0:
		return HooklessNoTable
	}
	return ""
}
