// Package solve runs the shaft solver of package physics through a smelt.
//
// Events turns a timeline (the entries in force up to a moment) into what the
// solver is told: the furnace, fills and charges with their lots, the blast,
// pokes, taps, the arch, the bloom taken out. A Solver runs them from light on
// the solver's own fixed grid and gives a Solution. It keeps checkpoints under
// a hash of the events that led to them, so that an entry at the end costs the
// steps since and a late entry or a strike those since the change; what it
// gives depends on the events alone, bit for bit, however it got there.
//
// What no log says is taken as follows, and marked in the Solution:
//
//	sizes not given         the usual ones; everything is then a guess
//	the preheating fire     a wall and embers as after a usual one
//	a fill without a blast  waits for it; its lowest part catches, and what would
//	                        stand above the mark has burned
//	charcoal not weighed    as much as reaches the level the estimator believes
//	charcoal past the mark  has burned already, faster than was taken; booked apart
//	ore not assayed         the iron that is usual of raw or of roasted ore, by its signs
//	ore not weighed         none; slag, iron and carbon are then unknown
//	a blast as metered      times the factor that the last charges and the level
//	                        tell; shown is one that leans on the usual factor
//	a shaft that stands     is lifted to it at the charge by make-up charcoal, which
//	under the level         is booked apart and in no other figure
//	a fire that would go    is held alight, as a crew does
//	out under its blast
//	a level twice running   means that it does not follow this furnace: a guess,
//	far from the shaft's    and nothing for the rules
//	a blast not metered     unknown, and nothing is solved, until three charge
//	                        intervals have told how much air there is
//	dampness of the air     that of an ordinary day
//	floor not measured      as far below the tuyere as usual
//	tuyere's angle          nothing: one dimension has no place for it
//	tuyere's bore           only what it holds against the blast
//
// The named numbers of the solver are those that the smelt's light took down,
// else the usual ones.
package solve

// Version names this solver in light and testimony. It is raised whenever the
// same entries give other numbers (a test keeps some).
const Version = "shaft 12"
