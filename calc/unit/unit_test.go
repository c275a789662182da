package unit_test

import (
	"math"
	"testing"

	"rimside/calc/unit"
)

// near compares with an absolute tolerance.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// Published: 500 kPa = 72.52 psi and 350 lb in = 39.54 N m follow from the definitions of pound, inch and standard
// gravity (NIST SP 811, appendix B: 1 psi = 6.894757 kPa; 1 lbf in = 0.1129848 N m).
func TestPublishedConversions(t *testing.T) {
	near(t, "500 kPa in psi", unit.FromKPa(500).PSI(), 72.52, 0.01)
	near(t, "1 psi in kPa", unit.FromPSI(1).KPa(), 6.894757, 1e-6)
	near(t, "350 lb in", unit.PoundInch(350), 39.54, 0.01)
	near(t, "1 lb in", unit.PoundInch(1), 0.1129848, 1e-7)
	near(t, "1 bar in kPa", unit.FromBar(1).KPa(), 100, 1e-12)
	near(t, "0 C", float64(unit.FromCelsius(0)), 273.15, 0)
	near(t, "36 km/h", float64(unit.FromKMH(36)), 10, 1e-12)
}

func TestConversionsInvert(t *testing.T) {
	for _, x := range []float64{-40, 0, 1, 72.5, 513} {
		near(t, "kPa", unit.FromKPa(x).KPa(), x, 1e-12*math.Abs(x))
		near(t, "bar", unit.FromBar(x).Bar(), x, 1e-12*math.Abs(x))
		near(t, "psi", unit.FromPSI(x).PSI(), x, 1e-12*math.Abs(x))
		near(t, "C", unit.FromCelsius(x).Celsius(), x, 1e-10)
		near(t, "mm", unit.FromMM(x).MM(), x, 1e-12*math.Abs(x))
	}
}
