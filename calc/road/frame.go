package road

import "math"

// FrameMotion is the frame's motion at the wheel per motion of the contact patch at a frequency in Hz, k D/Q at s = 2 pi i f (see
// Poles for D and Q): 1 far below the wheel's hop, falling above it.
func (w Wheel) FrameMotion(hertz float64) complex128 {
	s := complex(0, 2*math.Pi*hertz)
	k, mu, mr := complex(float64(w.Tyre), 0), complex(float64(w.Rigid), 0), complex(float64(w.Body), 0)
	link := complex(w.BodyDamper, 0)*s + complex(float64(w.BodySpring), 0)
	d := mr*s*s + link
	n := mu*mr*s*s + (mu+mr)*link
	return k * d / (k*d + s*s*n)
}
