package solve

import (
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Slag that was left in was not weighed: it is taken to fill so much of the room below the
// tuyere, and that to be so deep where it was not measured, m (both a guess).
const (
	leftSlagFills = 1.0 / 3
	usualBase     = 0.15
)

// leftSlag is what it is made of where nobody had it assayed: the usual slag of this trade,
// between fayalite and that with iron oxide beside it (common practice).
var leftSlag = physics.Oxides{FeO: 0.60, SiO2: 0.28, Al2O3: 0.07, CaO: 0.05}

// leftIn is what lies on the hearth of a furnace that is lit again. Of a bloom nobody knows
// what it weighs; the shaft goes by none of its iron.
func (a lit) leftIn() ([]shaft.Portion, error) {
	if !a.again.slag {
		return nil, nil
	}
	lot, err := shaft.SlagLot(leftSlag, physics.DefaultBed())
	if err != nil {
		return nil, err
	}
	base := a.again.base
	if base == 0 {
		base = usualBase
	}
	one, err := leftSlag.BathDepth(physics.FromCelsius(1200), a.geometry.Bore.Bottom, hearthVoid) // of a kilogram
	if err != nil {
		return nil, err
	}
	return []shaft.Portion{{Lot: lot, Mass: base * leftSlagFills / one}}, nil
}
