package air

import "rimside/calc/unit"

// Share of a pump's stroke that reaches the tyre (common practice).
const (
	// PumpWorst is of a poor pump.
	PumpWorst = 0.6
	// PumpBest is of a good pump.
	PumpBest = 0.9
)

// Strokes counts the strokes of an ideal pump that raise a volume by a pressure difference, n = V dp/(pa Vs), isothermal,
// the stroke filled with the air around. Error: ErrAltitude.
func Strokes(volume, stroke unit.CubicMetre, rise unit.Pascal, altitude unit.Metre) (float64, error) {
	pa, err := Ambient(altitude)
	if err != nil {
		return 0, err
	}
	return float64(volume) * float64(rise) / (float64(pa) * float64(stroke)), nil
}

// LikelyStrokes is the range that real pumps need for that many ideal strokes.
func LikelyStrokes(ideal float64) (least, most float64) { return ideal / PumpBest, ideal / PumpWorst }
