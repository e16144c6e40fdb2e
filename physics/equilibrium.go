package physics

import "math"

// Bar in Pa: the standard pressure of all the thermochemical data.
const Bar = 1e5

// equilibriumConstant gives exp(-dG/RT) of a reaction from the Gibbs energies of its two sides in J/mol.
func equilibriumConstant(kelvin, products, reactants float64) float64 {
	return math.Exp((reactants - products) / (GasConstant * kelvin))
}

// BoudouardConstant gives pCO^2/pCO2 in bar for C + CO2 = 2 CO over graphite. Charcoal is somewhat less stable than
// graphite, by an amount that depends on how it was burned and that no source here states; it is taken as graphite.
func BoudouardConstant(kelvin float64) float64 {
	return equilibriumConstant(kelvin, 2*SpeciesCO.Gibbs(kelvin), SpeciesC.Gibbs(kelvin)+SpeciesCO2.Gibbs(kelvin))
}

// WaterGasConstant gives pCO2 pH2/(pCO pH2O) for CO + H2O = CO2 + H2.
func WaterGasConstant(kelvin float64) float64 {
	return equilibriumConstant(kelvin, SpeciesCO2.Gibbs(kelvin)+SpeciesH2.Gibbs(kelvin),
		SpeciesCO.Gibbs(kelvin)+SpeciesSteam.Gibbs(kelvin))
}

// SteamCarbonConstant gives pCO pH2/pH2O in bar for C + H2O = CO + H2.
func SteamCarbonConstant(kelvin float64) float64 {
	return BoudouardConstant(kelvin) * WaterGasConstant(kelvin)
}

// CalcinationPressure gives the pressure of CO2 in Pa over calcite and lime.
func CalcinationPressure(kelvin float64) float64 {
	return Bar * equilibriumConstant(kelvin, SpeciesCaO.Gibbs(kelvin)+SpeciesCO2.Gibbs(kelvin), SpeciesCaCO3.Gibbs(kelvin))
}

// OxideBoundary is a line between two stages of reduction: above its share of CO (or of hydrogen) the lower oxide or the
// metal is stable.
type OxideBoundary int

// The boundaries. Below the triple point near 570 C wustite does not exist and magnetite goes to iron directly.
// FayaliteIron is iron oxide bound in slag: fayalite to iron and quartz.
const (
	HematiteMagnetite OxideBoundary = iota
	MagnetiteWustite
	WustiteIron
	MagnetiteIron
	FayaliteIron
)

// oxygenBuffers are lines log10(fO2/bar) = a/T + b. Frost 1991, Rev. Mineral. 25:1 (coefficients from memory; the first three
// lines meet at 569-570 C as they must). Buffers and not Gibbs energies of the oxides, because the tables carry wustite as
// fixed Fe0.947O: real wustite takes up oxygen, and the fixed one puts the triple point at 595 C and the magnetite line ten
// points of CO too high at 1000 C. The last row is the quartz-iron-fayalite buffer (same source, from memory, unverified).
var oxygenBuffers = [...]struct{ a, b float64 }{
	HematiteMagnetite: {-25700.6, 14.558},
	MagnetiteWustite:  {-32807, 13.012},
	WustiteIron:       {-27489, 6.702},
	MagnetiteIron:     {-28690.6, 8.13},
	FayaliteIron:      {-29435.7, 7.391},
}

// OxygenPressure gives the pressure of oxygen in Pa on the boundary.
func (b OxideBoundary) OxygenPressure(kelvin float64) float64 {
	return Bar * math.Pow(10, oxygenBuffers[b].a/kelvin+oxygenBuffers[b].b)
}

// CO gives the share CO/(CO+CO2) on the boundary.
func (b OxideBoundary) CO(kelvin float64) float64 {
	burned := equilibriumConstant(kelvin, SpeciesCO2.Gibbs(kelvin), SpeciesCO.Gibbs(kelvin)+SpeciesO2.Gibbs(kelvin)/2)
	return 1 / (1 + burned*math.Sqrt(b.OxygenPressure(kelvin)/Bar))
}

// H2 gives the share H2/(H2+H2O) on the boundary.
func (b OxideBoundary) H2(kelvin float64) float64 {
	burned := equilibriumConstant(kelvin, SpeciesSteam.Gibbs(kelvin), SpeciesH2.Gibbs(kelvin)+SpeciesO2.Gibbs(kelvin)/2)
	return 1 / (1 + burned*math.Sqrt(b.OxygenPressure(kelvin)/Bar))
}

// WustiteTriplePoint gives the temperature in K at which magnetite, wustite and iron meet.
func WustiteTriplePoint() float64 {
	m, w := oxygenBuffers[MagnetiteWustite], oxygenBuffers[WustiteIron]
	return (w.a - m.a) / (m.b - w.b)
}

// CarbonActivity gives the activity of carbon (graphite = 1) that a gas of the given pressures of CO and CO2, in Pa, imposes
// on iron; +Inf without CO2.
func CarbonActivity(kelvin, carbonMonoxide, carbonDioxide float64) float64 {
	co := carbonMonoxide / Bar
	return co * co / (carbonDioxide / Bar) / BoudouardConstant(kelvin)
}

// AusteniteCarbon gives the mass share of carbon in austenite at an activity (graphite = 1), 0.70 to 1.15 of the way from
// 738 to 1153 C being its range; above activity 1 graphite or liquid forms and the value at 1 is given. Ban-ya, Elliott &
// Chipman 1970, Metall. Trans. 1:1313 (form from memory; it returns 2.08 % at 1153 C and 0.68 % at 738 C, the accepted
// points of graphite-saturated austenite).
func AusteniteCarbon(kelvin, activity float64) float64 {
	if !(activity > 0) {
		return 0
	}
	// log10(y/(1-y)) + slope y = level, y carbon atoms per iron atom; Newton from above, where it cannot overshoot below zero.
	slope := 3860 / kelvin
	level := math.Log10(math.Min(activity, 1)) - 2300/kelvin + 0.92
	y := math.Pow(10, level)
	y /= 1 + y
	for range 30 {
		next := y - (math.Log10(y/(1-y))+slope*y-level)/(1/(math.Ln10*y*(1-y))+slope)
		if next <= 0 {
			next = y / 2
		}
		if math.Abs(next-y) < 1e-13 {
			break
		}
		y = next
	}
	return y * MolarMassC / (y*MolarMassC + MolarMassFe)
}
