// Package fit is the geometry of getting a tight tyre over a rim. A bead is a loop that does not stretch: its length is fixed,
// and whatever it has to go round takes from what it has to spare.
//
// Sources: plane geometry alone (ISO 5775-2 names the rim's dimensions: D specified diameter, G flange height, H well depth
// with tape). No published figure for the room of real pairs was found; friction, the casing's width and a stiff bead come on
// top. Starting opposite the valve and finishing at it is common practice, and follows from the sums here.
package fit
