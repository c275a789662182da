package ride

import (
	"math"

	"rimside/calc/road"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// Wheel is one loaded wheel, ready to be asked what a pressure costs.
type Wheel struct {
	Section tyre.Section
	Casing  tyre.Casing
	Load    Load
}

// Course is the day's firm ground: stretches with shares that sum to 1. Soft stretches are left out, since nothing here
// describes sinking in; only their share of the distance is remembered.
type Course struct {
	stretches []road.Stretch
	speed     unit.MetrePerSecond
	soft      float64
}

// NewCourse scales the shares to 1, leaving out the soft stretches but remembering their share of the whole. Shares must
// not be negative and at least one must be above 0; Firm says whether any ground is left to compute on.
func NewCourse(stretches []road.Stretch) Course {
	var firm, all float64
	for _, s := range stretches {
		all += s.Share
		if !s.Soft {
			firm += s.Share
		}
	}
	c := Course{soft: (all - firm) / all}
	var time float64
	for _, s := range stretches {
		if !s.Soft && s.Share > 0 {
			s.Share /= firm
			time += s.Share / float64(s.Speed)
			c.stretches = append(c.stretches, s)
		}
	}
	if time > 0 {
		c.speed = unit.MetrePerSecond(1 / time) // mean speed = distance/time = 1/sum(share/v)
	}
	return c
}

// Likely is the same course at one end of what its roughness may be: what was measured at its interval's end, the rest multiplied.
func (c Course) Likely(factor float64) Course {
	out := c
	out.stretches = make([]road.Stretch, len(c.stretches))
	for i, s := range c.stretches {
		s.Rough = s.Likely(factor)
		out.stretches[i] = s
	}
	return out
}

// FirmOnly is the same course without its soft ground.
func (c Course) FirmOnly() Course {
	c.soft = 0
	return c
}

// Speed is the mean speed over the firm ground: distance over time.
func (c Course) Speed() unit.MetrePerSecond { return c.speed }

// Soft is the share of the distance on soft ground.
func (c Course) Soft() float64 { return c.soft }

// Firm says whether there is any firm ground.
func (c Course) Firm() bool { return len(c.stretches) > 0 }

// Loss is what one wheel loses at one pressure, as mean forces along the course.
type Loss struct{ Casing, Roughness unit.Newton }

// Total is both losses together.
func (l Loss) Total() unit.Newton { return l.Casing + l.Roughness }

// rolling is a wheel at one pressure: how far it squashes, its poles and its contact's length.
type rolling struct {
	fill  float64
	poles road.Poles
	patch unit.Metre
}

func (w Wheel) at(p unit.Pascal) rolling {
	shaken, patch := w.Shaken(p)
	return rolling{fill: w.Section.Fill(w.Load.Weight, p, w.Casing.Own), poles: shaken.Poles(), patch: patch}
}

// Shaken is the wheel at a pressure as the ground shakes it, and the length of its contact.
func (w Wheel) Shaken(p unit.Pascal) (shaken road.Wheel, patch unit.Metre) {
	d := unit.Metre(tyre.SquashOf(w.Section.Fill(w.Load.Weight, p, w.Casing.Own))) * w.Section.Width
	shaken = road.Wheel{Tyre: tyre.Stiffness(w.Load.Weight, d), Rigid: w.Load.Rigid, Body: w.Load.Body}
	return shaken.SeatedBody(), w.Section.PatchLength(d)
}

func (r rolling) tau(v unit.MetrePerSecond) unit.Second {
	return unit.Second(float64(r.patch) / float64(v))
}

// Loss is the mean loss of the wheel along the course: the casing's W (a + b X), and the distance-weighted mean of what the
// roughness costs.
func (c Course) Loss(w Wheel, p unit.Pascal) Loss {
	r := w.at(p)
	loss := Loss{Casing: w.Load.Weight * unit.Newton(w.Casing.Coefficient(r.fill))}
	for _, s := range c.stretches {
		loss.Roughness += unit.Newton(s.Share) * r.poles.Force(s.Rough, r.tau(s.Speed))
	}
	return loss
}

// Feelings is how a wheel rides along the course, weighted by time.
type Feelings struct {
	Squash       float64              // deflection as a share of the width
	Light        float64              // share of the time in which the wheel leaves the ground
	Acceleration unit.MetrePerSecond2 // root mean square, at the frame
	UpperBound   bool                 // the wheel is thrown about so much that losses are only an upper bound
}

// Feel works the feelings out: light is the normal tail Phi(-W/sigma) of the load's spread. Where the spread passes half
// the load the wheel leaves the ground now and then, and the linear losses are an upper bound.
func (c Course) Feel(w Wheel, p unit.Pascal) Feelings {
	r := w.at(p)
	out := Feelings{Squash: tyre.SquashOf(r.fill)}
	var square float64
	for _, s := range c.stretches {
		time := s.Share * float64(c.speed/s.Speed)
		shake := r.poles.Shake(s.Rough, s.Speed, r.tau(s.Speed))
		out.Light += time * normalTail(float64(w.Load.Weight/shake.ForceSpread))
		square += time * float64(shake.Acceleration*shake.Acceleration)
		out.UpperBound = out.UpperBound || shake.ForceSpread > w.Load.Weight/2
	}
	out.Acceleration = unit.MetrePerSecond2(math.Sqrt(square))
	return out
}

// normalTail is Phi(-x), the share of a standard normal distribution below -x.
func normalTail(x float64) float64 { return math.Erfc(x/math.Sqrt2) / 2 }
