// Package registry is the one way in to every calculation: a name, a JSON body, a JSON answer. Each calculation has one field
// table that drives decoding, errors, the published description and the limits of the app's forms. Here, and only here,
// kPa, mm and degrees Celsius become SI units and back.
package registry
