package pressure_test

import (
	"fmt"
	"testing"

	"rimside/calc/pressure"
)

// The full answer grows in proportion to the stretches: compare the times per stretch.
func BenchmarkStretches(b *testing.B) {
	for _, n := range []int{3, 12, 48} {
		in := inputOf(setupOf(40, "glove", "tubeless"))
		for i := range n {
			key := []string{"chips", "pea", "walnut"}[i%3]
			in.Ground = append(in.Ground, stretchOf(key, float64(18+i%11), float64(1+i%5)))
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				if _, err := pressure.Decide(in); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/float64(n), "µs/stretch")
		})
	}
}
