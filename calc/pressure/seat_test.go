package pressure_test

import (
	"errors"
	"math"
	"testing"

	"rimside/calc/pressure"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// The gate of fitting is the gate of the pressure: what has no number may not be fitted, and the pressure that seating never passes is
// the limit of the model, where the air does not change. One exception is stricter: a tyre that was not made tubeless.
func TestSeatingHasTheLimitsOfThePressure(t *testing.T) {
	d := newDice()
	refused, computed := 0, 0
	for range *setups {
		in := d.any()
		in.Ride, in.Warmest = in.Set, nil
		answer, err := pressure.Decide(in)
		if err != nil {
			t.Fatal(err)
		}
		seat, err := pressure.SeatOf(in.Front, true, in.GaugeError)
		if err != nil {
			t.Fatal(err)
		}
		if (seat.Refused != "") != unusable(in.Front) {
			t.Fatalf("seat %+v of %+v", seat, in.Front)
		}
		figures := answer.Front.Figures
		if seat.Refused == "" && figures == nil {
			continue // the weather leaves it no number
		}
		if figures == nil {
			refused++
			if seat.Ceiling != 0 || !told(answer, pressure.Front, seat.Refused, pressure.Stop) {
				t.Fatalf("%+v, and the pressure says %+v", seat, answer.Notices)
			}
			continue
		}
		computed++
		within(t, "ceiling, kPa", seat.Ceiling.KPa(), figures.Ceiling.KPa(), 1e-6)
		if seat.Gauge > seat.Ceiling || seat.Gauge-in.GaugeError > seat.Ceiling+unit.FromKPa(hair) {
			t.Fatalf("a gauge that reads %v kPa off may show %v, the ceiling is %v", in.GaugeError.KPa(), seat.Gauge.KPa(), seat.Ceiling.KPa())
		}
		within(t, "lowest maximum, kPa", seat.Ceiling.KPa(), lowestMax(in.Front), 1e-9)
		for _, care := range seat.Cares {
			if !told(answer, pressure.Front, care, pressure.Care) {
				t.Fatalf("%s is not told with the pressure: %+v", care, answer.Notices)
			}
		}
		converted, err := pressure.SeatOf(in.Front, false, 0)
		if err != nil {
			t.Fatal(err)
		}
		most := seat.Ceiling
		if in.Front.Tyre.Setup != pressure.Tube && !in.Front.Tyre.ForHookless {
			most = min(most, pressure.ConvertedCap)
		}
		within(t, "not made tubeless, kPa", converted.Ceiling.KPa(), most.KPa(), 1e-9)
	}
	if refused < 10 || computed < 100 {
		t.Errorf("%d refused, %d computed: the draw tests little", refused, computed)
	}
}

func TestSeatOfWhatCannotBe(t *testing.T) {
	if _, err := pressure.SeatOf(pressure.WheelSetup{}, true, 0); !errors.Is(err, pressure.ErrInput) {
		t.Errorf("nothing known: %v", err)
	}
	w := pressure.WheelSetup{
		Tyre: pressure.Tyre{Label: unit.FromMM(40), Max: unit.Pascal(math.NaN())},
		Rim:  pressure.Rim{BeadSeat: unit.FromMM(622), Inner: unit.FromMM(25), Profile: tyre.Hooked},
	}
	if _, err := pressure.SeatOf(w, true, 0); !errors.Is(err, pressure.ErrInput) {
		t.Errorf("no number: %v", err)
	}
}
