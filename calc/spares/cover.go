package spares

// Bike is a bike that a car follows: what it matters, and its two ends. An end without a side is left out.
type Bike struct {
	ID          string
	Weight      float64
	Front, Rear End
}

// At is one end of one bike.
type At struct {
	Bike string
	Side Side
}

// Why an end is left without a wheel.
type Why string

// The reasons.
const (
	NoWheel Why = "no_wheel" // none of the wheels fits
	NoPlace Why = "no_place" // one fits, but there is no place left for it
)

// Left is an end without a wheel, and the quickest change that would serve it: of the wheels that come along, else of all; nil
// where none would.
type Left struct {
	At
	Why    Why
	Change *Verdict
}

// Load is which wheels to take along.
type Load struct {
	Pick    []string
	Covered []At
	Left    []Left
	Weight  float64 // of what is covered
	Exact   bool    // proved the best
}

// Cover picks at most so many wheels that cover the most weight: an end is covered by any picked wheel that fits as it is. Steps
// bounds the search after the greedy pick; the answer is the same for the same question, and Exact tells whether the search came
// to its end. Places that nothing more is won with get the wheel that most riders may need a second time.
func Cover(bikes []Bike, wheels []Spare, places, steps int) Load {
	p := newProblem(bikes, wheels)
	s := search{problem: p, left: steps}
	s.greedy(places)
	s.run(places)
	pick := p.fill(s.best, places)
	return p.load(pick, s.bestWeight, !s.gaveUp)
}

// problem is the ends in groups that the same wheels fit, and for each wheel the groups it covers.
type problem struct {
	wheels     []Spare
	ends       []At
	demands    []End
	endGroup   []int     // -1 for an end that no wheel fits
	weight     []float64 // of each group
	covers     []set     // by wheel, groups
	candidates []int     // wheels of which none covers only what another covers too
}

func newProblem(bikes []Bike, wheels []Spare) *problem {
	p := &problem{wheels: wheels}
	groups, fitting, known := map[string]int{}, []set{}, map[End]set{} // many bikes are built alike
	for _, b := range bikes {
		for _, end := range []End{b.Front, b.Rear} {
			if end.Side == "" {
				continue
			}
			p.ends, p.demands = append(p.ends, At{b.ID, end.Side}), append(p.demands, end)
			fits, judged := known[end]
			if !judged {
				fits = fitsOf(end, wheels)
				known[end] = fits
			}
			if fits.empty() {
				p.endGroup = append(p.endGroup, -1)
				continue
			}
			group, grouped := groups[fits.key()]
			if !grouped {
				group = len(fitting)
				groups[fits.key()], fitting, p.weight = group, append(fitting, fits), append(p.weight, 0)
			}
			p.endGroup = append(p.endGroup, group)
			p.weight[group] += b.Weight
		}
	}
	for w := range wheels {
		covers := newSet(len(fitting))
		for g, fits := range fitting {
			if fits.has(w) {
				covers.add(g)
			}
		}
		p.covers = append(p.covers, covers)
	}
	p.candidates = p.undominated()
	return p
}

// fitsOf is which wheels go into an end as they are.
func fitsOf(end End, wheels []Spare) set {
	fits := newSet(len(wheels))
	for i := range wheels {
		if Judge(end, &wheels[i]).Fit == Yes {
			fits.add(i)
		}
	}
	return fits
}

// undominated leaves out every wheel that covers no more than another: taking that one in its place is never worse.
func (p *problem) undominated() []int {
	var out []int
	for w := range p.wheels {
		keep := p.gain(w, nil) > 0
		for other := range p.wheels {
			if !keep {
				break
			}
			if other != w && !p.covers[w].without(p.covers[other]) {
				keep = !p.covers[other].without(p.covers[w]) && w < other // of twins the first stays
			}
		}
		if keep {
			out = append(out, w)
		}
	}
	return out
}

// gain is the weight that a wheel covers beyond what is taken.
func (p *problem) gain(wheel int, taken set) float64 {
	var sum float64
	p.covers[wheel].each(taken, func(g int) { sum += p.weight[g] })
	return sum
}

// fill gives each place left the wheel that most weight may need once more, each further time counting for less.
func (p *problem) fill(pick []int, places int) []int {
	times, used := make([]float64, len(p.weight)), newSet(len(p.wheels))
	take := func(w int) {
		used.add(w)
		p.covers[w].each(nil, func(g int) { times[g]++ })
	}
	for _, w := range pick {
		take(w)
	}
	for len(pick) < places {
		best, most := -1, 0.0
		for w := range p.wheels {
			if used.has(w) {
				continue
			}
			var sum float64
			p.covers[w].each(nil, func(g int) { sum += p.weight[g] / (1 + times[g]) })
			if sum > most {
				best, most = w, sum
			}
		}
		if best < 0 {
			break
		}
		take(best)
		pick = append(pick, best)
	}
	return pick
}

func (p *problem) load(pick []int, weight float64, exact bool) Load {
	out, taken := Load{Weight: weight, Exact: exact}, newSet(len(p.weight))
	var along []Spare
	for _, w := range pick {
		out.Pick, along = append(out.Pick, p.wheels[w].ID), append(along, p.wheels[w])
		taken = taken.union(p.covers[w])
	}
	for i, at := range p.ends {
		switch group := p.endGroup[i]; {
		case group >= 0 && taken.has(group):
			out.Covered = append(out.Covered, at)
		case group >= 0:
			out.Left = append(out.Left, Left{At: at, Why: NoPlace, Change: p.change(p.demands[i], along)})
		default:
			out.Left = append(out.Left, Left{At: at, Why: NoWheel, Change: p.change(p.demands[i], along)})
		}
	}
	return out
}

// change is the quickest wheel that would go in after a change.
func (p *problem) change(end End, along []Spare) *Verdict {
	for _, wheels := range [][]Spare{along, p.wheels} {
		if ranked := Match(end, wheels); len(ranked) > 0 && ranked[0].Fit != No {
			return &ranked[0]
		}
	}
	return nil
}
