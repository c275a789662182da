package pressure

import (
	"rimside/calc/unit"
)

// Search range of the computed best (our choice: wider than any tyre's use).
const (
	searchLow  = unit.Pascal(40e3)
	searchHigh = unit.Pascal(1600e3)
	// searchEdge is how near an edge of the range a minimum counts as none.
	searchEdge = unit.Pascal(1e3)
)

const (
	// goodWatts is what the good range may cost above the best at one wheel (our choice).
	goodWatts = unit.Watt(1)
	// maxPull is how far the curve may move custom: rough ground breaks rims, not records (our choice).
	maxPull = 0.10
	// firmStep is one step of softer or firmer (our choice); wet ground is one step softer (common practice).
	firmStep = 0.05
	// MaxFirmness is the most steps either way.
	MaxFirmness = 2
	// sameTyreFront is the least share of the rear's want that a front of the same tyre gets (our choice).
	sameTyreFront = 0.85
	// askAbove is the pressure above which a hooked rim needs both maxima known (our choice).
	askAbove = unit.Pascal(250e3)
)

// Squash under the ride's load that custom asks for, carried by air alone (common practice, fitted to remembered set-ups).
const (
	customFront = 0.14
	customRear  = 0.165
)

// hardSquash is the most a tyre may squash in braking or seated climbing (our choice; no published figure was found).
var hardSquash = map[Setup]float64{Tube: 0.18, Tubeless: 0.20, Insert: 0.24}

// Half-widths of the likely band (our choice).
const (
	bandRoughness = 2.0
	bandLoad      = 0.03
)

var (
	bandPredicted = unit.FromMM(1.5)
	bandMeasured  = unit.FromMM(0.25)
)

// A reading this near is left alone: half a gauge step, or a share of the aim (our choice).
const (
	leaveWithin = unit.Pascal(2.5e3)
	leaveShare  = 0.02
)

// biggerLabels are the printed widths tried when a tyre is too small, in mm.
var biggerLabels = []float64{18, 20, 23, 25, 28, 30, 32, 35, 38, 40, 42, 45, 47, 50, 54, 57, 60, 63, 66}

// The curve's reach around what is asked for (our choice).
const (
	curvePoints = 60
	curveBelow  = 0.7
	curveAbove  = 1.6
)

// minLeft is the least gauge pressure that can be set in advance: below it the tyre would be flat where it is set.
const minLeft = unit.Pascal(5e3)
