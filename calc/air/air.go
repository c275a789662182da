// Package air is the air around and inside a tyre: the standard atmosphere, the gas law of a closed tyre, its slow leak,
// and the strokes of a pump.
//
// Sources: ISO 2533:1975 (standard atmosphere, troposphere); the ideal gas law at constant volume.
package air

import (
	"errors"
	"math"

	"rimside/calc/unit"
)

// Constants of the standard atmosphere, ISO 2533.
const (
	// SeaLevelPressure is the air's absolute pressure at sea level, Pa.
	SeaLevelPressure = 101325.0
	// LapseRate is how fast the air cools with altitude, K/m.
	LapseRate = 0.0065
	// SeaLevelKelvin is the air's temperature at sea level, K.
	SeaLevelKelvin = 288.15
	// PressureExponent is g/(R L) with g 9.80665, R 287.053 J/(kg K).
	PressureExponent = 5.25588

	tropopause = 11000.0 // m, where the formula ends
)

// What can be wrong with a state of the air.
var (
	ErrAltitude    = errors.New("altitude_out_of_range")
	ErrTemperature = errors.New("temperature_below_zero")
	ErrVacuum      = errors.New("below_vacuum")
)

// State is where and how warm a tyre is.
type State struct {
	Temperature unit.Kelvin
	Altitude    unit.Metre
}

// Ambient is the absolute pressure of the standard atmosphere at an altitude above sea level (not the day's weather,
// which moves it by about 3 kPa): p = 101325 (1 - 0.0065 H/288.15)^5.25588 Pa, ISO 2533. Error: ErrAltitude.
func Ambient(altitude unit.Metre) (unit.Pascal, error) {
	h := float64(altitude)
	if !(h >= -5000 && h <= tropopause) {
		return 0, ErrAltitude
	}
	return unit.Pascal(SeaLevelPressure * math.Pow(1-LapseRate*h/SeaLevelKelvin, PressureExponent)), nil
}

// Carry takes a gauge pressure of a closed tyre from one state to another at constant volume:
// p2 = (p1 + pa1) T2/T1 - pa2. The result may be below zero: the tyre would be flat. Errors: ErrAltitude,
// ErrTemperature, ErrVacuum (a pressure that cannot exist, NaN included).
func Carry(p unit.Pascal, from, to State) (unit.Pascal, error) {
	paFrom, err := Ambient(from.Altitude)
	if err != nil {
		return 0, err
	}
	paTo, err := Ambient(to.Altitude)
	if err != nil {
		return 0, err
	}
	if !positive(float64(from.Temperature)) || !positive(float64(to.Temperature)) {
		return 0, ErrTemperature
	}
	if !positive(float64(p + paFrom)) {
		return 0, ErrVacuum
	}
	return unit.Pascal(float64(p+paFrom)*float64(to.Temperature/from.Temperature)) - paTo, nil
}

// positive is false for NaN and infinities too.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 1) }
