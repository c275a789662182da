package pressure_test

import (
	"fmt"
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/ride"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// moved is the gas law at constant volume in the ISO 2533 air, written out again as the judge; gauge kPa.
func moved(kPa float64, from, to air.State) float64 {
	ambient := func(s air.State) float64 { return 101.325 * math.Pow(1-0.0065*float64(s.Altitude)/288.15, 5.25588) }
	return (kPa+ambient(from))*float64(to.Temperature)/float64(from.Temperature) - ambient(to)
}

// lowestMax is the lowest true maximum of a wheel in kPa: what is printed, what the rim's table says, 500 on any edge that is not
// known to be hooked (a tyre maker's page quoting ETRTO), and 250 where a hooked rim's limits are not wholly known.
func lowestMax(w pressure.WheelSetup) float64 {
	low := math.Inf(1)
	for _, p := range []float64{w.Tyre.Max.KPa(), w.Rim.Max.KPa(), w.Rim.Table.Max.KPa()} {
		if p > 0 {
			low = math.Min(low, p)
		}
	}
	if w.Rim.Profile != tyre.Hooked {
		low = math.Min(low, 500)
	}
	if unread(w) {
		low = math.Min(low, 250)
	}
	return low
}

func unread(w pressure.WheelSetup) bool {
	return w.Tyre.Max == 0 || (w.Rim.Max == 0 && w.Rim.Table.Max == 0)
}

const hair = 1e-6 // kPa, for the last bits of the gas law

func standing(in pressure.Input) air.State {
	if in.Here == pressure.HereRide {
		return in.Ride
	}
	return in.Set
}

// underLimits fails when any number that a wheel is told to hold passes its lowest maximum at the ride, where it is set, or at the
// warmest hour, wherever the rider stands.
func underLimits(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		advice := a.Wheel(side).Advice
		if advice == nil {
			continue
		}
		most := lowestMax(sideOf(in, side)) + hair
		states := map[string]air.State{"ride": in.Ride, "set": in.Set}
		if in.Warmest != nil {
			states["warmest"] = air.State{Temperature: *in.Warmest, Altitude: in.Ride.Altitude}
		}
		atRide := map[string]float64{
			"recommended": advice.Recommended.KPa(), "p0": advice.P0.KPa(), "at ride": advice.AtRide.KPa(), "likely": advice.Likely.High.KPa(),
			"set": moved(advice.Set.KPa(), in.Set, in.Ride), "here": moved(advice.HereGauge.KPa()-in.GaugeError.KPa(), standing(in), in.Ride),
		}
		if advice.Good != nil {
			atRide["good"] = advice.Good.High.KPa()
		}
		for name, p := range atRide {
			for when, state := range states {
				if got := moved(p, in.Ride, state); !(got <= most) {
					return fmt.Errorf("%s %s is %.6f kPa at %s, over %.6f", side, name, got, when, most)
				}
			}
		}
	}
	return nil
}

// floorKPa is the least that braking (0.60 of all weight in front) or seated climbing (0.65 behind) allows: squash of 18 % with a
// tube, 20 % tubeless, 24 % with an insert, by F = p beta 4/3 sqrt(2R) d^1.5; never under the printed minimum.
func floorKPa(in pressure.Input, side pressure.Side, width unit.Metre) float64 {
	w := sideOf(in, side)
	all, share := float64(in.Rider+in.Bike), 0.65
	if in.FrontLoad > 0 && in.RearLoad > 0 {
		all = float64(in.FrontLoad + in.RearLoad)
	}
	if side == pressure.Front {
		share = 0.60
	}
	squash := map[pressure.Setup]float64{"tube": 0.18, "tubeless": 0.20, "insert": 0.24}[w.Tyre.Setup]
	beta := math.Min(math.Pi, 2.8*math.Sqrt(width.MM()/28))
	radius := float64(w.Rim.BeadSeat)/2 + float64(width)
	p := share * all * 9.80665 / (beta * 4 / 3 * math.Sqrt(2*radius) * math.Pow(squash*float64(width), 1.5)) / 1e3
	return math.Max(p, w.Tyre.Min.KPa())
}

