package pressure_test

import (
	"math"
	"testing"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// FuzzDecide throws any numbers at the decision itself, past every table of bounds: an error or finite numbers, never a panic.
func FuzzDecide(f *testing.F) {
	f.Add(72.0, 11.0, 0.42, 40.0, 41.5, 25.0, 500.0, 500.0, 256e-6, 7.0, 0.5, 20.0, 0.0, 5.0, 1100.0, 30.0, 7.0, 0.0, uint16(0))
	f.Add(1e-200, 1e-200, 0.5, 1e-3, 0.0, 1e-3, 0.0, 0.0, 1e-300, 1e-300, 1e-300, -273.0, 11000.0, 1e9, -5000.0, 0.0, 1e300, 700.0, uint16(0xffff))
	f.Add(1e300, 1e300, 1e-300, 1e300, 1e300, 1.0, 1e-300, 1e300, 1e300, 1e300, 1e300, 1e300, 0.0, 20.0, 0.0, 1e-9, 0.0, -700.0, uint16(0x155))
	f.Add(72.0, 11.0, 0.42, 1.0, 0.1, 0.5, 1e9, 1e9, 256e-6, 7.0, 0.5, 20.0, 0.0, 5.0, 1100.0, 30.0, 7.0, 0.0, uint16(0x2a))
	f.Fuzz(func(t *testing.T, rider, bike, share, label, measured, inner, tyreMax, rimMax, rough, speed, part, setC, setM, rideC, rideM, warm, gauge, shift float64, flags uint16) {
		pick := func(bit uint, keys []string) string { return keys[int(flags>>bit)%len(keys)] }
		wheel := pressure.WheelSetup{
			Tyre: pressure.Tyre{
				Label: unit.FromMM(label), Measured: unit.FromMM(measured), Max: unit.FromKPa(tyreMax), ForHookless: flags&1 == 0,
				Sidewall: tyre.Sidewall(pick(1, tyre.Sidewalls())), Setup: pressure.Setup(pick(3, pressure.Setups())),
			},
			Rim: pressure.Rim{BeadSeat: unit.FromMM(622), Inner: unit.FromMM(inner), Profile: tyre.Profile(pick(5, tyre.Profiles())), Max: unit.FromKPa(rimMax)},
		}
		if flags&0x80 != 0 {
			wheel.Tyre.Test = &tyre.RollingTest{Coefficient: share / 100, Pressure: unit.FromKPa(warm), Load: unit.Newton(rider)}
		}
		in := pressure.Input{
			Rider: unit.Kilogram(rider), Bike: unit.Kilogram(bike), FrontShare: share, Front: wheel, Rear: wheel,
			Ground: []road.Stretch{
				{Rough: road.Roughness(rough), Speed: unit.MetrePerSecond(speed), Share: part},
				{Rough: road.Roughness(rough), Speed: unit.MetrePerSecond(speed), Share: 1, Soft: flags&0x100 != 0},
			},
			Set: air.State{Temperature: unit.FromCelsius(setC), Altitude: unit.Metre(setM)}, Ride: air.State{Temperature: unit.FromCelsius(rideC), Altitude: unit.Metre(rideM)},
			GaugeError: unit.FromKPa(gauge), Firmness: int(flags>>9)%5 - 2, Shift: pressure.PerWheel{Front: shift, Rear: -shift},
		}
		if flags&0x200 != 0 {
			w, reading := unit.FromCelsius(warm), unit.FromKPa(gauge)
			in.Here = pressure.HereRide
			in.Warmest, in.Now = &w, pressure.Readings{Front: &reading, Rear: &reading, Stroke: unit.CubicMetre(part)}
		}
		a, err := pressure.Decide(in)
		if err != nil {
			if n := numbersOf(a); n[".Front.Load"] != 0 {
				t.Errorf("an error with an answer: %v", n)
			}
			return
		}
		for path, x := range numbersOf(a) {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%s is %v", path, x)
			}
		}
		for _, side := range pressure.Sides {
			w := a.Wheel(side)
			if w.Advice == nil {
				continue
			}
			if w.Advice.Recommended > w.Figures.Ceiling || w.Advice.Recommended < w.Figures.Floor {
				t.Errorf("%s %v is outside its floor %v and ceiling %v", side, w.Advice.Recommended, w.Figures.Floor, w.Figures.Ceiling)
			}
			if good := w.Advice.Good; good != nil && !(good.Low <= w.Advice.Recommended && w.Advice.Recommended <= good.High) {
				t.Errorf("%s %v is outside its fine range %v", side, w.Advice.Recommended, *good)
			}
		}
	})
}
