package physics

import "math"

// molesOf gives mol of each oxide; phosphorus as half molecules, the convention of slag work.
func (o Oxides) molesOf() (m struct{ si, ti, al, fe2, fe3, mn, mg, ca, na, k, p float64 }) {
	m.si, m.ti, m.al = o.SiO2/MolarMassSiO2, o.TiO2/molarMassTiO2, o.Al2O3/MolarMassAl2O3
	m.fe2, m.fe3, m.mn = o.FeO/MolarMassFeO, o.Fe2O3/MolarMassFe2O3, o.MnO/MolarMassMnO
	m.mg, m.ca = o.MgO/MolarMassMgO, o.CaO/MolarMassCaO
	m.na, m.k, m.p = o.Na2O/molarMassNa2O, o.K2O/MolarMassK2O, o.P2O5/MolarMassP2O5
	return m
}

// ferrousTotal counts all iron as FeO, kg.
func (o Oxides) ferrousTotal() float64 { return o.FeO + o.Fe2O3*2*MolarMassFeO/MolarMassFe2O3 }

// ReducibleIron is 2.39 SiO2/FeO by mass, all iron counted as FeO: 1 when all FeO is bound as fayalite, above when the slag is
// poor in iron, below when free wustite is left. Charlton et al. 2010, J. Anthropol. Archaeol. 29:352 (from memory, unverified;
// authors differ over what stands below the line: see [Oxides.ReducibleIronIndex]). +Inf without iron.
func (o Oxides) ReducibleIron() float64 {
	return 2 * MolarMassFeO / MolarMassSiO2 * o.SiO2 / o.ferrousTotal()
}

// ReducibleIronIndex is the same with manganese counted as iron, 2.39 SiO2/(FeO+MnO). +Inf without iron or manganese.
func (o Oxides) ReducibleIronIndex() float64 {
	return 2 * MolarMassFeO / MolarMassSiO2 * o.SiO2 / (o.ferrousTotal() + o.MnO)
}

// ViscosityIndex is (CaO+MgO+FeO+MnO+Na2O+K2O)/(SiO2+Al2O3) by mass; fluid above 1. Bachmann 1982 (from memory, unverified).
func (o Oxides) ViscosityIndex() float64 {
	return (o.CaO + o.MgO + o.ferrousTotal() + o.MnO + o.Na2O + o.K2O) / (o.SiO2 + o.Al2O3)
}

// Density gives kg/m3 of the molten slag at a temperature in K: partial molar volumes of Mills & Keene 1987, Int. Mater. Rev.
// 32:1 (from memory), growing by 1e-4 per K; about 2 % for these slags.
func (o Oxides) Density(kelvin float64) float64 {
	m := o.molesOf()
	all := m.si + m.ti + m.al + m.fe2 + m.fe3 + m.mn + m.mg + m.ca + m.na + m.k + m.p
	if !(all > 0) {
		return math.NaN()
	}
	xSi, xAl := m.si/all, m.al/all
	volume := m.si*(19.55+7.966*xSi) + m.al*(28.3+32*xAl-31.45*xAl*xAl) + 15.8*m.fe2 + 15.6*m.mn + 20.7*m.ca + 16.1*m.mg +
		33*m.na + 51.8*m.k + 38.4*m.fe3 + 24*m.ti + 65.7*m.p // cm3
	return o.Sum() / (volume * 1e-6 * (1 + 1e-4*(kelvin-1773)))
}

// BathDepth gives how deep in m a bath of slag stands on a hearth of a diameter in m whose void is a share of its room (fines
// and charcoal take the rest).
func (o Oxides) BathDepth(kelvin, diameter, void float64) (float64, error) {
	for _, e := range []error{InRange("hearth diameter", diameter, 0.05, 2), InRange("void of the hearth", void, 0.05, 1)} {
		if e != nil {
			return 0, e
		}
	}
	if o.Sum() == 0 {
		return 0, nil
	}
	return o.Sum() / o.Density(kelvin) / (discArea(diameter) * void), nil
}

// WithIron gives the slag of a smelt: the gangue, ash, clay and flux that went in, with the iron (kg) that did not come out
// as metal kept as FeO.
func (o Oxides) WithIron(lost float64) Oxides {
	o.FeO += max(0, lost) * MolarMassFeO / MolarMassFe
	return o
}

// WithFerrous gives as much slag in which iron, all of it as FeO, is a share of the mass (0 to 1); the rest keeps its
// proportions. A slag of nothing but iron stays as it is.
func (o Oxides) WithFerrous(share float64) Oxides {
	sum := o.Sum()
	rest := o
	rest.FeO, rest.Fe2O3 = 0, 0
	if !(rest.Sum() > 0) {
		return o
	}
	rest = rest.Scale((1 - share) * sum / rest.Sum())
	rest.FeO = share * sum
	return rest
}

// FerrousShare gives the iron of the slag, all of it counted as FeO, as a share of the mass.
func (o Oxides) FerrousShare() float64 {
	if sum := o.ferrousTotal() - o.FeO - o.Fe2O3 + o.Sum(); sum > 0 { // ferric iron weighs less as FeO
		return o.ferrousTotal() / sum
	}
	return 0
}
