package spares_test

import (
	"errors"
	"fmt"
	"math"
	"math/bits"
	"testing"

	"pgregory.net/rapid"

	"rimside/calc/spares"
	"rimside/calc/unit"
)

const plenty = 1 << 30

// crowd is bikes and wheels of a few kinds, so that some fit.
func crowd(t *rapid.T, bikes, wheels int) ([]spares.Bike, []spares.Spare) {
	kinds := make([]spares.End, rapid.IntRange(2, 8).Draw(t, "kinds"))
	for i := range kinds {
		kinds[i] = drawEnd(t)
		kinds[i].Brake = spares.Disc
	}
	var all []spares.Bike
	for i := range bikes {
		b := spares.Bike{ID: fmt.Sprint("b", i), Weight: float64(rapid.IntRange(1, 5).Draw(t, "weight"))}
		b.Front, b.Rear = rapid.SampledFrom(kinds).Draw(t, "front"), rapid.SampledFrom(kinds).Draw(t, "rear")
		b.Front.Side, b.Rear.Side = spares.Front, spares.Rear
		b.Rear.Room = unit.FromMM(rapid.Float64Range(25, 45).Draw(t, "room"))
		b.Rear.MaxCog = rapid.IntRange(28, 36).Draw(t, "reach")
		all = append(all, b)
	}
	var car []spares.Spare
	for i := range wheels {
		s := spares.Spare{ID: fmt.Sprint("w", i), Hub: rapid.SampledFrom(kinds).Draw(t, "like").Hub}
		s.Side = rapid.SampledFrom([]spares.Side{spares.Front, spares.Rear}).Draw(t, "end")
		s.Tyre = unit.FromMM(rapid.Float64Range(25, 40).Draw(t, "tyre"))
		car = append(car, s)
	}
	return all, car
}

// weigh is what a choice of wheels covers, worked out end by end.
func weigh(bikes []spares.Bike, wheels []spares.Spare, chosen func(i int) bool) float64 {
	var sum float64
	for _, b := range bikes {
		for _, end := range []spares.End{b.Front, b.Rear} {
			for i := range wheels {
				if chosen(i) && spares.Judge(end, &wheels[i]).Fit == spares.Yes {
					sum += b.Weight
					break
				}
			}
		}
	}
	return sum
}

func picked(load spares.Load, wheels []spares.Spare) func(int) bool {
	ids := map[string]bool{}
	for _, id := range load.Pick {
		ids[id] = true
	}
	return func(i int) bool { return ids[wheels[i].ID] }
}

// Every choice is tried, up to 12 wheels here and 20 in the next test.
func TestTheBestOfAllChoices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bikes, wheels := crowd(t, rapid.IntRange(1, 8).Draw(t, "bikes"), rapid.IntRange(1, 12).Draw(t, "wheels"))
		places := rapid.IntRange(1, 6).Draw(t, "places")
		best := 0.0
		for choice := range uint(1) << len(wheels) {
			if bits.OnesCount(choice) <= places {
				best = math.Max(best, weigh(bikes, wheels, func(i int) bool { return choice>>i&1 == 1 }))
			}
		}
		load := spares.Cover(bikes, wheels, places, plenty)
		if got := weigh(bikes, wheels, picked(load, wheels)); got != best || !load.Exact || load.Weight != best || len(load.Pick) > places {
			t.Errorf("covers %v, the best %v: %+v", got, best, load)
		}
	})
}

