// Package salt tells what salt does to a wheel: which metals touch and how far apart they lie, and how much salt has come onto the
// bike since it was washed. It is an index for comparing and for setting a rhythm, not a prediction of corrosion.
//
// Sources: potentials in flowing sea water from a corrosion society's print of the ASTM G82 set (published; its signs restored);
// anodic index from two trade reference tables (published); the limit of 0.15 V for wet and salted use from trade references;
// sweat from Baker et al. 2016 (published). Shares, rates on the road and the days between washes are our assumptions, and say so.
package salt
