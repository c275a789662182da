// Package pack takes a bike apart for a journey and puts it together again: what to do in which order for this bike, this way of
// travelling and this direction, which tools must come along, what of the goods may fly, and the way back. It answers in codes and
// values; the words are the catalogue's. What is not known about a bike is taken to be there, and asked: a step too many is skipped in
// a second, a rotor left on is bent.
//
// Sources: the order of taking apart and of putting together is common practice, in agreement with several published packing guides.
// Torque from published trade tables, makers' tables and owner's manuals; the number on the part wins. Goods from the published rules
// of air travel as read on the day that ReadOn names; rules differ by country, airline and date, so the airline is to be asked.
package pack
