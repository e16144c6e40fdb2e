package physics

import "math"

// urbain are the coefficients of one branch of the modified Urbain model.
type urbain struct{ b, c [4]float64 }

// Coefficients of Urbain 1987 (Steel Research 58:111) in the form of Mills 2011 (The estimation of slag properties, Southern
// African Pyrometallurgy) and the Slag Atlas, 2nd edition 1995; for magnesium one of two transcriptions was chosen.
var (
	urbainA  = [4]float64{13.2, 30.5, -40.4, 60.8}
	urbainCa = urbain{[4]float64{41.5, -117.2, 232.1, -156.4}, [4]float64{-45, 130, -298.6, 213.6}}
	urbainMg = urbain{[4]float64{15.9, -54.1, 138, -99.8}, [4]float64{-18.6, 33, -112, 97.6}}
	urbainMn = urbain{[4]float64{20, 26, -110.3, 64.3}, [4]float64{-25.6, -56, 186.2, -104.6}}
)

func (u urbain) at(alpha, silica float64) (sum float64) {
	power := 1.0
	for i := range urbainA {
		sum += (urbainA[i] + u.b[i]*alpha + u.c[i]*alpha*alpha) * power
		power *= silica
	}
	return sum
}

// slagViscositySpread: models of slags rich in FeO differ five- to eightfold and no measured table of bloomery slag was
// opened; of the four compared this one meets the order of molten fayalite. A factor of two either way, and never more digits.
const slagViscositySpread = 2

// Viscosity gives the viscosity in Pa s of the slag at a temperature in K, as if all molten: the modified Urbain model, with
// a band of a factor of two. Below the liquidus see [Oxides.Stiffness].
func (o Oxides) Viscosity(kelvin float64) Band {
	m := o.molesOf()
	glass := m.si + m.p
	modifier := m.fe2 + m.ca + m.mg + m.mn + m.na + m.k + 2*m.ti + 0.6*m.fe3
	amphoteric := m.al + 0.4*m.fe3
	all := glass + modifier + amphoteric
	if !(all > 0) || !(modifier > 0) || !(kelvin > 0) {
		return Band{}
	}
	glass, modifier, amphoteric = glass/all, modifier/all, amphoteric/all
	alpha := modifier / (modifier + amphoteric)
	lime, magnesia, manganous := m.ca+m.na+m.k, m.mg, m.fe2+m.mn+0.6*m.fe3
	b := (lime*urbainCa.at(alpha, glass) + magnesia*urbainMg.at(alpha, glass) + manganous*urbainMn.at(alpha, glass)) /
		(lime + magnesia + manganous)
	eta := 0.1 * math.Exp(-(0.29*b + 11.57)) * kelvin * math.Exp(1000*b/kelvin)
	return Band{P10: eta / slagViscositySpread, P50: eta, P90: eta * slagViscositySpread}
}

// Stiffness is the viscosity with crystals in it: below the liquidus a share of the slag is solid, and eta grows by
// (1 - 1.35 share)^-2.5 (Einstein & Roscoe 1952, constant from memory). The share is taken to grow evenly over the 150 K
// below the liquidus (a guess: from fayalite's melting to the lowest ternary points), to at most 0.7, where it stands still.
func (o Oxides) Stiffness(kelvin float64) Band {
	const freezing, most = 150.0, 0.7
	thicken := func(liquidus float64) float64 {
		share := min(most, max(0, (liquidus-kelvin)/freezing))
		return math.Pow(1-1.35*share, -2.5)
	}
	melt, liquidus := o.Viscosity(kelvin), o.Liquidus()
	return Band{P10: melt.P10 * thicken(liquidus.P10), P50: melt.P50 * thicken(liquidus.P50), P90: melt.P90 * thicken(liquidus.P90)}
}

// ClayMeltViscosity gives the viscosity in Pa s of a melt poor in iron (clay worn from the wall, glassy slag), with waterShare
// kg of water per kg: Giordano, Russell & Dingwell 2008, Earth Planet. Sci. Lett. 271:123. For slags with more than about 20 %
// FeO it reads 30 to 50 times too high: use [Oxides.Viscosity].
func (o Oxides) ClayMeltViscosity(kelvin, waterShare float64) float64 {
	m := o.molesOf()
	dry := o.Sum()
	fe, p := m.fe2+2*m.fe3, m.p
	water := 0.0
	if waterShare > 0 {
		water = waterShare / (1 - waterShare) * dry / MolarMassH2O
	}
	percent := 100 / (m.si + m.ti + m.al + fe + m.mn + m.mg + m.ca + m.na + m.k + p + water)
	si, ti, al, mn, mg, ca := m.si*percent, m.ti*percent, m.al*percent, m.mn*percent, m.mg*percent, m.ca*percent
	na, k, v := m.na*percent, m.k*percent, water*percent
	fe, p = fe*percent, p*percent
	ln := math.Log(1 + v)
	b := 159.56*(si+ti) - 173.34*al + 72.13*(fe+mn+p) + 75.69*mg - 38.98*ca - 84.08*(na+v) + 141.54*(v+ln) -
		2.43*(si+ti)*(fe+mn+mg) - 0.91*(si+ti+al+p)*(na+k+v) + 17.62*al*(na+k)
	c := 2.75*si + 15.72*(ti+al) + 8.32*(fe+mn+mg) + 10.20*ca - 12.29*(na+k) - 99.54*ln + 0.30*(al+fe+mn+mg+ca-p)*(na+k+v)
	return math.Pow(10, -4.55+b/(kelvin-c))
}
