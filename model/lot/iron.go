package lot

import (
	"chargehand/model/account"
	"chargehand/model/doubt"
	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/ore"
	"chargehand/physics"
)

// SlagOfBloom is the slag to expect for each kg of bloom at the yields to expect, kg (2 to
// 7 at published smelts).
var SlagOfBloom = physics.Band{P10: 2, P50: 4, P90: 7}

// silica is the share of it in ore that was not assayed, and boundOf the share of iron that
// it takes into a slag of fayalite: 2 Fe for each SiO2 (assumed, 8 %).
const silica = 0.08

var boundOf = 2 * physics.MolarMassFe / physics.MolarMassSiO2 * silica

// Share is a share of a lot's dry mass and what it rests on.
type Share struct {
	physics.Band
	Basis entry.Basis
}

// assay is the one that counts.
func assay(l house.Lot) (entry.Assay, bool) {
	if n := len(l.Assays); n > 0 {
		return l.Assays[n-1], true
	}
	return entry.Assay{}, false
}

// IronShare is the iron in a lot of ore, as a share of its dry mass: by its last assay,
// else as its description says, else what is usual, moved by its signs.
func IronShare(l house.Lot) Share {
	if a, any := assay(l); any {
		iron := account.OfDry(a, l.Moisture).Iron
		if p := doubt.AssayOf(a, false); iron.Known() && iron.Value*100 <= p.CeilingOfIron() {
			return Share{iron.Band(), entry.BasisMeasured}
		}
	}
	if l.Iron.Known {
		return Share{physics.Normal(float64(l.Iron.Value), 0.03), entry.BasisEstimated}
	}
	return Share{ore.Iron(l.Roasted(), l.Signs), entry.BasisAssumed}
}

// Iron is the iron in what is left of a lot by its last assay, kg; zero where one of the
// two is not known.
func Iron(l house.Lot) physics.Band {
	if s := IronShare(l); s.Basis == entry.BasisMeasured && l.Left.Known() && l.Left.Kg > 0 {
		return s.Band.Times(physics.LogNormal(l.Left.Kg, l.Left.SD/l.Left.Kg))
	}
	return physics.Band{}
}

// ToBeHad is the iron that a lot of ore can give up, as a share of its dry mass, after its
// silica has taken its part into the slag and before wall and ash have.
func ToBeHad(l house.Lot) Share {
	iron := IronShare(l)
	if a, any := assay(l); any && iron.Basis == entry.BasisMeasured {
		if b, ok := doubt.AssayOf(a, false).IronToBeHad(); ok {
			return Share{b.Scale(0.01), entry.BasisEstimated}
		}
	}
	had := func(v float64) float64 { return max(v-boundOf, 0) }
	return Share{physics.Band{P10: had(iron.P10), P50: had(iron.P50), P90: had(iron.P90)}, entry.BasisGuessed}
}

// CannotPay is what an ore holds and what its own slag, wall and ash take even where the slag
// is poor in iron, per cent, where its assay says that it cannot pay for its own slag.
func CannotPay(l house.Lot) (holds, takes float64, so bool) {
	a, any := assay(l)
	if !any {
		return 0, 0, false
	}
	for _, d := range doubt.AssayOf(a, false).Doubts() {
		if d.Kind == physics.SlagTakesAll {
			return d.Stated, d.Other, true
		}
	}
	return 0, 0, false
}

// DampFrom is from how much water on, as a share of its weight, ore that is to be charged is
// told to be dried first: it steams in the shaft (assumed; air-dry roasted ore holds less).
const DampFrom = 0.05

// DampToCharge tells whether roasted ore has become so wet that it is not charged like that.
func DampToCharge(l house.Lot) bool {
	return l.Of() == entry.LotOre && l.Roasted() && l.Moisture.Known && OfWeight(l.Moisture.Value) > DampFrom
}
