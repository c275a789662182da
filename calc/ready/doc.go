// Package ready says whether a bike may be ridden: one answer out of all that was noted about it and about what is mounted on it. The
// worst reason wins and nothing hides it; "no fault found" is said only after a whole walk-around that nothing has overtaken since.
// It reads what was noted and a day; it knows no clock, and the order in which events are given never matters.
//
// A finding, a measured value and a service belong to their thing (wheel, tyre, bike) and go where it goes; a walk-around, a crash, a
// journey and an arrival belong to the bike. All rules here are our choice, on the side of safety; the limits of measured values are
// package check's, what tyre goes on what rim is package tyre's. It cannot see a crack.
package ready
