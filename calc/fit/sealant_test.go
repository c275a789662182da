package fit_test

import (
	"testing"

	"rimside/calc/fit"
	"rimside/calc/unit"
)

// Common practice, sources vary: road 25 to 32 mm 30 to 60 mL, gravel 35 to 50 mm 60 to 120 mL, mountain 90 to 140 mL.
func TestSealantBySize(t *testing.T) {
	for label, want := range map[float64][2]float64{25: {30, 60}, 32: {30, 60}, 35: {60, 120}, 50: {60, 120}, 57: {90, 140}} {
		least, most := fit.Sealant(unit.FromMM(label))
		within(t, "least", least.ML(), want[0], 1e-9)
		within(t, "most", most.ML(), want[1], 1e-9)
	}
}
