// Package chart draws values where a picture says more than a figure: a figure
// in its range, the minutes of the measure that burns, the strip of charges, the
// day of a smelt. Values in, cells out; what the words are the screens say.
//
// Every bar says what its ends are, and nothing rests on colour: each mark has a
// shape of its own.
package chart
