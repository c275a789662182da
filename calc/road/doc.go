// Package road is the ground: how rough it is, and what shaking a loaded wheel over it costs.
//
// Sources: ISO 8608 (one-sided displacement spectrum, waviness 2); Zuo and Zhang 2013 and Turner, arXiv 2405.00019 (the
// power lost does not depend on masses, springs or dampers behind the tyre); Fairley and Griffin 1989 (seated body).
// The roughness of each kind of ground is our choice, placed on the ISO classes.
package road
