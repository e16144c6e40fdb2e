// Package forge is what becomes of a bloom, on top of the folded house: pieces with what
// they were made of, what each kilogram of them took of hours and fuel, how much of the
// ore and of the bloom came that far, what tests say of the metal, and what cannot be.
//
// Each share stands beside what it is a share of. Of a piece that was cut the yields hold
// if the rest goes alike; of one welded of two smelts nobody knows how much of it is of
// which ore. Nothing is refused here: what cannot be is said.
package forge
