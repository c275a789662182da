package road

import (
	"math"

	"rimside/calc/unit"
)

// The seated body: 5.0 Hz undamped, damping ratio 0.475 (Fairley and Griffin 1989).
const (
	// BodyHertz is the body's undamped frequency, Hz.
	BodyHertz = 5.0
	// BodyDamping is its damping ratio.
	BodyDamping = 0.475
)

// Wheel is what the ground shakes: the tyre's spring, then the rigid mass that moves with the wheel, then the body's mass
// on its own spring and damper. BodySpring and BodyDamper come from SeatedBody.
type Wheel struct {
	Tyre        unit.NewtonPerMetre
	Rigid, Body unit.Kilogram
	BodySpring  unit.NewtonPerMetre
	BodyDamper  float64 // N s/m
}

// SeatedBody fills the body's spring k_s = m (2 pi 5)^2 and damper c = 2 0.475 m 2 pi 5.
func (w Wheel) SeatedBody() Wheel {
	omega := 2 * math.Pi * BodyHertz
	w.BodySpring = unit.NewtonPerMetre(float64(w.Body) * omega * omega)
	w.BodyDamper = 2 * BodyDamping * float64(w.Body) * omega
	return w
}

// Poles is a Wheel ready to be rolled over any ground: the poles of its driving-point impedance Z(s) = k s N/Q at the
// contact, with D = m_r s^2 + c s + k_s, N = m_u m_r s^2 + (m_u + m_r)(c s + k_s), Q = k D + s^2 N, and the residues there of
// Z and of the frame's motion A(s) = k s D/Q.
type Poles struct {
	at        [4]complex128
	impedance [4]complex128 // residues of Z: k s N(s)/Q'(s)
	frame     [4]complex128 // residues of A: k s D(s)/Q'(s)
}

// Two poles nearer than tooNear, relative to their size, are parted by stiffening the tyre by nudge: residues run away from
// each other as poles meet, and their sum would lose its digits. The nudge changes the answer by about a millionth.
const (
	tooNear = 1e-4
	nudge   = 1 + 1e-6
)

// Poles splits the wheel into partial fractions.
func (w Wheel) Poles() Poles {
	p, parted := w.split()
	if !parted {
		w.Tyre *= nudge
		p, _ = w.split()
	}
	return p
}

// split finds poles and residues; parted is false where two poles all but meet.
func (w Wheel) split() (p Poles, parted bool) {
	k, mu, mr := float64(w.Tyre), float64(w.Rigid), float64(w.Body)
	ks, c := float64(w.BodySpring), w.BodyDamper
	roots := quarticRoots([5]float64{k * ks, k * c, (mu+mr)*ks + k*mr, (mu + mr) * c, mu * mr})
	p, parted = Poles{at: roots}, true
	for i, s := range roots {
		slope := complex(mu*mr, 0)
		for j, other := range roots {
			if j != i {
				slope *= s - other
				parted = parted && magnitude(s-other) > tooNear*magnitude(s)
			}
		}
		d := complex(mr, 0)*s*s + complex(c, 0)*s + complex(ks, 0)
		n := complex(mu*mr, 0)*s*s + complex(mu+mr, 0)*(complex(c, 0)*s+complex(ks, 0))
		p.impedance[i] = complex(k, 0) * s * n / slope
		p.frame[i] = complex(k, 0) * s * d / slope
	}
	return p, parted
}

// Force is the mean force that a rough ground costs, with the contact patch averaging over the time tau it takes to roll
// its own length: F = 2 pi^2 Gd n0^2 Re sum r_i E(s_i tau).
func (p Poles) Force(g Roughness, tau unit.Second) unit.Newton {
	var sum float64
	for i, s := range p.at {
		sum += real(p.impedance[i] * averaged(s*complex(float64(tau), 0)))
	}
	return unit.Newton(2 * math.Pi * math.Pi * float64(g) * ReferenceWave * ReferenceWave * sum)
}

// Shaking is what the ground does to a wheel at one speed.
type Shaking struct {
	ForceSpread  unit.Newton          // standard deviation of the load on the ground
	Acceleration unit.MetrePerSecond2 // root mean square, at the frame's end
}

// Shake gives the spread of the wheel's load, sigma^2 = Sv Re sum r_j Z(-s_j) E(s_j tau) with Z(-s_j) = -sum r_i/(s_i + s_j),
// and the frame's acceleration likewise from A.
func (p Poles) Shake(g Roughness, v unit.MetrePerSecond, tau unit.Second) Shaking {
	sv := g.VelocitySpectrum(v)
	return Shaking{
		ForceSpread:  unit.Newton(math.Sqrt(math.Max(0, sv*p.power(p.impedance, tau)))),
		Acceleration: unit.MetrePerSecond2(math.Sqrt(math.Max(0, sv*p.power(p.frame, tau)))),
	}
}

// power is the integral of |sum r_i/(s - s_i)|^2 |H|^2 over all positive frequencies, by residues.
func (p Poles) power(residues [4]complex128, tau unit.Second) float64 {
	var sum float64
	for j, s := range p.at {
		var mirror complex128
		for i, other := range p.at {
			mirror -= residues[i] / (other + s)
		}
		sum += real(residues[j] * mirror * averaged(s*complex(float64(tau), 0)))
	}
	return sum
}
