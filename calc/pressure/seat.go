package pressure

import (
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// refusal is why a wheel has no number, with what its sentence speaks of; "" where it may have one. It is the gate of every
// pressure, and of fitting a tyre too.
func (w WheelSetup) refusal() (Code, []Value) {
	pair := w.pair()
	switch verdict := pair.Refusal(); {
	case verdict != "":
		return Code(verdict), pairValues(verdict, pair)
	case w.impossible():
		return ImpossibleWidth, nil
	case w.Rim.Profile.TreatedHookless() && w.unread() != "":
		return askCodes[w.unread()], nil
	}
	return "", nil
}

func (w WheelSetup) impossible() bool {
	_, err := w.width()
	return err != nil
}

// pairValues are the printed widths that a refusal or a question speaks of.
func pairValues(verdict tyre.Verdict, pair tyre.Pair) []Value {
	switch verdict {
	case tyre.BeadDiffers, tyre.NotForHookless:
		return nil
	case tyre.HooklessNarrow:
		return []Value{length("label", pair.Label), length("inner", pair.Inner), length("least_label", tyre.MinHooklessLabel(pair.Inner))}
	}
	return []Value{length("label", pair.Label), length("inner", pair.Inner)}
}

// cares are what to take care of with a pair that is not refused.
func (w WheelSetup) cares() []Code {
	var out []Code
	pair := w.pair()
	if warning := pair.Warning(); warning != "" {
		out = append(out, Code(warning))
	}
	if pair.Profile == tyre.Unknown {
		out = append(out, EdgeUnknown)
	}
	return out
}

// Refusals lists why a pair may not be fitted, as keys.
func Refusals() []string {
	return []string{
		string(tyre.BeadDiffers), string(tyre.NotForHookless), string(tyre.HooklessNarrow), string(tyre.OutsideTable), string(tyre.TooNarrow),
		string(tyre.AskNarrowest), string(tyre.TooWide), string(ImpossibleWidth), string(AskMaxTyre), string(AskMaxRim), string(AskMaxBoth),
	}
}

// ConvertedCap is the most for a tyre that was not made tubeless, seated without a tube: 276 kPa, 40 psi (published, a workshop page).
const ConvertedCap = unit.Pascal(276e3)

// LimitConverted is the limit of such a tyre; it concerns seating alone.
const LimitConverted Limit = "converted"

// SeatLimits lists what may set the pressure that seating never passes, as keys.
func SeatLimits() []string {
	return []string{
		string(LimitNone), string(LimitTyre), string(LimitRim), string(LimitHookless), string(LimitTable), string(LimitUnread), string(LimitConverted),
	}
}

// Seat is what must be known before a tyre is fitted: whether the pair may be used at all, and the pressure that its bead, while it
// is seated, may never pass.
type Seat struct {
	Refused Code // "" when the tyre may go on this rim
	Values  []Value
	Cares   []Code
	Ceiling unit.Pascal // true; 0 after a refusal
	Gauge   unit.Pascal // the most that a gauge may show: less where it reads low, never more
	Limited Limit
	Missing Missing // printed maxima that nobody has read; "" when none is missing
}

// SeatOf answers for one wheel, from the same rules and marks as every pressure; the gauge's error is reading minus truth. A tyre of which nobody knows that it was made
// tubeless counts as not made so, unless its maker names it for hookless rims. Error: ErrInput.
func SeatOf(w WheelSetup, madeTubeless bool, gaugeError unit.Pascal) (Seat, error) {
	if err := w.checkAlone(gaugeError); err != nil {
		return Seat{}, err
	}
	seat := Seat{Limited: LimitNone, Missing: w.unread()}
	if seat.Refused, seat.Values = w.refusal(); seat.Refused != "" {
		return seat, nil
	}
	marks := w.marks()
	if w.Tyre.Setup != Tube && !madeTubeless && !w.Tyre.ForHookless {
		marks = append(marks, mark{LimitConverted, ConvertedCap})
	}
	binds := lowest(marks)
	seat.Ceiling, seat.Limited, seat.Cares = binds.max, binds.limit, w.cares()
	seat.Gauge = max(0, binds.max+min(0, gaugeError))
	return seat, nil
}

func (w WheelSetup) checkAlone(gaugeError unit.Pascal) error {
	positive, finite := map[string]float64{}, map[string]float64{"gauge error": float64(gaugeError)}
	w.check("wheel", positive, finite)
	return checkNumbers(positive, finite)
}
