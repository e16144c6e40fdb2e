package account

import (
	"math"

	"chargehand/physics"
)

// What is assumed where nothing was measured. A band is taken for the 10th to
// the 90th percentile of a normal one.
var (
	// slagIron and slagSilica are of slag nobody assayed: mean and spread of the
	// 13 old slags of testdata/account/balance.csv (B4, sachsen.digital 30824).
	slagIron, slagSilica = Taken(0.447, 0.077), Taken(0.236, 0.059)
	// seedIron is slag picked for its iron, 50 % (assumed with the worked example
	// B7 of the same table).
	seedIron = between(0.42, 0.50, 0.58)
	// metalShare is the metal of a bloom: 0.6 to 0.9 by the density of published
	// blooms. Fragments carry more slag (assumed).
	metalShare    = between(0.6, 0.75, 0.9)
	fragmentShare = between(0.45, 0.65, 0.85)
	// wallSilica is a clay wall, 65 % (assumed with the worked example B3);
	// ashSilica that of wood ash with the sand it holds (assumed).
	wallSilica, ashSilica = between(0.55, 0.65, 0.75), between(0.05, 0.20, 0.35)
	// ashShare of dry charcoal: published 1.5 to 5 %.
	ashShare = between(0.015, physics.DefaultAshShare, 0.045)
	// carbonShare of dry charcoal, as the burn rate has it.
	carbonShare = Taken(physics.DefaultCarbonShare, physics.CarbonShareSD)
)

// How well a thing is measured where nobody said.
const (
	scaleRel = 0.02 // a hanging or kitchen scale outdoors (common practice)
	assaySD  = 0.02 // of an assay given without its error, in parts of the whole (assumed)
	// metalSampleSD is how well the metal of a corner is that of a bloom (assumed).
	metalSampleSD = 0.07
)

func between(p10, p50, p90 float64) Amount { return Taken(p50, (p90-p10)/(2*physics.Z90)) }

// Densities in kg/m3: pure iron, and the slag of these furnaces (fayalite about
// 4300, from memory; 3600 where it holds much glass and silica).
const (
	ironDensity                = 7870
	slagLightest, slagHeaviest = 3600, 4300
)

// How much of a piece is pores: up to a fifth of a sponge weighed as it is; of
// one soaked before it was weighed in water only the shut ones are left
// (both assumed).
const (
	mostPores       = 0.20
	mostPoresSoaked = 0.05
)

// MetalByDensity is the metal share of a piece weighed in air and, hung, in
// water (kg), soaked beforehand or not: a wide band, for nobody sees the pores.
// It never counts as measured. Not known where the weights cannot be.
//
// The share of slag by mass is (1/d - 1/iron)/(1/slag - 1/iron), with d the
// density without pores.
func MetalByDensity(air, water float64, soaked bool) Amount {
	if !(air > 0) || !(water > 0) || water >= air {
		return Amount{}
	}
	const waterDensity = 1000
	apparent := waterDensity * air / (air - water)
	if apparent > ironDensity*1.02 { // heavier than iron by more than the scale explains
		return Amount{}
	}
	most := mostPores
	if soaked {
		most = mostPoresSoaked
	}
	low := 1 - SlagShare(apparent, 0, slagHeaviest)
	high := 1 - SlagShare(apparent, most, slagLightest)
	return between(low, (low+high)/2, high)
}

// SlagByDensity is what of a piece is slag by its weights in air and in water.
func SlagByDensity(air, water float64, soaked bool) Share {
	return slagBeside(MetalByDensity(air, water, soaked))
}

// SlagShare is the share of slag by mass in a piece of iron and slag: its
// density (kg/m3) as measured, the share of pores in its volume, and the
// density of the slag. Between nought and one.
func SlagShare(density, pores, slag float64) float64 {
	d := density / (1 - pores)
	share := (1/d - 1.0/ironDensity) / (1/slag - 1.0/ironDensity)
	return math.Max(0, math.Min(1, share))
}

// The most iron that an ore, and a slag, can hold.
var richestOre, richestSlag = physics.Magnetite.IronShare(), physics.Wustite.IronShare()
