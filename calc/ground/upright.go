package ground

import "math"

type vector [3]float64

func (a vector) dot(b vector) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

func (a vector) length() float64 { return math.Sqrt(a.dot(a)) }

func (a vector) plus(b vector, times float64) vector {
	return vector{a[0] + times*b[0], a[1] + times*b[1], a[2] + times*b[2]}
}

func (a vector) times(by float64) vector { return vector{}.plus(a, by) }

func (a vector) unit() vector {
	if n := a.length(); n > 0 {
		return vector{a[0] / n, a[1] / n, a[2] / n}
	}
	return a
}

// How a phone that is held fast behaves (our choice).
const (
	gravityLeast, gravityMost = 8.0, 12.0 // m/s2: what the samples' mean must be, whatever the phone's error
	turnMost                  = 0.35      // rad between one stretch's gravity and the whole record's: a phone that is held does not turn
	turnShare                 = 0.15      // of the stretches that may
	uprightLeast              = 0.4       // of the shaking along gravity: a wheel shakes the frame up and down
	againstMost               = 0.8       // rad between gravity and the principal axis of the shaking, where one stands out
	gravityDoubt              = 1.0       // m/s2: a mean that is less sure does not show where gravity points
	standsOut                 = 2.0       // the principal axis's power over what lies across it
)

// upOf is the direction against which gravity pulls, which a resting accelerometer shows.
func upOf(samples []Sample) vector {
	var sum vector
	for _, s := range samples {
		sum = sum.plus(s.Felt, 1/float64(len(samples)))
	}
	return sum
}

// upright is the direction in which the wheel shakes the frame, and whether the phone was held fast: gravity pulls against it, and the
// principal axis of the shaking lies along it. Where the shaking is so strong that the mean hardly shows gravity, the axis is taken
// itself. The differences of neighbouring samples leave out gravity and what turns slowly.
func upright(samples []Sample) (up vector, held bool) {
	mean := upOf(samples)
	gravity, up := mean.length(), mean.unit()
	c := spreadOf(samples)
	all := c[0][0] + c[1][1] + c[2][2]
	doubt := 5 * math.Sqrt(all/2/float64(len(samples))) // five deviations of the mean of independent samples: half the differences' power
	if !(all > 0) || gravity < gravityLeast-doubt || gravity > gravityMost+doubt {
		return up, false
	}
	axis, strongest := c.principal(up)
	if strongest > standsOut*(all-strongest) {
		if math.Abs(axis.dot(up)) < math.Cos(againstMost) {
			return up, false
		}
		if doubt > gravityDoubt {
			up = axis.times(math.Copysign(1, axis.dot(up)))
		}
	}
	return up, up.dot(c.apply(up)) >= uprightLeast*all
}

// spread is the mean of the products of what two axes felt.
type spread [3]vector

func spreadOf(samples []Sample) (c spread) {
	for i := 1; i < len(samples); i++ {
		step := samples[i].Felt.plus(samples[i-1].Felt, -1)
		for k := range c {
			c[k] = c[k].plus(step, step[k]/float64(len(samples)))
		}
	}
	return c
}

func (c spread) apply(a vector) vector { return vector{c[0].dot(a), c[1].dot(a), c[2].dot(a)} }

// principal is the direction of the greatest power, and that power, by the power method from a first guess on.
func (c spread) principal(guess vector) (axis vector, power float64) {
	axis = guess
	for range 50 {
		axis = c.apply(axis).unit()
	}
	return axis, axis.dot(c.apply(axis))
}
