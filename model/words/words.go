// Package words holds every word that the program says to a person.
//
// Rules: say what happened, what it means, what to do, in that order and in as
// few words as that takes. Use the trade's words and plain English; no word a
// helper at the furnace would have to ask about. Every number has its unit. A
// sentence of the screen has no full stop; one on the command line is one
// line, in lower case. Chemistry stands one key deeper. Nothing is said by
// colour alone, so each state has its word here.
package words
