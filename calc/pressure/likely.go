package pressure

import (
	"rimside/calc/ride"
	"rimside/calc/unit"
)

// likely is the band of numbers when one thing that is never known well is changed at a time and all is worked out anew:
// ground twice as rough or half, or at the ends of its interval where it was measured, width, load. A change that leaves no number counts as its ceiling.
func (d *decision) likely(r *reckoned) Range {
	band := Range{r.number, r.number}
	for _, changed := range d.variants() {
		other := changed.of(r.side)
		p := other.number
		if !other.possible() {
			p = other.top.at
		}
		band.Low, band.High = min(band.Low, p), max(band.High, p)
	}
	return band
}

// variants are both wheels under each change, worked out once.
func (d *decision) variants() []reckoning {
	if d.changed != nil {
		return d.changed
	}
	same := func(m mounted) mounted { return m }
	for _, factor := range []float64{BandRoughness, 1 / BandRoughness} {
		d.vary(d.course.Likely(factor), same)
	}
	for _, sign := range []float64{1, -1} {
		d.vary(d.course, func(m mounted) mounted { return m.ofWidth(m.Section.Width + unit.Metre(sign)*m.doubt()) })
		d.vary(d.course, func(m mounted) mounted { return m.loaded(1 + sign*BandLoad) })
	}
	return d.changed
}

func (d *decision) vary(course ride.Course, change func(mounted) mounted) {
	d.changed = append(d.changed, d.in.reckon(d.front.changed(change), d.rear.changed(change), course))
}

func (c *candidate) changed(change func(mounted) mounted) *candidate {
	if c == nil {
		return nil
	}
	return &candidate{mounted: change(c.mounted), top: c.top}
}

// doubt is how far the width may be off.
func (m mounted) doubt() unit.Metre {
	if m.setup.Tyre.Measured > 0 {
		return BandMeasured
	}
	return BandPredicted
}
