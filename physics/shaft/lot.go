package shaft

import (
	"errors"
	"math"

	"chargehand/physics"
)

// Lot is what a kilogram of something charged consists of and the room it takes. Make one with [CharcoalLot], [OreLot],
// [SlagLot] or [FragmentLot].
type Lot struct {
	perKg       [solidCount]float64 // mol/kg as charged
	fuelVolume  float64             // m3/kg
	stoneVolume float64             // m3/kg
	lump        float64             // m; 0 for what is not charcoal
}

// Portion is a mass in kg, as charged, of a lot.
type Portion struct {
	Lot  Lot
	Mass float64
}

// DefaultLump is the mean size of graded charcoal in m: graded 5-25 mm (DARC 9 Oct 2011,
// darkcompanyca.blogspot.com/2011/10/measuring-heat.html). Large, uneven lumps and uneven contact of gas act alike.
const DefaultLump = 0.017

// BedLump gives the size in m that a bed of charcoal acts by, from the mean size of its lumps. Gas meets large lumps as unevenly
// as small ones, and lumps shrink as they burn; so it lies half way, on a scale of ratios, towards [DefaultLump], which stands
// for both, and within 12 to 22 mm. Taken as it is, 30 mm would burn at 1690 C where nobody ever read more than 1450.
func BedLump(lump float64) float64 {
	const least, most = 0.012, 0.022
	return max(least, min(most, math.Sqrt(max(0, lump)*DefaultLump)))
}

// charcoalAsh is hardwood ash by mass (from memory, unverified; wood ash varies by a factor of two in each).
var charcoalAsh = physics.Oxides{SiO2: 0.25, Al2O3: 0.05, Fe2O3: 0.04, MnO: 0.02, MgO: 0.08, CaO: 0.40, K2O: 0.12, P2O5: 0.04}

// CharcoalLot describes a lot of charcoal; lump is its mean size in m (3 to 100 mm). Volatiles are what carbon and ash leave.
func CharcoalLot(c physics.Charcoal, bed physics.Bed, lump float64) (Lot, error) {
	if err := errors.Join(c.Validate(), bed.Validate(), physics.InRange("charcoal lump", lump, 0.003, 0.1)); err != nil {
		return Lot{}, err
	}
	dry := c.DryMass(1)
	lot := Lot{fuelVolume: dry / bed.CharcoalBulk, lump: lump}
	lot.perKg[solidC] = dry * c.Carbon / physics.MolarMassC
	lot.perKg[solidVolatiles] = dry * max(0, c.Volatiles()) / molarMassVM
	lot.perKg[solidWater] = (1 - dry) / physics.MolarMassH2O
	addOxides(&lot.perKg, charcoalAsh, dry*c.Ash/charcoalAsh.Sum())
	if lot.perKg[solidC] == 0 {
		return Lot{}, &physics.RangeError{Quantity: "charcoal carbon share", Value: c.Carbon, Low: 0.01, High: 1}
	}
	return lot, nil
}

// OreAssay is an ore as charged: its iron mineral and iron share of the dry mass, the other oxides as shares of the dry mass
// (iron oxides in it are ignored), calcite, and kg of water per kg dry. What an assay leaves open counts as four parts of
// silica and one of alumina, the usual gangue of bog ore (assumed).
type OreAssay struct {
	Mineral  physics.Mineral
	Iron     float64
	Others   physics.Oxides
	Calcite  float64
	Moisture float64
}

// errSiderite: the shaft has no iron carbonate; siderite is roasted before it is charged, to hematite.
var errSiderite = errors.New("physics: siderite is charged roasted, as hematite")

// OreLot describes a lot of ore. An assay with more iron than its mineral can hold, or of more than everything, is an error.
func OreLot(a OreAssay, bed physics.Bed) (Lot, error) {
	others := a.Others
	others.FeO, others.Fe2O3 = 0, 0
	if err := errors.Join(bed.Validate(), physics.CheckIronShare(a.Iron, a.Mineral), others.Validate(),
		physics.InRange("ore moisture", a.Moisture, 0, 2), physics.InRange("calcite share", a.Calcite, 0, 1)); err != nil {
		return Lot{}, err
	}
	if a.Mineral == physics.Siderite {
		return Lot{}, errSiderite
	}
	dry := 1 / (1 + a.Moisture)
	lot := Lot{stoneVolume: bed.OreShare * dry / bed.OreLump}
	iron := dry * a.Iron / physics.MolarMassFe // mol Fe per kg
	switch a.Mineral {
	case physics.Goethite:
		lot.perKg[solidFeOOH] = iron
	case physics.Hematite:
		lot.perKg[solidFe2O3] = iron / 2
	case physics.Magnetite:
		lot.perKg[solidFe3O4] = iron / 3
	default:
		lot.perKg[solidFeO] = iron
	}
	mineral := 0.0
	for i, moles := range lot.perKg {
		mineral += moles * solidMolarMass[i]
	}
	mineral /= dry
	open := 1 - mineral - others.Sum() - a.Calcite
	const assayError = 0.03
	if err := physics.InRange("sum of the assay", 1-open, 0, 1+assayError); err != nil {
		return Lot{}, err
	}
	known := 1.0
	if open < 0 {
		known = (1 - mineral) / (others.Sum() + a.Calcite) // small excess: the gangue gives way
		open = 0
	}
	addOxides(&lot.perKg, others, dry*known)
	lot.perKg[solidCaCO3] += dry * known * a.Calcite / molarMassCaCO3
	addOxides(&lot.perKg, physics.Oxides{SiO2: 0.8, Al2O3: 0.2}, dry*open)
	lot.perKg[solidWater] = (1 - dry) / physics.MolarMassH2O
	return lot, nil
}

// SlagLot describes slag put back into the furnace, dry; composition as shares of its mass, scaled to a sum of one.
func SlagLot(o physics.Oxides, bed physics.Bed) (Lot, error) {
	if err := errors.Join(bed.Validate(), o.Validate()); err != nil {
		return Lot{}, err
	}
	if err := physics.InRange("sum of the slag assay", o.Sum(), 0.5, 1.1); err != nil {
		return Lot{}, err
	}
	lot := Lot{stoneVolume: bed.OreShare / bed.OreLump}
	addOxides(&lot.perKg, o, 1/o.Sum())
	return lot, nil
}

// FragmentLot describes pieces of iron bloom charged again, taken as pure iron.
func FragmentLot(bed physics.Bed) (Lot, error) {
	if err := bed.Validate(); err != nil {
		return Lot{}, err
	}
	lot := Lot{stoneVolume: bed.OreShare / bed.OreLump}
	lot.perKg[solidFe] = 1 / physics.MolarMassFe
	return lot, nil
}
