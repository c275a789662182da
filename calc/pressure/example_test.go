package pressure_test

import (
	"fmt"

	"rimside/calc/air"
	"rimside/calc/pressure"
	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// A rider of 72 kg on 40 mm tubeless tyres, on gravel with stones like peas.
func ExampleDecide() {
	wheel := pressure.WheelSetup{
		Tyre: pressure.Tyre{Label: unit.FromMM(40), Sidewall: tyre.Glove, Setup: pressure.Tubeless, Max: unit.FromKPa(400)},
		Rim:  pressure.Rim{BeadSeat: unit.FromMM(622), Inner: unit.FromMM(23), Profile: tyre.Hooked, Max: unit.FromKPa(450)},
	}
	pea, _ := road.KindOf("pea")
	mild := air.State{Temperature: unit.FromCelsius(20)}
	answer, err := pressure.Decide(pressure.Input{
		Rider: 72, Bike: 11, FrontShare: 0.42, Front: wheel, Rear: wheel,
		Ground: []road.Stretch{{Rough: pea.Rough, Speed: pea.Speed, Share: 1}}, Set: mild, Ride: mild,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, side := range pressure.Sides {
		advice := answer.Wheel(side).Advice
		fmt.Printf("%s %.2f bar, fine from %.2f to %.2f\n", side, advice.Gauge.Bar(), advice.Good.Low.Bar(), advice.Good.High.Bar())
	}
	// Output:
	// front 2.27 bar, fine from 1.94 to 2.80
	// rear 2.47 bar, fine from 2.11 to 3.09
}

// Two rides on what was recommended: one found a bit harsh, one right.
func ExampleLearn() {
	tyre := pressure.Kind{Label: unit.FromMM(40), Sidewall: tyre.Glove, Setup: pressure.Tubeless}
	p0 := unit.FromKPa(226)
	learnt := pressure.Learn([]pressure.RideNote{
		{Ride: "spring", Side: pressure.Front, Tyre: &tyre, Ridden: p0, P0: p0, Felt: pressure.FeltHard},
		{Ride: "summer", Side: pressure.Front, Tyre: &tyre, Ridden: p0, P0: p0, Felt: pressure.FeltRight},
	}, pressure.Front, tyre)
	fmt.Printf("%.4f from %d notes\n", learnt.Shift, learnt.Notes)
	// Output: -0.0167 from 2 notes
}