func TestTheBestOfAMillionChoices(t *testing.T) {
	var bikes []spares.Bike
	var wheels []spares.Spare
	rapid.Check(t, func(t *rapid.T) {
		if wheels == nil { // one draw is enough: a million choices take a while
			bikes, wheels = crowd(t, 6, 20)
		}
	})
	fits := make([]uint, len(wheels)) // by wheel, the ends it fits
	weights := []float64{}
	for _, b := range bikes {
		for _, end := range []spares.End{b.Front, b.Rear} {
			for i := range wheels {
				if spares.Judge(end, &wheels[i]).Fit == spares.Yes {
					fits[i] |= 1 << len(weights)
				}
			}
			weights = append(weights, b.Weight)
		}
	}
	best := 0.0
	for choice := range uint(1) << len(wheels) {
		if bits.OnesCount(choice) > 5 {
			continue
		}
		var covered uint
		for i := range wheels {
			if choice>>i&1 == 1 {
				covered |= fits[i]
			}
		}
		sum := 0.0
		for e, w := range weights {
			if covered>>e&1 == 1 {
				sum += w
			}
		}
		best = math.Max(best, sum)
	}
	if load := spares.Cover(bikes, wheels, 5, plenty); load.Weight != best || !load.Exact {
		t.Errorf("%v, the best %v", load.Weight, best)
	}
}

// Never worse than the greedy pick, never less for one place more, and the same again for the same question.
func TestOnePlaceMoreNeverCoversLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bikes, wheels := crowd(t, 20, 15)
		last := 0.0
		for places := range 8 {
			greedy, some := spares.Cover(bikes, wheels, places, 0), spares.Cover(bikes, wheels, places, 200)
			if some.Weight < greedy.Weight {
				t.Errorf("searching made it worse: %v, then %v", greedy.Weight, some.Weight)
			}
			best := spares.Cover(bikes, wheels, places, plenty)
			if best.Weight < last || best.Weight < some.Weight {
				t.Errorf("%d places cover %v, one less %v", places, best.Weight, last)
			}
			last = best.Weight
			again := spares.Cover(bikes, wheels, places, plenty)
			if fmt.Sprint(again.Pick) != fmt.Sprint(best.Pick) {
				t.Errorf("%v, then %v", best.Pick, again.Pick)
			}
			if got := len(best.Covered) + len(best.Left); got != 2*len(bikes) {
				t.Errorf("%d ends told of %d bikes", got, len(bikes))
			}
		}
	})
}

func TestTheQuickestChangeIsNamed(t *testing.T) {
	end := roadRear()
	near, other := spareFor(end), spareFor(end)
	near.ID, near.Speeds, other.ID, other.BeadSeat = "near", 11, "other", unit.FromMM(584)
	load := spares.Cover([]spares.Bike{{ID: "114", Weight: 1, Rear: end}}, []spares.Spare{near, other}, 1, plenty)
	if len(load.Left) != 1 || load.Left[0].Why != spares.NoWheel || load.Left[0].Change == nil || load.Left[0].Change.Spare.ID != "near" {
		t.Errorf("%+v", load)
	}
}

func TestOnePressureForSeveral(t *testing.T) {
	riders := []spares.Rider{{"a", 200e3, 150e3, 400e3}, {"b", 288e3, 180e3, 400e3}, {"c", 230e3, 150e3, 400e3}}
	got, err := spares.Share(riders)
	if err != nil || math.Abs(got.Pressure.KPa()-240) > 1e-9 || math.Abs(got.Spread-math.Log(1.2)) > 1e-9 || fmt.Sprint(got.Worst) != "[a b]" {
		t.Errorf("%+v, %v", got, err)
	}
	riders[2].Ceiling = 220e3
	if got, err = spares.Share(riders); err != nil || got.Pressure != 220e3 || fmt.Sprint(got.Worst) != "[b]" {
		t.Errorf("under a limit: %+v, %v", got, err)
	}
	riders[1].Floor = 230e3
	if _, err = spares.Share(riders); !errors.Is(err, spares.ErrNoShared) {
		t.Errorf("a floor above a limit: %v", err)
	}
	if _, err = spares.Share(nil); !errors.Is(err, spares.ErrNoRiders) {
		t.Errorf("nobody: %v", err)
	}
}

