package air_test

import (
	"testing"

	"rimside/calc/air"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

func strokes(t *testing.T, ml, metres float64) float64 {
	t.Helper()
	n, err := air.Strokes(tyre.Volume(unit.FromMM(622), unit.FromMM(40)), unit.FromML(ml), unit.FromKPa(250), unit.Metre(metres))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// n = V dp/(pa Vs), worked by hand for a 40-622 to 250 kPa: 2.613 L x 250 / (101.325 x 0.05).
func TestStrokes(t *testing.T) {
	within(t, "50 ml", strokes(t, 50, 0), 128.96, 0.05)
	within(t, "300 ml", strokes(t, 300, 0), 21.5, 0.05)
	// Thinner air: 101325/79495 (ISO 2533).
	within(t, "factor at 2000 m", strokes(t, 50, 2000)/strokes(t, 50, 0), 1.2746, 0.0005)
	least, most := air.LikelyStrokes(90)
	within(t, "least at 90 %", least, 100, 1e-9) // real pumps 0.6 to 0.9: common practice, no source
	within(t, "most at 60 %", most, 150, 1e-9)
	if _, err := air.Strokes(1, 1, 1, 20000); err == nil {
		t.Error("strokes above the troposphere need an error")
	}
}
