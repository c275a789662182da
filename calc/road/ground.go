package road

import "rimside/calc/unit"

// Roughness is the ISO 8608 displacement spectrum at the reference wave number 0.1 cycle/m, Gd(n0) in m3.
type Roughness float64

// ReferenceWave is n0 of ISO 8608, in cycles per metre.
const ReferenceWave = 0.1

// Kind names a ground by what the eye sees.
type Kind struct {
	Key   string
	Rough Roughness
	Speed unit.MetrePerSecond // what a rider does on it when nothing else is known
	Soft  bool                // sinks: the spectrum says nothing
}

const softKey = "soft"

var kinds = []Kind{ // our choice on the ISO 8608 classes; speeds ours
	{Key: "smooth", Rough: 64e-6, Speed: unit.FromKMH(30)},
	{Key: "patched", Rough: 128e-6, Speed: unit.FromKMH(29)},
	{Key: "chips", Rough: 192e-6, Speed: unit.FromKMH(28)},
	{Key: "setts", Rough: 1024e-6, Speed: unit.FromKMH(22)},
	{Key: "rice", Rough: 192e-6, Speed: unit.FromKMH(26)},
	{Key: "pea", Rough: 256e-6, Speed: unit.FromKMH(25)},
	{Key: "walnut", Rough: 512e-6, Speed: unit.FromKMH(22)},
	{Key: "egg", Rough: 1024e-6, Speed: unit.FromKMH(18)},
	{Key: "fist", Rough: 2048e-6, Speed: unit.FromKMH(14)},
	{Key: softKey, Speed: unit.FromKMH(12), Soft: true},
}

// Kinds lists the keys of the grounds, in the order people meet them.
func Kinds() []string {
	keys := make([]string, len(kinds))
	for i, k := range kinds {
		keys[i] = k.Key
	}
	return keys
}

// KindOf finds a ground by its key.
func KindOf(key string) (Kind, bool) {
	for _, k := range kinds {
		if k.Key == key {
			return k, true
		}
	}
	return Kind{}, false
}

// WashboardFactor is what corrugations do to the roughness (our choice).
const WashboardFactor = 2

// Washboard is the roughness of the same ground with corrugations.
func (g Roughness) Washboard() Roughness { return g * WashboardFactor }

// Stretch is a part of the day's ground. Share is its part of the distance, in any measure: only ratios count.
type Stretch struct {
	Rough Roughness
	Speed unit.MetrePerSecond
	Share float64
	Soft  bool
	Low   Roughness // ends of the interval where the roughness was measured, 0 where it was not
	High  Roughness
}

// Likely is the roughness at one end of what it may be: the measured interval's where there is one, else so many times the roughness.
func (s Stretch) Likely(factor float64) Roughness {
	switch {
	case factor > 1 && s.High > 0:
		return s.High
	case factor < 1 && s.Low > 0:
		return s.Low
	}
	return s.Rough * Roughness(factor)
}