// aboveFloor fails when a number lies below what keeps the tyre off the rim, when a floor above the ceiling still gives advice, or
// when the reason that holds a number is not the one named.
func aboveFloor(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w := a.Wheel(side)
		if w.Figures == nil {
			continue
		}
		floor := floorKPa(in, side, w.Width)
		if math.Abs(w.Figures.Floor.KPa()-floor) > 1e-6*floor {
			return fmt.Errorf("%s floor is %v kPa, want %v", side, w.Figures.Floor.KPa(), floor)
		}
		if w.Figures.Ceiling < w.Figures.Floor {
			if w.Advice != nil || !told(a, side, pressure.FloorOverLimit, pressure.Stop) {
				return fmt.Errorf("%s floor above ceiling, but no stop", side)
			}
		}
		if w.Advice == nil {
			continue
		}
		p, limited := w.Advice.Recommended.KPa(), w.Figures.Limited
		if !(p >= floor-hair) || !(w.Advice.P0.KPa() >= floor-hair) {
			return fmt.Errorf("%s %v kPa is below the floor of %v", side, p, floor)
		}
		printed := sideOf(in, side).Tyre.Min.KPa() == w.Figures.Floor.KPa()
		if atFloor := p == w.Figures.Floor.KPa(); limited == pressure.LimitFloor && (!atFloor || printed) || limited == pressure.LimitPrintedMinimum && (!atFloor || !printed) {
			return fmt.Errorf("%s is said to be held by %s at %v kPa, its floor is %v", side, limited, p, floor)
		}
	}
	return nil
}

func told(a pressure.Answer, side pressure.Side, code pressure.Code, severity pressure.Severity) bool {
	for _, n := range a.Notices {
		if n.Side == side && n.Code == code && n.Severity == severity {
			return true
		}
	}
	return false
}

// unusable says, by the rules as published, that no number may be shown for a wheel: refused or not known well enough.
func unusable(w pressure.WheelSetup) bool {
	label, inner := w.Tyre.Label.MM(), w.Rim.Inner.MM()
	table := w.Rim.Table
	listed := table.MinLabel > 0 && w.Tyre.Label >= table.MinLabel && w.Tyre.Label <= table.MaxLabel
	hookless := w.Rim.Profile != tyre.Hooked
	narrow := label < math.Max(28, inner+5)-1e-6 && !(listed && label >= 29 && inner <= 25)
	ratio := label / inner
	return hookless && (!w.Tyre.ForHookless || narrow || unread(w)) ||
		!hookless && (ratio < 1 || ratio < 1.15 && !listed) || ratio > 2.5 && !listed || table.MinLabel > 0 && !listed
}

// silentWhenUnusable fails when a refused or unknown pair shows a number anywhere, or when silence is not explained by a stop.
func silentWhenUnusable(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w := a.Wheel(side)
		stopped, said := false, 0
		for _, n := range a.Notices {
			stopped = stopped || n.Side == side && n.Severity == pressure.Stop
			if w.Figures == nil && n.Side == side {
				for _, v := range n.Values {
					if v.Is == pressure.IsPressure {
						return fmt.Errorf("%s has no figures, but is told %s %v", side, v.Name, v.Number)
					}
				}
				said++
			}
		}
		if unusable(sideOf(in, side)) && (w.Figures != nil || w.Advice != nil || said != 1) {
			return fmt.Errorf("%s pair must not be used, but has figures or %d notices", side, said)
		}
		if stopped != (w.Advice == nil) {
			return fmt.Errorf("%s stopped %v, advice %v", side, stopped, w.Advice)
		}
		for _, b := range a.Bigger {
			if b.Side == side && w.Figures == nil {
				return fmt.Errorf("%s has no figures, but a bigger tyre at %v", side, b.Recommended)
			}
		}
	}
	return nil
}

