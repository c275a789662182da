package air

import (
	"errors"
	"math"

	"rimside/calc/unit"
)

// Constants of carbon dioxide as a gas.
const (
	// GasConstant is the molar gas constant, J/(mol K) (CODATA 2018).
	GasConstant = 8.314463
	// CO2Molar is the mass of a mole of CO2, kg/mol: atomic weights 12.0107 and twice 15.9994.
	CO2Molar = 0.0440095
	// CO2Attraction is the van der Waals a of CO2, Pa m6/mol2 (CRC Handbook).
	CO2Attraction = 0.3658
	// CO2Volume is the van der Waals b of CO2, m3/mol (CRC Handbook).
	CO2Volume = 42.9e-6
	// CO2Warming is how much warmer the gas gets after it was let in cold, K (our choice: a tyre filled 20 K below the air).
	CO2Warming = 20.0
	// CO2HalfDays is the time in which a tyre filled with CO2 lost half its pressure, days (one report in the trade press, a
	// butyl tube).
	CO2HalfDays = 3.0
	// co2Dense is the density, kg/m3, from which no model here holds: real CO2 begins to be a liquid near 467 kg/m3, and a
	// full cartridge is denser still (our choice, a tenth of it).
	co2Dense = 47.0
)

// What can be wrong with a filling.
var (
	ErrDense  = errors.New("too_much_gas")
	ErrAmount = errors.New("no_gas")
)

// Filling is a tyre that is filled from a cartridge.
type Filling struct {
	Gas      unit.Kilogram
	Volume   unit.CubicMetre
	Standing bool // already full of air at the pressure around it; else empty
	State    State
}

// Gauge is the gauge pressure after the whole cartridge, by van der Waals: p = nRT/(V - nb) - a n2/V2, less the air around
// for a tyre that was empty. Errors: ErrAmount, ErrDense, ErrAltitude, ErrTemperature.
func (f Filling) Gauge() (unit.Pascal, error) {
	pa, err := Ambient(f.State.Altitude)
	if err != nil {
		return 0, err
	}
	if !positive(float64(f.State.Temperature)) {
		return 0, ErrTemperature
	}
	if !positive(float64(f.Gas)) || !positive(float64(f.Volume)) {
		return 0, ErrAmount
	}
	if float64(f.Gas)/float64(f.Volume) > co2Dense {
		return 0, ErrDense
	}
	p := co2Pressure(float64(f.Gas)/CO2Molar, float64(f.Volume), float64(f.State.Temperature))
	if f.Standing {
		return unit.Pascal(p), nil
	}
	return unit.Pascal(p) - pa, nil
}

// co2Pressure is van der Waals' equation, absolute Pa from mol, m3 and K.
func co2Pressure(n, v, t float64) float64 {
	return n*GasConstant*t/(v-n*CO2Volume) - CO2Attraction*n*n/(v*v)
}

// Warmed is the same filling once the gas has warmed by CO2Warming.
func (f Filling) Warmed() Filling {
	f.State.Temperature += CO2Warming
	return f
}

// GasFor is how much CO2 brings the tyre to a gauge pressure: Gauge turned round. Errors: those of Gauge; ErrDense too
// where no amount that the model knows reaches it.
func (f Filling) GasFor(p unit.Pascal) (unit.Kilogram, error) {
	low, high := 0.0, co2Dense*float64(f.Volume)
	reaches := func(kg float64) (bool, error) {
		f.Gas = unit.Kilogram(kg)
		got, err := f.Gauge()
		return got >= p, err
	}
	if enough, err := reaches(high); err != nil {
		return 0, err
	} else if !enough {
		return 0, ErrDense
	}
	for range 200 { // halving a span of 0.2 kg to the last bit takes about 60 steps
		middle := (low + high) / 2
		if middle <= low || middle >= high {
			break
		}
		if enough, err := reaches(middle); err != nil {
			return 0, err
		} else if enough {
			high = middle
		} else {
			low = middle
		}
	}
	return unit.Kilogram(high), nil
}

// CO2After is what is left of a gauge pressure of CO2 some days later, by the one report there is: half in CO2HalfDays.
func CO2After(p unit.Pascal, days float64) unit.Pascal {
	return p * unit.Pascal(math.Pow(0.5, days/CO2HalfDays))
}
