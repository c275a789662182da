package trial_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/trial"
)

// Every round is balanced: each arm comes as often, and the places of its runs add up to the same, so that a steady drift cancels.
func TestRoundsAreBalanced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arms, rounds := rapid.IntRange(2, 3).Draw(t, "arms"), rapid.IntRange(1, 8).Draw(t, "rounds")
		seed := rapid.Uint32().Draw(t, "seed")
		order := trial.Deal(arms, rounds, seed)
		size := trial.RoundOf(arms)
		if len(order) != rounds*size {
			t.Fatalf("%d runs", len(order))
		}
		for from := 0; from < len(order); from += size {
			count, places := make([]int, arms), make([]int, arms)
			for i, arm := range order[from : from+size] {
				count[arm]++
				places[arm] += i
			}
			for arm := range arms {
				if count[arm] != size/arms || places[arm] != places[0] {
					t.Fatalf("%v: counts %v, places %v", order[from:from+size], count, places)
				}
			}
		}
		if longer := trial.Deal(arms, rounds+1, seed); !slices.Equal(longer[:len(order)], order) {
			t.Fatal("a further round changes those before it")
		}
	})
}

// Both orders of two and all six of three are dealt; three are dealt as a Latin square, each arm once in each row and column.
func TestDealsAreDrawn(t *testing.T) {
	seen := map[string]bool{}
	for seed := range uint32(12) {
		two, three := trial.Deal(2, 1, seed), trial.Deal(3, 1, seed)
		seen[string(rune('0'+two[0]))] = true
		seen[string([]rune{rune('a' + three[0]), rune('a' + three[1])})] = true
		for i := range 3 {
			row, column := three[3*i:3*i+3], []int{three[i], three[3+i], three[6+i]}
			for _, line := range [][]int{row, column} {
				sorted := slices.Sorted(slices.Values(line))
				if !slices.Equal(sorted, []int{0, 1, 2}) {
					t.Errorf("seed %d: %v", seed, three)
				}
			}
		}
	}
	if len(seen) != 8 {
		t.Errorf("only %v", seen)
	}
}
