// Package pressure decides what each tyre should hold today. Two losses pull against each other: a softer tyre flexes more, a
// harder one shakes bike and rider more. Their sum is flat round its lowest point, so the number is where that loss and the
// distance from usual practice, weighed together, are least: one smooth minimum, never past a limit. An unknown limit is not
// permission.
//
// Sources stand with the formulas in tyre, road, ride and air; the rules of this package are common practice or our choice
// and are marked so in constants.go.
package pressure
