package physics

import "errors"

// Oxides is a slag, a gangue or an ash: kg of each oxide, or shares of a mass. Fe2O3 is ferric iron.
type Oxides struct {
	SiO2, TiO2, Al2O3, FeO, Fe2O3, MnO, MgO, CaO, Na2O, K2O, P2O5 float64
}

const (
	molarMassTiO2 = 47.867e-3 + 2*MolarMassO      // titanium 47.867, IUPAC 2021
	molarMassNa2O = 2*22.98976928e-3 + MolarMassO // sodium, IUPAC 2021
)

// Sum gives all oxides together.
func (o Oxides) Sum() float64 {
	return o.SiO2 + o.TiO2 + o.Al2O3 + o.FeO + o.Fe2O3 + o.MnO + o.MgO + o.CaO + o.Na2O + o.K2O + o.P2O5
}

// Scale gives every oxide times a factor.
func (o Oxides) Scale(by float64) Oxides {
	return Oxides{o.SiO2 * by, o.TiO2 * by, o.Al2O3 * by, o.FeO * by, o.Fe2O3 * by, o.MnO * by, o.MgO * by, o.CaO * by,
		o.Na2O * by, o.K2O * by, o.P2O5 * by}
}

// Plus gives two lots together.
func (o Oxides) Plus(p Oxides) Oxides {
	return Oxides{o.SiO2 + p.SiO2, o.TiO2 + p.TiO2, o.Al2O3 + p.Al2O3, o.FeO + p.FeO, o.Fe2O3 + p.Fe2O3, o.MnO + p.MnO,
		o.MgO + p.MgO, o.CaO + p.CaO, o.Na2O + p.Na2O, o.K2O + p.K2O, o.P2O5 + p.P2O5}
}

// Validate returns a *RangeError for a negative or undefined amount.
func (o Oxides) Validate() error {
	const most = 1e4 // kg
	return errors.Join(
		InRange("SiO2", o.SiO2, 0, most), InRange("TiO2", o.TiO2, 0, most), InRange("Al2O3", o.Al2O3, 0, most),
		InRange("FeO", o.FeO, 0, most), InRange("Fe2O3", o.Fe2O3, 0, most), InRange("MnO", o.MnO, 0, most),
		InRange("MgO", o.MgO, 0, most), InRange("CaO", o.CaO, 0, most), InRange("Na2O", o.Na2O, 0, most),
		InRange("K2O", o.K2O, 0, most), InRange("P2O5", o.P2O5, 0, most))
}
