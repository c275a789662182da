// Package pressure decides what each tyre should hold today. It starts from the trade's custom (how far a tyre should squash
// under its load), lets the computed loss curve move that only where custom would cost a watt or more, and never passes a
// limit. An unknown limit is not permission.
//
// Sources stand with the formulas in tyre, road, ride and air; the rules of this package are common practice or our choice
// and are marked so in constants.go.
package pressure
