// Package physics holds what is known about a small charcoal furnace that does not depend on any one smelt: the air that
// goes in, the charcoal it burns, the ore, the room a charge takes in the shaft, and how far each figure can be trusted.
//
// Everything goes in and comes out in SI units (kg, m, s, K, Pa, mol) and as values; shares are fractions, never per cent.
// Nothing here reads a clock, a file or a setting. The functions that take a figure somebody typed return a [RangeError]
// when it cannot be right; the few that cannot fail say in their comment what they give for nonsense. None panics.
//
// The map, one thing to a file:
//
//	units.go     constants, molar masses, conversions at the edge of the program, RangeError
//	air.go       moist air, altitude, and what a metered litre a minute is in moles
//	charcoal.go  charcoal as fired, and the carbon a flow of air can burn at least and at most
//	ore.go       iron and oxygen in the minerals, roasting, whether an assay can be true
//	bed.go       the room charcoal and ore take in a straight or tapered bore
//	band.go      a figure with its 10th, 50th and 90th percentile, and arithmetic on it
//	level.go     the stack-height estimator
//	meter.go     carbon burned against the most the metered air allows
//
//	thermo.go, equilibrium.go  thermochemistry
//	ergun.go     what a bed and a tuyere hold against the blast
//	slag.go      oxides, and how their slag melts and runs
//	bloom.go     what a bloom is and may weigh
//
// The transient solver of the shaft is package shaft, below this one.
package physics
