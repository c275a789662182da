// Package ground measures how rough the ground is from what a phone on the bike felt: acceleration with gravity, at its own times,
// and the speed.
//
// The acceleration along gravity is split into frequencies (Welch 1967: Hann windows, half overlapped), each stretch summed at the
// samples' own times, so that no resampling can dull the upper part of the band. It is laid beside what the pressure model predicts at
// the frame for a roughness of 1: Sv |H|^2 |k D/Q|^2 (2 pi f)^2 (ISO 8608 for Sv; calc/road for the rest). The factor between the two is
// the roughness. Tyre and masses, and with them the hop of the wheel, are left free within bounds and weighed by how well the shape
// then fits; what is left open makes the interval.
package ground
