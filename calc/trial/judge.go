package trial

// Pair is a comparison of two arms by their places in the list.
type Pair struct {
	First, Second int
	Result
	Known bool // false where an arm has fewer than two runs
	Runs  int  // how many more would settle it
	Named bool // whether that can be said
}

// Verdict is what a trial has shown.
type Verdict struct {
	Pairs   []Pair // each arm with each later one
	Closest int    // the place in Pairs of the best arm and its nearest rival; of two arms, their only pair
	Best    int    // the arm that is shown to be better than every other; -1 when there is none
	Level   float64
}

// Judge compares all arms, which are two or more. less says whether a smaller value is the better one.
func Judge(arms []Arm, less bool, looks int) Verdict {
	v := Verdict{Best: -1, Level: Level(len(arms), looks)}
	leader, rival := leaders(arms, less)
	for i := range arms {
		for j := i + 1; j < len(arms); j++ {
			p := Pair{First: i, Second: j}
			p.Result, p.Known = Compare(arms[i], arms[j], v.Level)
			p.Runs, p.Named = RunsToSettle(arms[i], arms[j], v.Level)
			if i == min(leader, rival) && j == max(leader, rival) {
				v.Closest = len(v.Pairs)
			}
			v.Pairs = append(v.Pairs, p)
		}
	}
	shown := 0
	for _, p := range v.Pairs {
		if p.Shown && (p.First == leader || p.Second == leader) {
			shown++
		}
	}
	if shown == len(arms)-1 {
		v.Best = leader
	}
	return v
}

// leaders are the arm with the best mean and the one next to it. Arms without runs come last.
func leaders(arms []Arm, less bool) (best, next int) {
	ahead := func(a, b Arm) bool {
		if a.Runs == 0 || b.Runs == 0 {
			return a.Runs > 0 && b.Runs == 0
		}
		return a.Mean != b.Mean && (a.Mean < b.Mean) == less
	}
	for i := range arms {
		if ahead(arms[i], arms[best]) {
			best = i
		}
	}
	if best == 0 {
		next = 1
	}
	for i := range arms {
		if i != best && ahead(arms[i], arms[next]) {
			next = i
		}
	}
	return best, next
}
