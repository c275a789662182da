package spares

import (
	"cmp"
	"slices"
)

// search looks for the pick that covers the most.
type search struct {
	*problem
	best       []int
	bestWeight float64
	left       int // steps that may still be taken
	gaveUp     bool
}

// better is by how much a pick must win, so that the last bits of sums in another order do not count.
const better = 1e-9

// greedy takes the wheel that adds the most, again and again; of equals the first.
func (s *search) greedy(places int) {
	taken := newSet(len(s.weight))
	for len(s.best) < places {
		pick, most := -1, 0.0
		for _, w := range s.candidates {
			if gain := s.gain(w, taken); gain > most+better {
				pick, most = w, gain
			}
		}
		if pick < 0 {
			return
		}
		s.best, s.bestWeight = append(s.best, pick), s.bestWeight+most
		taken = taken.union(s.covers[pick])
	}
}

// run searches on from the greedy pick, until nothing better can be there or the steps are used up.
func (s *search) run(places int) {
	var all float64
	for _, weight := range s.weight {
		all += weight
	}
	if s.bestWeight+better >= all { // nobody whom a wheel fits is left out: no search can add to that
		return
	}
	s.branch(s.candidates, nil, newSet(len(s.weight)), 0, places)
}

// option is a wheel with what it would add now.
type option struct {
	wheel int
	gain  float64
}

// branch takes the strongest wheel or leaves it. What each of the rest adds now is the most it can ever add (the cover is
// submodular), so the sum of the strongest bounds what a branch can reach.
func (s *search) branch(rest, pick []int, taken set, weight float64, places int) {
	if weight > s.bestWeight+better {
		s.best, s.bestWeight = slices.Clone(pick), weight
	}
	if places == 0 || s.gaveUp {
		return
	}
	if s.left--; s.left < 0 {
		s.gaveUp = true
		return
	}
	options := make([]option, 0, len(rest))
	for _, w := range rest {
		if gain := s.gain(w, taken); gain > 0 {
			options = append(options, option{w, gain})
		}
	}
	slices.SortFunc(options, func(a, b option) int {
		return cmp.Or(cmp.Compare(b.gain, a.gain), cmp.Compare(a.wheel, b.wheel))
	})
	for i, o := range options {
		if weight+bound(options[i:], places) <= s.bestWeight+better {
			return
		}
		others := make([]int, 0, len(options)-i-1)
		for _, later := range options[i+1:] {
			others = append(others, later.wheel)
		}
		s.branch(others, append(slices.Clip(pick), o.wheel), taken.union(s.covers[o.wheel]), weight+o.gain, places-1)
	}
}

// bound is the most that so many of these can add.
func bound(options []option, places int) float64 {
	var sum float64
	for _, o := range options[:min(places, len(options))] {
		sum += o.gain
	}
	return sum
}
