package pressure

import (
	"rimside/calc/unit"
)

// Search range of the computed best (our choice: wider than any tyre's use).
const (
	// SearchLow is its lower end.
	SearchLow = unit.Pascal(40e3)
	// SearchHigh is its upper end.
	SearchHigh = unit.Pascal(1600e3)
	// searchEdge is how near an edge of the range a minimum counts as none.
	searchEdge = unit.Pascal(1e3)
)

const (
	// GoodWatts is what the good range may cost above the best at one wheel (our choice).
	GoodWatts = unit.Watt(1)
	// MaxPull is how far the curve may move custom: rough ground breaks rims, not records (our choice).
	MaxPull = 0.10
	// FirmStep is one step of softer or firmer (our choice); wet ground is one step softer (common practice).
	FirmStep = 0.05
	// MaxFirmness is the most steps either way.
	MaxFirmness = 2
	// SameTyreFront is the least share of the rear's want that a front of the same tyre gets (our choice).
	SameTyreFront = 0.85
	// AskAbove is the pressure above which a hooked rim needs both maxima known (our choice).
	AskAbove = unit.Pascal(250e3)
)

// Squash under the ride's load that custom asks for, carried by air alone (common practice, fitted to remembered set-ups).
const (
	// CustomFront is the front's.
	CustomFront = 0.14
	// CustomRear is the rear's.
	CustomRear = 0.165
)

// hardSquash is the most a tyre may squash in braking or seated climbing (our choice; no published figure was found).
var hardSquash = map[Setup]float64{Tube: 0.18, Tubeless: 0.20, Insert: 0.24}

// HardSquash is the most a tyre of this set-up may squash, as a share of its width; 0 for a set-up that is not one of Setups.
func HardSquash(s Setup) float64 { return hardSquash[s] }

// Half-widths of the likely band (our choice).
const (
	// BandRoughness is how many times rougher or smoother the ground may be.
	BandRoughness = 2.0
	// BandLoad is how far the load may be off, as a share.
	BandLoad = 0.03
)

var (
	// BandPredicted is how far a predicted width may be off.
	BandPredicted = unit.FromMM(1.5)
	// BandMeasured is how far a measured width may be off.
	BandMeasured = unit.FromMM(0.25)
)

// A reading this near is left alone: half a gauge step, or a share of the aim (our choice).
const (
	// LeaveWithin is half a gauge's step.
	LeaveWithin = unit.Pascal(2.5e3)
	// LeaveShare is that share of the aim.
	LeaveShare = 0.02
)

// biggerLabels are the printed widths tried when a tyre is too small, in mm.
var biggerLabels = []float64{18, 20, 23, 25, 28, 30, 32, 35, 38, 40, 42, 45, 47, 50, 54, 57, 60, 63, 66}

// The curve's reach around what is asked for (our choice).
const (
	curvePoints = 60
	// CurveBelow is where it starts, as a share of the floor.
	CurveBelow = 0.7
	// CurveAbove is where it ends, as a multiple of what is asked for.
	CurveAbove = 1.6
)

// MinLeft is the least gauge pressure that can be set in advance: below it the tyre would be flat where it is set.
const MinLeft = unit.Pascal(5e3)
