package shaft

import "chargehand/physics"

// addOxides books oxides times a factor as solids of the shaft, mol. Soda goes with potash and titania with silica, mass for
// mass: both are traces in this trade.
func addOxides(n *[solidCount]float64, o physics.Oxides, factor float64) {
	n[solidSiO2] += factor * (o.SiO2 + o.TiO2) / physics.MolarMassSiO2
	n[solidAl2O3] += factor * o.Al2O3 / physics.MolarMassAl2O3
	n[solidFeO] += factor * o.FeO / physics.MolarMassFeO
	n[solidFe2O3] += factor * o.Fe2O3 / physics.MolarMassFe2O3
	n[solidMnO] += factor * o.MnO / physics.MolarMassMnO
	n[solidMgO] += factor * o.MgO / physics.MolarMassMgO
	n[solidCaO] += factor * o.CaO / physics.MolarMassCaO
	n[solidK2O] += factor * (o.K2O + o.Na2O) / physics.MolarMassK2O
	n[solidP2O5] += factor * o.P2O5 / physics.MolarMassP2O5
}

// oxidesOf gives the slag makers among solids, kg; magnetite as its two halves.
func oxidesOf(n *[solidCount]float64) physics.Oxides {
	return physics.Oxides{
		SiO2: n[solidSiO2] * physics.MolarMassSiO2, Al2O3: n[solidAl2O3] * physics.MolarMassAl2O3,
		FeO: (n[solidFeO] + n[solidFe3O4]) * physics.MolarMassFeO, Fe2O3: n[solidFe3O4] * physics.MolarMassFe2O3,
		MnO: n[solidMnO] * physics.MolarMassMnO, MgO: n[solidMgO] * physics.MolarMassMgO, CaO: n[solidCaO] * physics.MolarMassCaO,
		K2O: n[solidK2O] * physics.MolarMassK2O, P2O5: n[solidP2O5] * physics.MolarMassP2O5,
	}
}
