// Package logcsv reads and writes the log of a smelt as a table of
// comma-separated values: one row a moment, as it stands on a sheet of paper.
//
// # The table
//
// The columns are known by name and stand in any order. Only clock and event
// must be there; a column that is not in this list is an error.
//
//	clock        HH:MM or HH:MM:SS
//	event        preheat, fill, charge, air, tap, burndown, extract, note
//	charcoal_kg  kg of charcoal in this row
//	measures     measures of charcoal in this row
//	ore_kg       kg of ore in this row
//	scoops       scoops of ore in this row
//	air_l_min    blast, l/min; 0 is the blast off
//	temp_c       temperature, degrees Celsius
//	height_cm    burden above the tuyere, cm
//	note         words, never read for their meaning
//	date         2026-05-09, or "day 2" of a smelt whose day is unknown
//
// A blank cell was not recorded; 0 is none. So a charge with blank ore_kg and
// scoops holds ore of unknown mass, or may hold it: its ore is unknown, not
// nought. The same goes for its charcoal, and for the charcoal of a fill. The
// ore of a fill is only there when a cell says so.
//
// A row with further cells (air on a charge, a note on a tap) becomes several
// entries of one group, in the order charge or the like, air, temperature,
// height, note. A note row in which nothing stands becomes no entry; as the
// first row it still says when the fire was lit.
//
// A clock that goes back by more than 12 h is the next day; by less it is an
// error, unless the row has a date. Without any date the day is unknown and is
// counted from Undated.
//
// A semicolon between the columns is taken as well as a comma, and then a
// decimal comma as well as a point. A line that begins with # is a remark on
// the smelt. A row is one line: no cell runs over a line's end. Lines, cells
// and the whole file are bounded (see MaxLine, MaxCell,
// MaxRows, MaxFile).
//
// A remark "counts for nothing: " with practice, rehearsal or invented, or several of
// them between commas, says so of the whole smelt, and is written for one that does.
//
// # What is lost on the way out
//
// The table has no place for all that the journal holds. Reading what was
// written gives the same events but for these:
//
//	furnace, lots, calibration    not written; given again when reading
//	name and mass of a measure    not written; given again when reading
//	the smelt's offset, its uid   not written; given again when reading
//	who, how, when it was kept    not written
//	uncertainty of a time         not written
//	parts of a second             cut off
//	doubt that was answered       a note in its row ("sure: below floor")
//	place of a remark             all remarks stand at the top
//	parts of one material         added up; where that cannot be said in one
//	                              row (some weighed, some counted) a row each
//	lot of a part                 not written
//	seed and returned slag,       not written
//	fragments, flux
//	count in another measure      not written; the mass is
//	gate, strokes, tuyeres,       not written; blast on without a volume is
//	pressure, meter of the blast  a row of air with no volume
//	place of a temperature        not written
//	dip below the rim             not written
//	mass tapped, how extracted    not written
//	line ends within a note       become spaces
//	every other kind of event     not written
//
// Write counts the events that this befell (see Lost). A charge in which no
// ore, or no charcoal, is named comes back saying so with a 0.
package logcsv
