// Package trial compares two or three pressures or tyres by timed runs, and says so when nothing was shown.
//
// Runs are dealt in balanced orders, so that what drifts evenly (wind, warmth, tiredness) falls on all alike: ABBA for two, a Latin
// square for three. Two means are compared with Welch's t (Welch 1947; degrees of freedom after Satterthwaite 1946), which does not
// take it that both scatter alike. Of few runs it believes too much in the scatters it saw: its degrees of freedom are lowered towards one
// less than the fewest runs (Hsu 1938; Mickey and Brown 1966) until no ratio of scatters is called wrong too often (Wang 1971). Where three are compared, or a result is looked at more than once, each look asks for more, so that
// all of them together call a difference that is not there at most once in twenty times: Bonferroni's share for pairs, Pocock's levels
// (1977) for looks. How likely the first is the better is the share of the posterior on its side, with a flat prior.
package trial
