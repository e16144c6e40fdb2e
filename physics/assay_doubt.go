package physics

import "math"

// AssayDoubt is why an assay may be wrong, or says less than it seems to. Part names the substance; Stated and Other are in per
// cent, with a meaning by kind.
type AssayDoubt struct {
	Kind          AssayDoubtKind
	Part          string
	Stated, Other float64
}

// AssayDoubtKind says what is doubted.
type AssayDoubtKind int

// The doubts, with what Stated and Other are.
const (
	NoShare            AssayDoubtKind = iota // less than nothing or more than all: the share
	IronImpossible                           // more than any mineral of the material holds: iron, the most; Part the mineral
	IronOrOxide                              // iron is stated alone: iron, and what it were if Fe2O3 was meant (FeO in a slag)
	IronNeedsMagnetite                       // more than hematite holds: iron, the most
	IronNeedsRoast                           // more than goethite holds, of ore as dug or dried: iron, the most
	IronDisagrees                            // iron stated beside oxides that hold another amount: the two
	IronTheRestFerric                        // iron beyond what FeO holds was taken for Fe2O3: iron stated, the Fe2O3
	SumByDifference                          // a sum so near 100 that a column was taken by difference: the sum
	SumNormalised                            // made to add up: the sum, which checks nothing
	SumLacksLoss                             // too little, and no loss on ignition is stated: the sum, what lacks
	SumLacksOxygen                           // too little, and iron is all FeO that may be partly Fe2O3: the sum, what lacks
	SumLacksOxides                           // too little otherwise
	SumIronTwice                             // too much, and FeO and Fe2O3 hold the same iron: the sum
	SumOxygenCounted                         // too much, by the oxygen FeO took up beside a loss: the sum, without it
	SumFerric                                // too much, and iron written as Fe2O3 may be partly FeO: the sum, what is over
	SumTooMuch                               // too much otherwise
	LossUnknown                              // of normalised shares: iron, and what it is at a loss of 14 %
	SilicaUnknown                            // without silica neither melting nor iron to be had can be told
	SlagTakesAll                             // the ore's own silica takes its iron even at an index of 2: iron, what is taken
	SpinelMeltsLast                          // where the slag melts is not known: its alumina
)

// Doubts gives what is doubtful about an assay, the worst first. Source of the limits of a sum: common practice of
// laboratories, 98 to 102.
func (a Assay) Doubts() []AssayDoubt {
	var ds []AssayDoubt
	for _, p := range assayParts {
		if v, ok := a.Parts[p.name]; ok && (v < 0 || v > 100) {
			ds = append(ds, AssayDoubt{Kind: NoShare, Part: p.name, Stated: v})
		}
	}
	ds = append(ds, a.ironDoubts()...)
	if d, ok := a.sumDoubt(); ok {
		ds = append(ds, d)
	}
	if iron, known := a.Iron(); known && a.Basis == Normalised && !a.LossKnown && !a.Slag {
		ds = append(ds, AssayDoubt{Kind: LossUnknown, Stated: iron, Other: iron * 0.86})
	}
	switch iron, known := a.Iron(); {
	case !a.knowsSilica():
		ds = append(ds, AssayDoubt{Kind: SilicaUnknown})
	case a.Slag && a.Oxides().SpinelLast():
		ds = append(ds, AssayDoubt{Kind: SpinelMeltsLast, Stated: a.Parts["Al2O3"]})
	case !a.Slag && known && !a.impossible():
		if takes := a.boundIron(poorestSlag) + ironBoundBy(WallAndAshSilica, poorestSlag); iron <= takes {
			ds = append(ds, AssayDoubt{Kind: SlagTakesAll, Stated: iron, Other: takes})
		}
	}
	return ds
}

