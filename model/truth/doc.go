// Package truth is the furnace that answers in a rehearsal: a made-up furnace that behaves as furnaces do, so that the
// adviser can be tried on one it does not know.
//
// It is not the adviser's model. It shares no closure for burning, reduction or the exchange of heat with physics/shaft and
// model/solve and imports neither (tested): where those have rates, this has lengths and times; where those have one mean
// across the bore, this has a tuyere side and a far side. What they share are tables of thermodynamics (equilibria, where
// slags melt) and atomic masses.
//
// Table holds every number with how it is drawn and what it rests on. Draw takes a furnace number and draws from a stream of
// random numbers of its own for each cause, so that one cause more or less changes no other. The package knows nothing of
// entries, crews or screens: package rehearse does.
package truth
