package trial

import "math"

// freedom is the degrees of freedom with which two means that may scatter unlike are compared at this level. Welch's count (Satterthwaite
// 1946; Welch 1947) is believed as far as both arms seem to scatter alike. Of few runs they may seem to while they do not, and then it
// calls a difference too often (Wang 1971: 5.5 % instead of 5 % of four runs each). One less than the fewest runs never does (Hsu 1938;
// Mickey and Brown 1966), and wastes runs. So the count goes from the one to the other, only as fast as its rate of error needs.
func freedom(a, b Arm, level float64) float64 {
	c := counts{float64(a.Runs - 1), float64(b.Runs - 1)}
	welch := c.welch(a.Variance/float64(a.Runs), b.Variance/float64(b.Runs))
	return c.between(welch, c.doubt(level))
}

// counts are the degrees of freedom of either arm by itself.
type counts struct{ a, b float64 }

func (c counts) least() float64 { return min(c.a, c.b) }

// welch is Satterthwaite's count, of the squared errors of the two means.
func (c counts) welch(fromA, fromB float64) float64 {
	return (fromA + fromB) * (fromA + fromB) / (fromA*fromA/c.a + fromB*fromB/c.b)
}

// between is Satterthwaite's count at no doubt, the least at all doubt.
func (c counts) between(welch, doubt float64) float64 {
	whole := c.a + c.b - c.least()
	return c.least() + (welch-c.least())*math.Pow((welch-c.least())/whole, doubt)
}

// doubts are tried by turns (our choice); the first does from enoughRuns of each arm on, at every level in use, as a test shows.
var doubts = []float64{1, 2, 3, 5, 8, 12, 20, math.Inf(1)}

const enoughRuns = 12

// doubt is the least with which no ratio of the scatters is wrong more often than the level says.
func (c counts) doubt(level float64) float64 {
	if c.least() >= enoughRuns-1 {
		return doubts[0]
	}
	bounds := c.bounds(level)
	for _, doubt := range doubts[:len(doubts)-1] {
		if c.mostWrong(bounds, doubt) <= level {
			return doubt
		}
	}
	return doubts[len(doubts)-1]
}

const (
	nodes         = 40  // of the midpoint rule; smooth and even at both ends, so that it converges fast
	ratioStep     = 1.3 // between the scatters tried
	ratioFurthest = 15  // steps either way, to a ratio of 51: beyond, the arm that scatters counts alone
	bounded       = 16  // parts of the table of quantiles
)

// table holds logarithms of quantiles at even steps of one over the degrees of freedom, from the least count to the whole one: there
// they run nearly straight.
type table struct {
	from, step float64
	logs       [bounded + 1]float64
}

func (c counts) bounds(level float64) table {
	out := table{from: 1 / (c.a + c.b), step: (1/c.least() - 1/(c.a+c.b)) / bounded}
	for i := range out.logs {
		out.logs[i] = math.Log(Quantile(1-level/2, 1/(out.from+float64(i)*out.step)))
	}
	return out
}

func (t *table) at(freedom float64) float64 {
	place := (1/freedom - t.from) / t.step
	i := max(0, min(int(place), bounded-1))
	return math.Exp(t.logs[i] + (place-float64(i))*(t.logs[i+1]-t.logs[i]))
}

// mostWrong is how often a difference is called where there is none, at the worst ratio of scatters.
func (c counts) mostWrong(bounds table, doubt float64) (most float64) {
	first := -ratioFurthest
	if c.a == c.b { // the same either way round
		first = 0
	}
	for i := first; i <= ratioFurthest; i++ {
		most = max(most, c.wrong(bounds, doubt, math.Pow(ratioStep, 2*float64(i))))
	}
	return most
}

// wrong is the same where the first mean's squared error is so many times the second's. Given how the arms' squares share their sum,
// B to 1 - B of a beta distribution, the difference over its error is a t of all degrees of freedom, stretched (Wang 1971).
func (c counts) wrong(bounds table, doubt, ratio float64) float64 {
	var sum, weight float64
	for i := range nodes {
		sin, cos := math.Sincos((float64(i) + 0.5) / nodes * math.Pi / 2)
		w := math.Pow(sin, c.a-1) * math.Pow(cos, c.b-1) // B = sin^2
		fromA, fromB := ratio*sin*sin/c.a, cos*cos/c.b
		bound := bounds.at(c.between(c.welch(fromA, fromB), doubt))
		stretch := math.Sqrt((c.a + c.b) * (fromA + fromB) / (ratio + 1))
		sum += w * 2 * Below(-bound*stretch, c.a+c.b)
		weight += w
	}
	return sum / weight
}
