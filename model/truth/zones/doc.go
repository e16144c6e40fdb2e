// Package zones is a second furnace that answers in a rehearsal, written by another hand than package truth and without
// reading how that one burns: what holds on both is less likely to hold by luck.
//
// It is another kind of furnace. The shaft is three zones, each stirred to one temperature: the burden is warmed in the upper
// one, reduced in the middle one and burned before the tuyere; below lies the hearth, one lump. Charges queue through them. A
// zone has one account of heat and one of each element. Burning goes as far as the air does; carbon dioxide takes up carbon by
// the temperature of its zone alone; ore loses its oxygen by time at temperature, added up. It shares no closure with
// physics/shaft, model/solve or the other furnace and imports neither of the solver's (tested). Of package truth it has the words of a
// rehearsal (mishaps, what is looked at, the streams of random numbers), of physics the lines between the oxides.
//
// Table and MishapTable hold every number, with what it rests on.
package zones
