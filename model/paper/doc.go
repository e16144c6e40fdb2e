// Package paper is the log kept by hand: which letter stands for which act, and how a row
// of it is read. The sheet that is printed and the screen that takes its rows in go by the
// same letters, which are those of the keys at the fire.
//
// A row is a time, a letter and what goes with it:
//
//	10:42 c 1 4          a charge: 1 measure of charcoal, 4 of ore
//	10:51 c 1.9kg 2kg    the same by weight
//	10:55 s 1/2          ore alone, half a measure
//	11:02 f 1            charcoal only
//	11:10 b 720          the blast, l/min; b off, b on
//	11:15 t 2.5          a tap, kg where it was weighed
//	11:20 l white        a look into the peep; l sound gurgle of the sound
//	11:25 i 44           a dip, cm below the rim
//	11:30 e 1250         a temperature in the peep, degrees Celsius
//	15:00 w bloom 4.6    a weighing: bloom, slag, fragments
//	15:10 n words        a note
//
// A time is 10:42, 1042 or 10.42, or " for that of the row above. Blanks, tabs and
// semicolons part the cells.
package paper
