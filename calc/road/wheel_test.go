package road_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"rimside/calc/road"
	"rimside/calc/unit"
)

// judge is the wheel seen as a chain of impedances, integrated plainly: it shares no formula with the partial fractions.
type judge struct{ k, rigid, body, spring, damper float64 }

func (j judge) wheel() road.Wheel {
	return road.Wheel{
		Tyre: unit.NewtonPerMetre(j.k), Rigid: unit.Kilogram(j.rigid), Body: unit.Kilogram(j.body),
		BodySpring: unit.NewtonPerMetre(j.spring), BodyDamper: j.damper,
	}
}

// impedance is the force at the contact per velocity there, and the frame's acceleration per that velocity.
func (j judge) impedance(f float64) (z, frame complex128) {
	s := complex(0, 2*math.Pi*f)
	body := 1 / (1/(complex(j.body, 0)*s) + 1/(complex(j.damper, 0)+complex(j.spring, 0)/s))
	behind := complex(j.rigid, 0)*s + body
	z = 1 / (s/complex(j.k, 0) + 1/behind)
	return z, s * z / behind
}

// integrals are those of |H|^2 times Re Z, |Z|^2 and |frame|^2 over all frequencies, by Simpson's rule in ln f.
func (j judge) integrals(tau float64) (power, spread, frame float64) {
	const decades, perDecade = 12, 3000 // 1e-5 .. 1e7 Hz
	const h = math.Ln10 / perDecade
	for i := 0; i <= decades*perDecade; i++ {
		f := 1e-5 * math.Exp(h*float64(i))
		weight := h * f * float64(2+2*(i%2)) / 3
		if y := math.Pi * f * tau; y > 1e-6 {
			weight *= math.Pow(math.Sin(y)/y, 2)
		}
		z, a := j.impedance(f)
		power += weight * real(z)
		spread += weight * real(z*cmplx.Conj(z))
		frame += weight * real(a*cmplx.Conj(a))
	}
	return power, spread, frame
}

// judges range over tyres, masses, and bodies from hardly to far overdamped.
func judges() []judge {
	var all []judge
	for _, k := range []float64{20e3, 60e3, 150e3, 400e3} {
		for _, m := range [][2]float64{{1, 15}, {2, 40}, {8, 8}, {12, 110}} {
			for _, ratio := range []float64{0.1, 0.475, 3} {
				spring := m[1] * math.Pow(2*math.Pi*5, 2)
				all = append(all, judge{k, m[0], m[1], spring, 2 * ratio * math.Sqrt(spring*m[1])})
			}
		}
	}
	return all
}

// The exact partial fractions against plain quadrature, to 1e-4.
func TestPartialFractionsAgainstQuadrature(t *testing.T) {
	const g, v = road.Roughness(300e-6), unit.MetrePerSecond(7)
	sv := 4 * math.Pi * math.Pi * 300e-6 * 0.01 * 7 // ISO 8608 in its velocity form
	for i, j := range judges() {
		tau := []float64{1e-9, 0.003, 0.02, 0.15}[i%4]
		if i%12 > 5 {
			tau /= 2
		}
		p := j.wheel().Poles()
		power, spread, frame := j.integrals(tau)
		shake := p.Shake(g, v, unit.Second(tau))
		name := fmt.Sprintf("%+v tau %g: ", j, tau)
		near := func(what string, got, want float64) { t.Helper(); within(t, name+what, got, want, 1e-4*want) }
		near("force", float64(p.Force(g, unit.Second(tau))), sv*power/7)
		near("spread", float64(shake.ForceSpread), math.Sqrt(sv*spread))
		near("frame", float64(shake.Acceleration), math.Sqrt(sv*frame))
	}
}

// With a point contact the loss is pi^2 k Gd n0^2 whatever lies behind the tyre (Zuo and Zhang 2013; Turner, arXiv
// 2405.00019): 31.570 W at 150 kN/m, 256e-6 m3 and 8.33 m/s, to 0.1 %.
func TestPointContactDoesNotCareWhatIsBehind(t *testing.T) {
	for _, j := range judges() {
		for _, damper := range []float64{0.3, 1, 30} {
			j.k, j.damper = 150e3, j.damper*damper
			within(t, "power, W", 8.33*float64(j.wheel().Poles().Force(256e-6, 0)), 31.570, 0.032)
		}
	}
}

// Surviving share of the loss when the contact averages over its length; worked by quadrature for k 150 kN/m, wheel 2 kg, body
// 40 kg, 44.13 kN/m, 1485 N s/m.
func TestEnveloping(t *testing.T) {
	p := judge{150e3, 2, 40, 44.13e3, 1485}.wheel().Poles()
	point := p.Force(256e-6, 0)
	for _, c := range []struct{ mm, slow, mid, fast float64 }{
		{40, 0.843, 0.922, 0.950}, {80, 0.665, 0.804, 0.863}, {120, 0.529, 0.697, 0.776},
	} {
		for v, want := range map[float64]float64{5: c.slow, 30 / 3.6: c.mid, 40 / 3.6: c.fast} {
			within(t, fmt.Sprintf("%g mm at %.2f m/s", c.mm, v), float64(p.Force(256e-6, unit.Second(c.mm/1e3/v))/point), want, 0.00075)
		}
	}
}

// Losses grow in proportion to the roughness, shaking as its root.
func TestRoughnessScaling(t *testing.T) {
	p := judges()[7].wheel().Poles()
	within(t, "force", float64(p.Force(4e-4, 0.01)/p.Force(1e-4, 0.01)), 4, 1e-9)
	a, b := p.Shake(1e-4, 6, 0.01), p.Shake(4e-4, 6, 0.01)
	within(t, "spread", float64(b.ForceSpread/a.ForceSpread), 2, 1e-9)
	within(t, "frame", float64(b.Acceleration/a.Acceleration), 2, 1e-9)
}
