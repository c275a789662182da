// Package spares says which spare wheel goes into which bike, which wheels to take along, and what one pressure in a spare
// serves all the riders whom it may be given to.
//
// Sources: trade axle guides for the pairs of hub width and axle; the swap rule is common practice. A complete wheel brings its
// own rotor and sprockets and the axle stays with the bike, so rotor mount, freehub body and axle thread do not matter for it;
// hub width, axle diameter, bead seat, rotor diameter, the brake, sprockets and the room in the frame do. The cover is the
// weighted maximum coverage problem: greedy first (Nemhauser, Wolsey and Fisher 1978: never under 1 - 1/e of the best), then
// branch and bound.
package spares
