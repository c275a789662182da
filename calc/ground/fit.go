package ground

import "math"

// How far the machine may be from what was said, as logarithms: the spread that is believed, and the steps that are tried in it (our
// choice: masses are known to a quarter, a tyre's stiffness to a seventh).
const (
	TyreDoubt  = 0.10
	MassDoubt  = 0.16
	tried      = 5    // values of each, to twice the doubt either way
	LineDoubt  = 0.10 // how far one frequency may be off by itself: the model's own roughness
	Stray      = 2.5  // deviations from which a frequency counts no more than in proportion (Huber 1964; our choice of the border)
	lineWidth  = 1.5  // frequencies that one window's Hann lobe ties together
	ModelDoubt = 0.06 // what no shape shows: the contact's length, the waviness
)

// fitted is the roughness as a logarithm, with its spread, and how badly the best shape fits.
type fitted struct{ mean, spread, misfit float64 }

// fit weighs every freedom by how well its shape lies on the measured one.
func fit(s spectrum, p predictor) fitted {
	measured := make([]float64, len(s.power))
	for i, power := range s.power {
		measured[i] = math.Log(power)
	}
	// Half-overlapping Hann windows are worth about 0.95 of as many apart (Welch 1967: their correlation is 1/36).
	line := math.Sqrt(1/(0.95*float64(s.windows)) + LineDoubt*LineDoubt)
	best, weight, sum, square := math.Inf(1), 0.0, 0.0, 0.0
	var out fitted
	each(p, func(shape []float64, cost float64) {
		level, loss, misfit := lay(measured, shape, line)
		cost += loss / lineWidth
		if cost < best { // what came before is worth less by as much
			shrink := math.Exp(cost - best)
			weight, sum, square = weight*shrink, sum*shrink, square*shrink
			best, out.misfit = cost, misfit
		}
		share := math.Exp(best - cost)
		weight, sum, square = weight+share, sum+share*level, square+share*level*level
	})
	out.mean = sum / weight
	lines := line * math.Sqrt(lineWidth/float64(len(measured)))
	out.spread = math.Sqrt(max(0, square/weight-out.mean*out.mean) + lines*lines + ModelDoubt*ModelDoubt)
	return out
}

// each goes through what the machine may be, with what it costs to believe it.
func each(p predictor, take func(shape []float64, cost float64)) {
	steps := func(doubt float64, i int) (factor, cost float64) {
		d := 4*float64(i)/(tried-1) - 2 // deviations
		return math.Exp(d * doubt), d * d / 2
	}
	places := p.places()
	for i := range tried {
		for j := range tried {
			for k := range tried {
				var f freedom
				var a, b, c float64
				f.tyre, a = steps(TyreDoubt, i)
				f.rigid, b = steps(MassDoubt, j)
				f.body, c = steps(MassDoubt, k)
				front, rear := p.motions(p.machine.Front, f), p.motions(p.machine.Rear, f)
				places.each(p, front, rear, func(shape []float64, cost float64) { take(shape, a+b+c+cost) })
			}
		}
	}
}

// places are what the phone may make of the motion where it sits.
type places struct {
	shares []float64        // of the rear wheel's motion
	late   [][][]complex128 // for each wheelbase tried
	bends  [][][]float64    // for each bending of the bars tried
}

func (p predictor) places() places {
	out := places{shares: barShares}
	bars := barHertz()
	if p.machine.Mount == OnFrame {
		out.shares, bars = frameShares, []float64{0}
	}
	for _, m := range wheelbases {
		out.late = append(out.late, p.late(m))
	}
	for _, hertz := range bars {
		out.bends = append(out.bends, p.bends(hertz))
	}
	return out
}

func (s places) each(p predictor, front, rear [][]complex128, take func(shape []float64, cost float64)) {
	for _, share := range s.shares {
		late := s.late
		if share == 0 {
			late = late[:1]
		}
		for _, l := range late {
			powers := p.powers(front, rear, l, share)
			for i, bends := range s.bends {
				cost := 0.0
				if i > 0 { // stiff bars are believed as much as all that bend together (our choice)
					cost = math.Log(barSteps)
				}
				for _, folded := range []float64{0, 0.5, 1} {
					take(seen(powers, bends, folded), cost)
				}
			}
		}
	}
}

// What the phone may have of the rear wheel's motion, on the bars and on the frame, and how far behind that wheel is, m (our choice: a
// stiff frame turns about its wheels, and the bars stand up to a quarter of the wheelbase behind the front one).
var (
	barShares   = []float64{0, 0.06, 0.12, 0.18, 0.24}
	frameShares = []float64{0, 0.15, 0.3, 0.4, 0.5, 0.6}
	wheelbases  = []float64{0.98, 1.02, 1.06, 1.10}
)

// lay puts a shape on the measured one: the level that fits best, what is left as a loss, and the shape's misfit: the spread of what is
// left, apart from chance.
func lay(measured, shape []float64, line float64) (level, loss, misfit float64) {
	left := make([]float64, len(shape))
	sorted := make([]float64, len(shape))
	for i := range shape {
		left[i] = measured[i] - shape[i]
		sorted[i] = left[i]
	}
	level = median(sorted)
	for range 8 {
		var sum, weight float64
		for _, x := range left {
			w := 1.0
			if d := math.Abs(x-level) / line; d > Stray {
				w = Stray / d
			}
			sum, weight = sum+w*x, weight+w
		}
		level = sum / weight
	}
	var square float64
	for _, x := range left {
		d := math.Abs(x-level) / line
		if d > Stray {
			loss += Stray * (d - Stray/2)
		} else {
			loss += d * d / 2
		}
		square += (x - level) * (x - level)
	}
	return level, loss, math.Sqrt(square / float64(len(left)))
}
