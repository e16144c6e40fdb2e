// Package rule warns: rarely, truly, with the evidence in numbers.
//
// Table has every rule as a row: its grade, where it comes from, when it is
// raised and when it clears. Walk holds the rows against a smelt on a fixed
// grid of 10 s from light on, so that live, replay and report see the same at
// any speed. Warnings follow from the entries; nothing is kept between calls.
//
// A calm smelt stays calm: a rule clears on another condition than it is
// raised on, stands for half a minute at least and stays away for half a
// minute once it has cleared. One cause gives one warning: a burden that is
// only low because the charge is late is told as a late charge. The discipline
// (every warning has a cause, an answer and a grade by how soon it is needed;
// few at a time; none for what the person has just done) is that of ISA-18.2
// and EEMUA 191 (from memory, unverified).
//
// What only the model of the shaft tells is a note: that the top runs hot, that
// the hearth cools before anybody sees it, that the slag stiffens by its make-up.
// WalkSolved has them, from what the shaft solver saw on the way.
//
// Cautions are the other half: what may hurt, told once to each person at the
// moment it matters.
package rule
