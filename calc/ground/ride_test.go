package ground_test

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/dsp/fourier"

	"rimside/calc/ground"
	"rimside/calc/ride"
	"rimside/calc/tyre"
	"rimside/calc/unit"
)

// A simulated ride, in time: it shares no formula of the frequency domain with what it judges. The profile is laid by random phases from
// ISO 8608, the contact averages it along its own length, and the equations of motion of tyre, bike and body are integrated step by step.
type simulated struct {
	random               *rand.Rand
	gd0                  float64
	v                    float64 // m/s
	seconds, rate        float64
	machine              ground.Machine
	tyreOff, rigidOff    float64 // what the true machine is, as factors on the one that is told
	bodyOff              float64
	jitter, noise, drift float64 // s; m/s2; share of the speed
	rear                 float64 // share of the rear wheel's motion at the phone
	wheelbase            float64 // m: both wheels go over the same profile, the rear one so much later
	barHertz, barDamping float64 // 0: stiff
	pocket               bool
	pace                 func(t float64) float64 // speed as a factor; nil steady
	clipAt               float64
	quantum              float64
	liftOff              bool
}

const (
	profileStep = 0.004 // m
	profileSize = 1 << 18
)

// profile is the height every profileStep, of spectrum Gd(n) = gd0 (n/0.1)^-2.
func (s simulated) profile() []float64 {
	length := profileStep * profileSize
	lines := make([]complex128, profileSize/2+1)
	for k := 1; k < profileSize/2; k++ {
		n := float64(k) / length
		if n < 0.02 {
			continue // long hills, which no wheel feels
		}
		amplitude := math.Sqrt(2*s.gd0*math.Pow(n/0.1, -2)/length) / 2
		sin, cos := math.Sincos(2 * math.Pi * s.random.Float64())
		lines[k] = complex(amplitude*cos, amplitude*sin)
	}
	return fourier.NewFFT(profileSize).Sequence(nil, lines)
}

// under is the height under a contact of this length, by averaging along it.
func under(profile []float64, length float64) func(x float64) float64 {
	sums := make([]float64, len(profile)+1)
	for i, z := range profile {
		sums[i+1] = sums[i] + z
	}
	upTo := func(x float64) float64 {
		at := x / profileStep
		i := int(math.Floor(at))
		return sums[i] + (at-float64(i))*profile[i]
	}
	return func(x float64) float64 { return (upTo(x+length/2) - upTo(x-length/2)) * profileStep / length }
}

// cart is tyre, rigid mass and body at one wheel.
type cart struct {
	k, mu, mr, ks, c float64
	height           func(x float64) float64
	state            [4]float64 // heights and speeds of rigid mass and body, from rest
	weight           float64
	liftOff          bool
}

func (s simulated) cart(w ground.Wheel, profile []float64) *cart {
	shaken, patch := w.Shaken(w.Pressure)
	mr := float64(shaken.Body) * s.bodyOff
	c := &cart{k: float64(shaken.Tyre) * s.tyreOff, mu: float64(shaken.Rigid) * s.rigidOff, mr: mr,
		ks: mr * math.Pow(2*math.Pi*5, 2), c: 2 * 0.475 * mr * 2 * math.Pi * 5, height: under(profile, float64(patch))}
	c.weight, c.liftOff = float64(w.Load.Weight), s.liftOff
	return c
}

func (c *cart) slope(y [4]float64, z float64) [4]float64 {
	link := c.ks*(y[1]-y[0]) + c.c*(y[3]-y[2])
	push := c.k * (z - y[0])
	if c.liftOff {
		push = max(push, -c.weight)
	}
	return [4]float64{y[2], y[3], (push + link) / c.mu, -link / c.mr}
}

// roll takes one step of Runge and Kutta's fourth order and gives the rigid mass's acceleration at its end.
func (c *cart) roll(x, v, dt float64) float64 {
	z0, z1, z2 := c.height(x), c.height(x+v*dt/2), c.height(x+v*dt)
	add := func(a, b [4]float64, h float64) [4]float64 {
		for i := range a {
			a[i] += h * b[i]
		}
		return a
	}
	y := c.state
	k1 := c.slope(y, z0)
	k2 := c.slope(add(y, k1, dt/2), z1)
	k3 := c.slope(add(y, k2, dt/2), z1)
	k4 := c.slope(add(y, k3, dt), z2)
	for i := range y {
		y[i] += dt / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
	}
	c.state = y
	return c.slope(y, z2)[2]
}

