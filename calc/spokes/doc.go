// Package spokes hears how tight a spoke is: the pitch of one pluck, the tension that belongs to it, and how evenly a wheel is
// laced.
//
// A spoke is a string. Its lowest tone is f = 1/(2 L) sqrt(T/mu), mu = rho pi d^2/4 (string equation; a published note on spoke
// pitch, facts 7), so T = rho A (2 L f)^2 with L the free length, to the crossing. Steel 8000 kg/m3 (standard table for stainless
// steel). A spoke is also stiff: its partials stand at f_k = k f_0 sqrt(1 + B k^2) (Fletcher 1964, stiff strings with pinned ends),
// B = pi^3 E d^4/(64 T L^2), which is near 0.02 for 2 mm of steel, 280 mm, 1000 N: far from a guitar's string. So stiffness is found
// along with the pitch, and the pitch is that of the lowest partial.
//
// Stiff ends make the formula read high and butted spokes shift it: spokes of one side are compared with each other, and the
// newtons are no truth (facts 7). The maker's limits win.
package spokes