// No other pressure is nearer to the farthest rider.
func TestNoPressureIsNearer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var riders []spares.Rider
		for i := range rapid.IntRange(1, 6).Draw(t, "riders") {
			p := unit.FromKPa(rapid.Float64Range(150, 500).Draw(t, "p"))
			riders = append(riders, spares.Rider{ID: fmt.Sprint(i), Recommended: p, Floor: p * 0.8, Ceiling: p * unit.Pascal(rapid.Float64Range(1, 2).Draw(t, "top"))})
		}
		got, err := spares.Share(riders)
		if err != nil {
			return
		}
		for _, r := range riders {
			if got.Pressure < r.Floor-1e-6 || got.Pressure > r.Ceiling+1e-6 {
				t.Errorf("%v is outside of %+v", got.Pressure, r)
			}
		}
		for kpa := 100.0; kpa < 600; kpa++ {
			p, worst, allowed := unit.FromKPa(kpa), 0.0, true
			for _, r := range riders {
				worst = math.Max(worst, math.Abs(math.Log(float64(p/r.Recommended))))
				allowed = allowed && p >= r.Floor && p <= r.Ceiling
			}
			if allowed && worst < got.Spread-1e-9 {
				t.Errorf("%v is at most %v off, %v is %v", p, worst, got.Pressure, got.Spread)
			}
		}
	})
}

func ExampleMatch() {
	end := roadRear()
	spare := spareFor(end)
	spare.Rotor = unit.FromMM(140)
	fmt.Println(spares.Match(end, []spares.Spare{spare})[0].Fit)
	// Output: no
}

func BenchmarkGreedy(b *testing.B) { benchmarkCover(b, 0) }

func BenchmarkSearched(b *testing.B) { benchmarkCover(b, 20000) }

// benchmarkCover loads 12 of 60 wheels for 300 bikes of many kinds.
func benchmarkCover(b *testing.B, steps int) {
	var bikes []spares.Bike
	var wheels []spares.Spare
	for i := range 300 {
		end := roadRear()
		end.Room, end.MaxCog = unit.FromMM(float64(28+i%17)), 28+i%9
		end.Rotor = unit.FromMM(float64(140 + 20*(i%3)))
		end.Width = unit.FromMM([]float64{135, 142, 148}[i%7%3])
		front := end
		front.Side = spares.Front
		bikes = append(bikes, spares.Bike{ID: fmt.Sprint(i), Weight: 1 + float64(i%4), Front: front, Rear: end})
		if i%5 == 0 {
			s := spareFor(end)
			s.ID, s.Tyre, s.MaxCog = fmt.Sprint("w", i), unit.FromMM(float64(25+i%13)), 26+i%11
			s.Side = []spares.Side{spares.Front, spares.Rear}[i%2]
			wheels = append(wheels, s)
		}
	}
	for b.Loop() {
		spares.Cover(bikes, wheels, 12, steps)
	}
}

// Where the greedy pick leaves nobody out, no search is needed to prove it.
func TestALoadThatCoversAllIsProvedAtOnce(t *testing.T) {
	end := roadRear()
	bikes := []spares.Bike{{ID: "1", Weight: 0.1, Rear: end}, {ID: "2", Weight: 0.2, Rear: end}, {ID: "3", Weight: 0.3, Rear: end}}
	other := end
	other.Width = unit.FromMM(148)
	bikes = append(bikes, spares.Bike{ID: "4", Weight: 1, Rear: other}) // no wheel fits: no search helps
	if load := spares.Cover(bikes, []spares.Spare{spareFor(end)}, 2, 0); !load.Exact || len(load.Covered) != 3 {
		t.Errorf("%+v", load)
	}
	second := spareFor(other)
	second.ID = "b"
	if load := spares.Cover(bikes, []spares.Spare{spareFor(end), second}, 1, 0); load.Exact {
		t.Errorf("with a place too few nothing is proved without a search: %+v", load)
	}
}
