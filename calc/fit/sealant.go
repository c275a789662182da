package fit

import "rimside/calc/unit"

// Sealant is how much sealant a tyre of that printed width takes, least and most (common practice, sources vary): road to 32 mm,
// gravel to 50 mm, mountain above. What is on the bottle wins.
func Sealant(label unit.Metre) (least, most unit.CubicMetre) {
	switch mm := label.MM(); {
	case mm <= 32:
		return unit.FromML(30), unit.FromML(60)
	case mm <= 50:
		return unit.FromML(60), unit.FromML(120)
	}
	return unit.FromML(90), unit.FromML(140)
}
