package trial

// Rounds are balanced: each arm's runs have the same mean place, so that what drifts evenly falls on all alike. Two arms are dealt as
// ABBA or BAAB (the seed's next bit says which), three as the rows of a Latin square, then its mirror, and so on by turns.
var (
	forTwo   = [2][]int{{0, 1, 1, 0}, {1, 0, 0, 1}}
	forThree = [2][]int{{0, 1, 2, 1, 2, 0, 2, 0, 1}, {2, 1, 0, 1, 0, 2, 0, 2, 1}}
	names    = [6][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} // who is first in the square
)

// RoundOf is how many runs one round of so many arms has: 4 of two, 9 of three.
func RoundOf(arms int) int {
	if arms == 3 {
		return len(forThree[0])
	}
	return len(forTwo[0])
}

// Deal is the order of the runs, by the places of the arms (2 or 3). The seed is drawn by the caller; the same seed deals the same.
// Rounds that were dealt before are dealt again the same, with the further ones behind them.
func Deal(arms, rounds int, seed uint32) []int {
	var order []int
	for round := range rounds {
		if arms == 3 {
			for _, place := range forThree[round%2] {
				order = append(order, names[seed%6][place])
			}
			continue
		}
		order = append(order, forTwo[seed>>(round%32)&1]...)
	}
	return order
}
