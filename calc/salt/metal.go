package salt

import "math"

// Material is what a part of a wheel is made of; "" is not known.
type Material string

// The materials that the tables hold.
const (
	Aluminium Material = "aluminium"
	Carbon    Material = "carbon"
	Stainless Material = "stainless"
	Steel     Material = "steel"
	Brass     Material = "brass"
	Titanium  Material = "titanium"
	Magnesium Material = "magnesium"
)

// Metal is a row of the two published tables, in volts.
type Metal struct {
	Material  Material
	Index     float64 // anodic index: the greater, the sooner it gives way
	Low, High float64 // potential in flowing sea water against calomel: the lower, the sooner it gives way
	Name      string  // as a sentence names it
}

// metals: stainless is 18 % chromium, passive; steel spans mild and low-alloy; aluminium is a wrought alloy.
var metals = []Metal{
	{Aluminium, 0.90, -1.00, -0.76, "aluminium"},
	{Carbon, 0.00, 0.20, 0.30, "carbon"},
	{Stainless, 0.50, -0.10, -0.04, "stainless steel"},
	{Steel, 0.85, -0.72, -0.57, "steel"},
	{Brass, 0.40, -0.40, -0.31, "brass"},
	{Titanium, 0.30, -0.04, 0.06, "titanium"},
	{Magnesium, 1.75, -1.63, -1.60, "magnesium"},
}

// GapLimit is how far apart two metals may lie in wet or salted use, in volts (published, trade references; another chart says 0.20).
const GapLimit = 0.15

// Metals is the table.
func Metals() []Metal { return metals }

// Materials lists what a part may be made of, as keys.
func Materials() []string {
	out := make([]string, len(metals))
	for i, m := range metals {
		out[i] = string(m.Material)
	}
	return out
}

func metal(name Material) (Metal, bool) {
	for _, m := range metals {
		if m.Material == name {
			return m, true
		}
	}
	return Metal{}, false
}

// IndexGap is the distance of two materials in the anodic index, in volts. It reports false when one is unknown.
func IndexGap(a, b Material) (float64, bool) {
	first, okFirst := metal(a)
	second, okSecond := metal(b)
	return tidy(math.Abs(first.Index - second.Index)), okFirst && okSecond
}

// SeaGap is the least and greatest distance of two materials in sea water, in volts: 0 for a material with itself.
func SeaGap(a, b Material) (low, high float64, ok bool) {
	first, okFirst := metal(a)
	second, okSecond := metal(b)
	if !okFirst || !okSecond || a == b {
		return 0, 0, okFirst && okSecond
	}
	apart := math.Max(first.Low-second.High, second.Low-first.High)
	return tidy(math.Max(0, apart)), tidy(math.Max(first.High-second.Low, second.High-first.Low)), true
}

// Gap is the larger of the two: neither table is safe alone (aluminium and steel lie 0.05 V apart in the index, and posts do seize).
func Gap(a, b Material) (float64, bool) {
	index, ok := IndexGap(a, b)
	_, sea, _ := SeaGap(a, b)
	return math.Max(index, sea), ok
}

// tidy takes off what binary fractions leave behind: the tables have two places.
func tidy(volts float64) float64 { return math.Round(volts*100) / 100 }
