// Package due tells what a bike needs, and since when: sealant, a wash, rotors, pads, spokes, bolts, a walk around. It reads what was
// noted and a day; it knows no clock. What nobody noted is due: missing knowledge is not permission.
//
// Sources stand with each interval: most are our choice within common practice; spokes after the first 100 km are published (an
// owner's manual); the wash is package salt's, the limits of rotors and pads are package check's.
package due
