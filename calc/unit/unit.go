// Package unit holds the quantities that the calculations speak in: distinct types over SI units, so that a pressure
// cannot be passed where a mass is wanted. Conversion to what people read and write (kPa, bar, psi, mm, degrees C) happens
// at the edge only. Sources: the SI brochure (BIPM, 9th ed.) for SI units; psi and foot by their international definitions
// (1 lb = 0.45359237 kg, 1 in = 0.0254 m, standard gravity 9.80665 m/s2).
package unit

// Quantities, each in its SI unit.
type (
	Pascal          float64 // pressure, Pa; gauge unless a name says absolute
	Kelvin          float64 // absolute temperature, K
	Metre           float64 // length, m
	SquareMetre     float64 // area, m2
	CubicMetre      float64 // volume, m3
	Kilogram        float64 // mass, kg
	Newton          float64 // force, N
	NewtonPerMetre  float64 // stiffness, N/m
	MetrePerSecond  float64 // speed, m/s
	MetrePerSecond2 float64 // acceleration, m/s2
	Watt            float64 // power, W
	Second          float64 // time, s
)

const (
	// Gravity is standard gravity in m/s2 (ISO 80000-3; CGPM 1901).
	Gravity = 9.80665
	// ZeroCelsius is 0 degrees C in kelvin (SI brochure, 2.3.1).
	ZeroCelsius = 273.15

	pascalPerKPa = 1e3
	pascalPerBar = 1e5
	// 1 lbf/in2 = 0.45359237 kg x 9.80665 m/s2 / (0.0254 m)2.
	pascalPerPSI = 0.45359237 * Gravity / (0.0254 * 0.0254)
	// 1 lbf in = 0.45359237 kg x 9.80665 m/s2 x 0.0254 m.
	newtonMetrePerPoundInch = 0.45359237 * Gravity * 0.0254
)

// FromKPa is a pressure given in kilopascals.
func FromKPa(kpa float64) Pascal { return Pascal(kpa * pascalPerKPa) }

// FromBar is a pressure given in bar.
func FromBar(bar float64) Pascal { return Pascal(bar * pascalPerBar) }

// FromPSI is a pressure given in pounds-force per square inch.
func FromPSI(psi float64) Pascal { return Pascal(psi * pascalPerPSI) }

// KPa reads the pressure in kilopascals.
func (p Pascal) KPa() float64 { return float64(p) / pascalPerKPa }

// Bar reads the pressure in bar.
func (p Pascal) Bar() float64 { return float64(p) / pascalPerBar }

// PSI reads the pressure in pounds-force per square inch.
func (p Pascal) PSI() float64 { return float64(p) / pascalPerPSI }

// FromCelsius is a temperature given in degrees Celsius.
func FromCelsius(c float64) Kelvin { return Kelvin(c + ZeroCelsius) }

// Celsius reads the temperature in degrees Celsius.
func (t Kelvin) Celsius() float64 { return float64(t) - ZeroCelsius }

// FromMM is a length given in millimetres.
func FromMM(mm float64) Metre { return Metre(mm / 1e3) }

// MM reads the length in millimetres.
func (l Metre) MM() float64 { return float64(l) * 1e3 }

// FromML is a volume given in millilitres.
func FromML(ml float64) CubicMetre { return CubicMetre(ml / 1e6) }

// ML reads the volume in millilitres.
func (v CubicMetre) ML() float64 { return float64(v) * 1e6 }

// FromKMH is a speed given in kilometres per hour.
func FromKMH(kmh float64) MetrePerSecond { return MetrePerSecond(kmh / 3.6) }

// Weight is the force of gravity on the mass, in newtons.
func (m Kilogram) Weight() Newton { return Newton(float64(m) * Gravity) }

// PoundInch turns a torque in pound-force inches into newton metres.
func PoundInch(lbIn float64) float64 { return lbIn * newtonMetrePerPoundInch }
