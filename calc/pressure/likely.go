package pressure

import (
	"rimside/calc/ride"
	"rimside/calc/unit"
)

// likely is the band of recommendations when one thing that is never known well is changed at a time and custom and the
// computed best are solved anew: ground twice as rough or half, width, load. Floor and ceiling stay.
func (d *decision) likely(side Side, recommended, top unit.Pascal) Range {
	band := Range{recommended, recommended}
	if d.asked[side].best == nil {
		return band
	}
	floor := d.answer.Wheel(side).Figures.Floor
	for _, wants := range d.variants() {
		p := min(max(wants[side], floor), top)
		band.Low, band.High = min(band.Low, p), max(band.High, p)
	}
	return band
}

// variants are the wants of both wheels under each change, worked out once.
func (d *decision) variants() []map[Side]unit.Pascal {
	if d.changed != nil {
		return d.changed
	}
	same := func(m mounted) mounted { return m }
	for _, factor := range []float64{BandRoughness, 1 / BandRoughness} {
		d.vary(d.course.Rougher(factor), same)
	}
	for _, sign := range []float64{1, -1} {
		d.vary(d.course, func(m mounted) mounted { return m.widened(unit.Metre(sign) * m.doubt()) })
		d.vary(d.course, func(m mounted) mounted { return m.loaded(1 + sign*BandLoad) })
	}
	return d.changed
}

func (d *decision) vary(course ride.Course, change func(mounted) mounted) {
	each := d.askEach(course, change)
	if each[Front] != nil && each[Rear] != nil {
		balance(d.in, each[Front], each[Rear])
	}
	wants := map[Side]unit.Pascal{}
	for side, a := range each {
		wants[side] = a.want
	}
	d.changed = append(d.changed, wants)
}

// doubt is how far the width may be off.
func (m mounted) doubt() unit.Metre {
	if m.setup.Tyre.Measured > 0 {
		return BandMeasured
	}
	return BandPredicted
}
