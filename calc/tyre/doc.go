// Package tyre is the tyre's geometry on its rim, its spring, and which tyre may go on which rim.
//
// Sources: ISO 5775-1 and ISO 5775-2 (sizes, rim kinds) as quoted by trade size tables; ETRTO measuring rims as printed from
// January 2020; Renart and Roura-Grabulosa 2019 for load against deflection; Clark 1978 for the shape of the casing loss.
// Constants with another origin say so where they stand: "common practice", "from memory" or "our choice".
package tyre
