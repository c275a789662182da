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

// How a number is weighed between the curve and usual practice.
const (
	// FeltWatts is what a rider would feel at one wheel: the curve's unit in the weighing, and what the fine range may cost
	// more than the number (our choice).
	FeltWatts = unit.Watt(1)
	// PracticeSpread is how well usual practice is known, a share of the pressure (our choice).
	PracticeSpread = 0.08
	// FineShare is how far the fine range may reach from the number, as a share of it (our choice).
	FineShare = 0.25
	// FirmStep is one step of softer or firmer (our choice).
	FirmStep = 0.05
	// MaxFirmness is the most steps either way.
	MaxFirmness = 2
	// WetFactor is what wet ground makes of a want (common practice).
	WetFactor = 0.95
	// SameTyreFront is the least share of the rear's want that a front of the same tyre gets (our choice).
	SameTyreFront = 0.85
	// UnreadMax is what a maximum that nobody has read counts as on a hooked rim (our choice).
	UnreadMax = unit.Pascal(250e3)
)

// Squash under the ride's load that usual practice asks for, carried by air alone (common practice, fitted to remembered
// set-ups), at PracticeWidth.
const (
	// PracticeFront is the front's.
	PracticeFront = 0.14
	// PracticeRear is the rear's.
	PracticeRear = 0.165
	// PracticeGrowth is the power of width with which both grow (same fit).
	PracticeGrowth = 0.15
)

// PracticeWidth is the width at which the squash of usual practice is as written.
var PracticeWidth = unit.FromMM(40)

// practiceFactor is what each set-up makes of usual practice (common practice).
var practiceFactor = map[Setup]float64{Tube: 1.05, Tubeless: 1, Insert: 0.95}

// PracticeFactor is what a set-up makes of the pressure of usual practice; 0 for a set-up that is not one of Setups.
func PracticeFactor(s Setup) float64 { return practiceFactor[s] }

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