// neverWithoutANumber: a hooked rim that may be used has its number, unless the floor lies above a limit.
func neverWithoutANumber(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w, wheel := a.Wheel(side), sideOf(in, side)
		if wheel.Rim.Profile != tyre.Hooked || unusable(wheel) || w.Advice != nil || told(a, side, pressure.FlatWhereSet, pressure.Stop) || w.Width == 0 {
			continue
		}
		most := moved(lowestMax(wheel), in.Ride, in.Ride)
		for _, m := range []air.State{in.Set, warmest(in)} {
			most = math.Min(most, moved(lowestMax(wheel), m, in.Ride))
		}
		if floor := floorKPa(in, side, w.Width); floor <= most-hair {
			return fmt.Errorf("%s has no number, with a floor of %v under %v kPa: %v", side, floor, most, a.Notices)
		}
	}
	return nil
}

func warmest(in pressure.Input) air.State {
	if in.Warmest == nil {
		return in.Ride
	}
	return air.State{Temperature: *in.Warmest, Altitude: in.Ride.Altitude}
}

// fineHolds: the fine range lies inside the limits and within a quarter of the number, contains it, and no end costs more than a
// watt more than it; where an end stops short of both, the next step outward costs more.
func fineHolds(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w := a.Wheel(side)
		if w.Advice == nil {
			continue
		}
		p, likely := w.Advice.Recommended, w.Advice.Likely
		if !(likely.Low <= p && p <= likely.High) {
			return fmt.Errorf("%s likely band %v misses its number %v", side, likely, p)
		}
		good := w.Advice.Good
		if good == nil {
			continue
		}
		low, high := max(w.Figures.Floor, 0.75*p), min(w.Figures.Ceiling, 1.25*p)
		if !(good.Low <= p && p <= good.High) || good.Low < low*(1-1e-12) || good.High > high*(1+1e-12) {
			return fmt.Errorf("%s fine range %v round %v, within %v..%v", side, *good, p, low, high)
		}
		watts := lossOf(in, side, w.Width)
		for _, end := range []struct{ at, limit, beyond unit.Pascal }{{good.Low, low, good.Low * 0.995}, {good.High, high, good.High * 1.005}} {
			if watts(end.at) > watts(p)+1+1e-6 {
				return fmt.Errorf("%s end at %v costs %.3f W more", side, end.at, watts(end.at)-watts(p))
			}
			if math.Abs(float64(end.at/end.limit)-1) > 1e-9 && watts(end.beyond) <= watts(p)+1 {
				return fmt.Errorf("%s end at %v could reach further: there it costs %.3f W", side, end.at, watts(end.beyond)-watts(p))
			}
		}
	}
	return nil
}

// lossOf is a wheel's loss in watts by the packages below.
func lossOf(in pressure.Input, side pressure.Side, width unit.Metre) func(unit.Pascal) float64 {
	w := sideOf(in, side)
	section := tyre.Mounted(w.Rim.BeadSeat, width)
	casing, _ := tyre.CasingOf(w.Tyre.Sidewall)
	share := in.FrontShare
	if side == pressure.Rear {
		share = 1 - share
	}
	carried := (in.Rider + in.Bike) * unit.Kilogram(share)
	if in.FrontLoad > 0 {
		carried = map[pressure.Side]unit.Kilogram{pressure.Front: in.FrontLoad, pressure.Rear: in.RearLoad}[side]
	}
	wheel := ride.Wheel{Section: section, Casing: casing, Load: ride.LoadOf(carried, in.Rider, in.Bike)}
	course := ride.NewCourse(in.Ground)
	return func(p unit.Pascal) float64 { return float64(course.Loss(wheel, p).Total()) * float64(course.Speed()) }
}