func (a Assay) ironDoubts() (ds []AssayDoubt) {
	iron, known := a.Iron()
	if !known {
		return nil
	}
	const slack = 100 * roundingSlack
	fe, stated := a.Parts["Fe"]
	most := math.Max(iron, fe)
	goethite, hematite := 100*Goethite.IronShare(), 100*Hematite.IronShare()
	_, ferrous := a.Parts["FeO"]
	_, magnetite := a.Parts["Fe3O4"]
	switch ceiling := a.CeilingOfIron(); {
	case most > ceiling+slack:
		part := "Fe3O4"
		if a.Slag {
			part = "FeO"
		}
		ds = append(ds, AssayDoubt{IronImpossible, part, most, ceiling})
	case a.Slag:
	case most > hematite+slack && !ferrous && !magnetite:
		ds = append(ds, AssayDoubt{Kind: IronNeedsMagnetite, Stated: most, Other: hematite})
	case most > goethite+slack && most <= hematite+slack && (a.Basis == Dug || a.LossKnown && a.Basis == Dried && a.Loss > 5):
		ds = append(ds, AssayDoubt{Kind: IronNeedsRoast, Stated: most, Other: goethite})
	}
	switch ofOxides := a.ironOfOxides(); {
	case !stated:
	case !a.hasOxideOfIron():
		as := hematite
		if a.Slag {
			as = 100 * Wustite.IronShare()
		}
		ds = append(ds, AssayDoubt{Kind: IronOrOxide, Stated: fe, Other: fe * as / 100})
	case fe-ofOxides > ironTolerance && !a.has(func(p assayPart) bool { return p.beyondFeO }):
		ds = append(ds, AssayDoubt{Kind: IronTheRestFerric, Stated: fe, Other: (fe - ofOxides) / Hematite.IronShare()})
	case math.Abs(fe-ofOxides) > ironTolerance:
		ds = append(ds, AssayDoubt{Kind: IronDisagrees, Stated: fe, Other: ofOxides})
	}
	return ds
}

const (
	// ironTolerance is how far the iron stated and that of the oxides may lie apart, per cent: ten printed slags agree within
	// 0.15, two that miss by 0.8 and 1.3 hold slips (Freiberger Forschungshefte D 6, table 2).
	ironTolerance = 0.25

	sumLeast, sumMost = 98.0, 102.0
	byDifference      = 0.1
)

// sumDoubt looks at the sum.
func (a Assay) sumDoubt() (AssayDoubt, bool) {
	sum, known := a.Sum()
	if !known {
		return AssayDoubt{}, false
	}
	stated := a.stated()
	if a.Basis == Normalised {
		return AssayDoubt{Kind: SumNormalised, Stated: stated}, math.Abs(stated-100) <= 1
	}
	for _, s := range []float64{stated, sum} {
		if math.Abs(s-100) <= byDifference+1e-9 {
			return AssayDoubt{Kind: SumByDifference, Stated: s}, true
		}
	}
	switch {
	case sum < sumLeast:
		return a.sumLacks(sum), true
	case sum > sumMost:
		return a.sumOver(sum, stated), true
	}
	return AssayDoubt{}, false
}

func (a Assay) sumLacks(sum float64) AssayDoubt {
	lacks := 100 - sum
	d := AssayDoubt{Kind: SumLacksOxides, Stated: sum, Other: lacks}
	_, ferric := a.Parts["Fe2O3"]
	loss := a.LossKnown || a.has(func(p assayPart) bool { return p.loss })
	const mostLoss = 45 // of siderite with clay and peat
	switch {
	case !a.knowsSilica():
	case !a.Slag && !loss && a.Basis != Ignited && lacks <= mostLoss:
		d.Kind = SumLacksLoss
	case !ferric && a.ferrous() > 0 && !a.counts() && lacks <= oxygenTaken*a.ferrous()+100-sumLeast:
		d.Kind = SumLacksOxygen
	}
	return d
}

func (a Assay) sumOver(sum, stated float64) AssayDoubt {
	over := sum - 100
	d := AssayDoubt{Kind: SumTooMuch, Stated: sum, Other: over}
	ferric := math.Max(0, a.Parts["Fe2O3"])
	asFerrous := ferric * 2 * MolarMassFeO / MolarMassFe2O3
	switch f := a.ferrous(); {
	case f > 5 && math.Abs(asFerrous-f) <= 0.03*f:
		d.Kind = SumIronTwice
	case stated <= sumMost && sum > stated:
		d.Kind, d.Other = SumOxygenCounted, stated
	case ferric > 0 && over <= ferric-asFerrous+sumMost-100:
		d.Kind = SumFerric
	}
	return d
}
