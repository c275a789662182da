package pressure

import (
	"math"

	"rimside/calc/unit"
)

// ratio is how far apart the two ends of a bike with the same tyre at both may be, front over rear.
type ratio struct{ least, most float64 }

// ratioOf is SameTyreFront at the least, and at the most 1 or the ratio of the loads; ok is false where the ends carry
// different tyres.
func ratioOf(front, rear mounted) (r ratio, ok bool) {
	if front.setup.Tyre.kind() != rear.setup.Tyre.kind() {
		return ratio{}, false
	}
	return ratio{SameTyreFront, math.Max(1, float64(front.Load.Weight/rear.Load.Weight))}, true
}

// wants keeps what both ends want inside the ratio: a front too low is raised, a front too high meets the rear half way, so
// that their geometric mean stays. It says what it did, "" for nothing.
func (r ratio) wants(front, rear unit.Pascal) (unit.Pascal, unit.Pascal, Code) {
	switch now := float64(front / rear); {
	case now < r.least:
		return rear * unit.Pascal(r.least), rear, FrontRaised
	case now > r.most:
		mean, apart := math.Sqrt(float64(front)*float64(rear)), math.Sqrt(r.most)
		return unit.Pascal(mean * apart), unit.Pascal(mean / apart), Evened
	}
	return front, rear, ""
}

// within keeps the front of two numbers inside the ratio as far as its own limits let it; the rear stays. It says what it did.
func (r ratio) within(front, rear, floor, top unit.Pascal) (unit.Pascal, Code) {
	least, most := min(rear*unit.Pascal(r.least), top), max(rear*unit.Pascal(r.most), floor)
	switch {
	case front < least*(1-ratioSlack):
		return least, FrontRaised
	case front > most*(1+ratioSlack):
		return most, Evened
	}
	return front, ""
}

// ratioSlack keeps the last bits of a ratio just made from being taken for a fault.
const ratioSlack = 1e-12
