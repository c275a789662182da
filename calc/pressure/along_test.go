package pressure_test

import (
	"testing"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/unit"
)

// On the highest point the gauge shows more: the limit binds there, at the standard lapse unless a temperature is typed. The numbers
// follow from the gas law and ISO 2533 alone: what is allowed at the ride is the mark carried down from the pass.
func TestLimitBindsAlongTheCourse(t *testing.T) {
	in := inputOf(setupOf(40, "glove", "tubeless"))
	in.Ground = append(in.Ground, stretchOf("pea", 25, 1))
	in.Ride = air.State{Temperature: unit.FromCelsius(20), Altitude: 500}
	in.Set = in.Ride
	for i := range 2 {
		w := []*pressure.WheelSetup{&in.Front, &in.Rear}[i]
		w.Tyre.Max, w.Rim.Max = unit.FromKPa(230), unit.FromKPa(500)
	}
	for _, typed := range []unit.Kelvin{0, unit.FromCelsius(25)} {
		in.Along = []air.State{{Temperature: typed, Altitude: 2500}}
		pass := air.State{Temperature: unit.FromCelsius(20 - 13), Altitude: 2500}
		if typed > 0 {
			pass.Temperature = typed
		}
		want, err := air.Carry(unit.FromKPa(230), pass, in.Ride)
		if err != nil {
			t.Fatal(err)
		}
		a, err := pressure.Decide(in)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "ceiling at the ride, kPa", a.Front.Figures.Ceiling.KPa(), want.KPa(), 1e-9)
	}
}