// hereHolds: what the gauge should read, and what to do, belong to the place where the rider stands.
func hereHolds(in pressure.Input, a pressure.Answer) error {
	for _, side := range pressure.Sides {
		w := a.Wheel(side)
		if w.Advice == nil {
			continue
		}
		aim := moved(w.Advice.Recommended.KPa(), in.Ride, standing(in)) + in.GaugeError.KPa()
		if math.Abs(w.Advice.HereGauge.KPa()-aim) > hair || math.Abs(w.Advice.Set.KPa()-moved(w.Advice.AtRide.KPa(), in.Ride, in.Set)) > hair ||
			math.Abs(w.Advice.Gauge.KPa()-w.Advice.Set.KPa()-in.GaugeError.KPa()) > hair || w.Advice.AtRide != w.Advice.Recommended {
			return fmt.Errorf("%s: %+v, the gauge should show %v here", side, w.Advice, aim)
		}
		reading := in.Now.Front
		if side == pressure.Rear {
			reading = in.Now.Rear
		}
		if err := actionHolds(w, reading, aim, told(a, side, pressure.OverLimitNow, pressure.Care)); err != nil {
			return fmt.Errorf("%s %w", side, err)
		}
	}
	return nil
}

func actionHolds(w *pressure.Wheel, reading *unit.Pascal, aim float64, over bool) error {
	do := w.Advice.Action
	if reading == nil || do == nil {
		if (reading == nil) != (do == nil) {
			return fmt.Errorf("reading %v, action %v", reading, do)
		}
		return nil
	}
	gap := aim - reading.KPa()
	near := math.Max(2.5, 0.02*math.Abs(aim))
	want := pressure.Leave
	switch {
	case gap < 0 && (over || -gap > near):
		want = pressure.LetOut
	case gap > near:
		want = pressure.Add
	}
	by := 0.0
	if want != pressure.Leave {
		by = math.Abs(gap)
	}
	if do.Do != want || math.Abs(do.By.KPa()-by) > hair || (do.Strokes != nil) != (want == pressure.Add) {
		return fmt.Errorf("gap %v: %+v, want %s", gap, do, want)
	}
	return nil
}

// biggerIsAccepted: typing just the mark that a wider tyre must show, for that tyre, gives the number that was promised.
func biggerIsAccepted(in pressure.Input, a pressure.Answer) error {
	for _, b := range a.Bigger {
		typed := in
		wheel := &typed.Front
		if b.Side == pressure.Rear {
			wheel = &typed.Rear
		}
		wheel.Tyre = pressure.Tyre{Label: b.Label, Sidewall: wheel.Tyre.Sidewall, Setup: wheel.Tyre.Setup, Max: b.NeedsMark, ForHookless: true}
		after, err := pressure.Decide(typed)
		if err != nil {
			return err
		}
		w := after.Wheel(b.Side)
		if w.Figures == nil && unread(*wheel) { // the rim's own mark is still a question
			continue
		}
		if told(after, b.Side, pressure.FlatWhereSet, pressure.Stop) {
			continue
		}
		if w.Advice == nil || math.Abs(float64(w.Advice.Recommended/b.Recommended)-1) > 1e-9 {
			return fmt.Errorf("%s %v mm marked %v kPa: %+v, promised %v: %v", b.Side, b.Label.MM(), b.NeedsMark.KPa(), w.Advice, b.Recommended.KPa(), after.Notices)
		}
		for _, again := range after.Bigger {
			if again.Side == b.Side {
				return fmt.Errorf("%s is sent on to %v mm", b.Side, again.Label.MM())
			}
		}
	}
	return nil
}

type rule struct {
	name  string
	check func(pressure.Input, pressure.Answer) error
}

var (
	limitsRule = rule{"under limits", underLimits}
	floorRule  = rule{"above floor", aboveFloor}
	silentRule = rule{"silent when unusable", silentWhenUnusable}
	numberRule = rule{"never without a number", neverWithoutANumber}
	fineRule   = rule{"fine range", fineHolds}
	hereRule   = rule{"here", hereHolds}
	biggerRule = rule{"bigger tyre", biggerIsAccepted}
)

var rules = []rule{limitsRule, floorRule, silentRule, numberRule, fineRule, hereRule, biggerRule}

func TestRulesHoldForAnyQuestion(t *testing.T) {
	d := newDice()
	for n := range *setups {
		in := d.any()
		a, err := pressure.Decide(in)
		if err != nil {
			t.Fatalf("set-up %d is refused: %v", n, err)
		}
		for _, r := range rules {
			if err := r.check(in, a); err != nil {
				t.Fatalf("set-up %d, %s: %v", n, r.name, err)
			}
		}
	}
}