// ride is what the phone felt, and the speeds it read.
func (s simulated) ride() ground.Record {
	profile := s.profile()
	front, rear := s.cart(s.machine.Front, profile), s.cart(s.machine.Rear, profile)
	const dt, settle = 0.0005, 3.0
	up, wild := s.mounting(), s.random.Float64()*2*math.Pi
	bend := oscillator{hertz: s.barHertz, damping: s.barDamping}
	soft := oscillator{hertz: 4, damping: 0.4} // a pocket: the phone on flesh
	var out ground.Record
	x, next := s.wheelbase+1, settle
	var before float64
	for t := 0.0; t < s.seconds+settle; t += dt {
		v := s.v * (1 + s.drift*math.Sin(2*math.Pi*t/17+wild))
		if s.pace != nil {
			v *= s.pace(t - settle)
		}
		a := (1 - s.rear) * front.roll(x, v, dt)
		if s.rear > 0 {
			a += s.rear * rear.roll(x-s.wheelbase, v, dt)
		}
		if s.barHertz > 0 {
			a = bend.through(a, dt)
		}
		if s.pocket {
			a = soft.through(a, dt)
		}
		for next <= t+dt {
			at := next + s.jitter*(2*s.random.Float64()-1)
			now := before + (a-before)*min(1, max(0, (at-t)/dt))
			out.Samples = append(out.Samples, s.felt(at-settle, now, up))
			next += 1 / s.rate
		}
		if int(t) != int(t+dt) && t > settle {
			out.Speeds = append(out.Speeds, ground.Speed{At: unit.Second(t - settle), V: unit.MetrePerSecond(v * (1 + 0.02*s.random.NormFloat64()))})
		}
		before = a
		x += v * dt
	}
	return out
}

// mounting is how the phone is turned: the direction of up along its axes.
func (s simulated) mounting() [3]float64 {
	var up [3]float64
	n := 0.0
	for i := range up {
		up[i] = s.random.NormFloat64()
		n += up[i] * up[i]
	}
	for i := range up {
		up[i] /= math.Sqrt(n)
	}
	return up
}

func (s simulated) felt(at, upright float64, up [3]float64) ground.Sample {
	out := ground.Sample{At: unit.Second(at)}
	for i := range up {
		a := up[i]*(9.81+upright) + s.noise*s.random.NormFloat64()
		if s.quantum > 0 {
			a = math.Round(a/s.quantum) * s.quantum
		}
		if s.clipAt > 0 {
			a = max(-s.clipAt, min(s.clipAt, a))
		}
		out.Felt[i] = a
	}
	return out
}

// oscillator is a mass on a damped spring, by its base's acceleration.
type oscillator struct{ hertz, damping, x, v float64 }

func (o *oscillator) through(base, dt float64) float64 {
	w := 2 * math.Pi * o.hertz
	a := -base - 2*o.damping*w*o.v - w*w*o.x
	o.v += a * dt
	o.x += o.v * dt
	return base + a
}

// machines are three bikes with their riders.
func machines() []ground.Machine {
	one := func(rider, bike, front, width, bead, kpaFront, kpaRear float64, side tyre.Sidewall) ground.Machine {
		end := func(share, kpa float64) ground.Wheel {
			casing, _ := tyre.CasingOf(side)
			all := unit.Kilogram(rider + bike)
			return ground.Wheel{Wheel: ride.Wheel{
				Section: tyre.Mounted(unit.FromMM(bead), unit.FromMM(width)), Casing: casing,
				Load: ride.LoadOf(all*unit.Kilogram(share), unit.Kilogram(rider), unit.Kilogram(bike)),
			}, Pressure: unit.FromKPa(kpa)}
		}
		return ground.Machine{Front: end(front, kpaFront), Rear: end(1-front, kpaRear), Mount: ground.OnBar}
	}
	return []ground.Machine{
		one(72, 9, 0.42, 28, 622, 450, 500, tyre.Cloth),
		one(65, 11, 0.44, 41, 622, 220, 240, tyre.Glove),
		one(85, 13, 0.45, 57, 584, 120, 135, tyre.Hose),
	}
}
