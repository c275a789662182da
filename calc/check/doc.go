// Package check asks what to look at before a wheel is ridden, and judges what was found. The catalogue is data: a row is a thing to
// look at, a station on the walk around the bike, the moments at which it is asked, and what a bike must have for it to be asked.
// What is not known about a bike is asked for, never passed over.
//
// Sources stand in each row: published rules and standards by name, "trade page" and "owner's manual" where only the kind of source
// is known, "common practice, no source" where nobody prints it. Advice from rules of thumb: it cannot see a crack.
package check
