package physics

import (
	"errors"
	"math"
)

// FlameFeed is what goes into an adiabatic flame: atoms in mol, their enthalpy in J (absolute, as [Species.Enthalpy]), and
// the pressure in Pa. Argon counts apart from nitrogen because its heat capacity is a third lower.
type FlameFeed struct {
	C, H, O, N, Ar float64
	Enthalpy       float64
	Pressure       float64
}

// Flame is a gas in equilibrium: temperature in K, gas species in mol, and carbon left over as a solid.
type Flame struct {
	Temperature                      float64
	CO, CO2, H2, H2O, OH, O2, N2, Ar float64
	SolidCarbon                      float64
}

// argonInDryAir is the mole fraction of argon in dry air (US Standard Atmosphere 1976; the remainder beside oxygen and
// argon is taken as nitrogen).
const argonInDryAir = 0.00934

// errFlame: no temperature between 250 and 4000 K holds the enthalpy.
var errFlame = errors.New("physics: flame feed outside 250 to 4000 K")

// BlastFeed gives the feed of a blast of the given temperature in K burning carbon (mol per second beside the blast's mol/s)
// that arrives at carbonTemperature.
func BlastFeed(blast AirFlow, blastTemperature, carbon, carbonTemperature float64) FlameFeed {
	argon := blast.N2 * argonInDryAir / (1 - DryAirO2)
	nitrogen := blast.N2 - argon
	return FlameFeed{
		C: carbon, H: 2 * blast.H2O, O: 2*blast.O2 + blast.H2O, N: 2 * nitrogen, Ar: argon,
		Enthalpy: carbon*SpeciesC.Enthalpy(carbonTemperature) + blast.O2*SpeciesO2.Enthalpy(blastTemperature) +
			nitrogen*SpeciesN2.Enthalpy(blastTemperature) + argon*SpeciesAr.Enthalpy(blastTemperature) +
			blast.H2O*SpeciesSteam.Enthalpy(blastTemperature),
		Pressure: StandardPressure,
	}
}

// Adiabatic gives the flame of the feed at full equilibrium between CO, CO2, H2, H2O, OH, O2, inert gas and solid carbon.
// The atoms O and H and nitric oxide are left out: at the hottest flame here, 2070 C, that reads 12 K high against
// NASA CEA2.
func (f FlameFeed) Adiabatic() (Flame, error) {
	low, high := 250.0, 4000.0
	if f.at(low).enthalpy() > f.Enthalpy || f.at(high).enthalpy() < f.Enthalpy {
		return Flame{}, errFlame
	}
	for range 50 {
		mid := (low + high) / 2
		if f.at(mid).enthalpy() < f.Enthalpy {
			low = mid
		} else {
			high = mid
		}
	}
	return f.at((low + high) / 2), nil
}

// RacewayTemperature gives in K the temperature before the tuyere when all oxygen of the blast has become CO and all its
// moisture CO and hydrogen, on carbon that arrives at carbonTemperature: the gas that leaves the raceway, colder than the
// flame tip, where CO2 is still about. Every gram of moisture and every degree of blast or charcoal is in it.
func RacewayTemperature(blast AirFlow, blastTemperature, carbonTemperature float64) (float64, error) {
	feed := BlastFeed(blast, blastTemperature, 2*blast.O2+blast.H2O, carbonTemperature)
	gas := Flame{CO: feed.C, H2: blast.H2O, N2: feed.N / 2, Ar: feed.Ar}
	low, high := 250.0, 4000.0
	for range 50 {
		gas.Temperature = (low + high) / 2
		if gas.enthalpy() < feed.Enthalpy {
			low = gas.Temperature
		} else {
			high = gas.Temperature
		}
	}
	if !(gas.CO > 0) {
		return 0, errFlame
	}
	return gas.Temperature, nil
}

func (g Flame) enthalpy() float64 {
	t := g.Temperature
	return g.CO*SpeciesCO.Enthalpy(t) + g.CO2*SpeciesCO2.Enthalpy(t) + g.H2*SpeciesH2.Enthalpy(t) +
		g.H2O*SpeciesSteam.Enthalpy(t) + g.OH*SpeciesOH.Enthalpy(t) + g.O2*SpeciesO2.Enthalpy(t) +
		g.N2*SpeciesN2.Enthalpy(t) + g.Ar*SpeciesAr.Enthalpy(t) + g.SolidCarbon*SpeciesC.Enthalpy(t)
}

// at gives the equilibrium of the feed at a temperature.
func (f FlameFeed) at(kelvin float64) Flame {
	all := f.gasAt(kelvin, f.C)
	if all.carbonActivity(f.Pressure) <= 1 {
		return all
	}
	low, high := 0.0, f.C // carbon in the gas; the rest stays solid, at activity 1
	for range 50 {
		mid := (low + high) / 2
		if f.gasAt(kelvin, mid).carbonActivity(f.Pressure) < 1 {
			low = mid
		} else {
			high = mid
		}
	}
	gas := f.gasAt(kelvin, low)
	gas.SolidCarbon = f.C - low
	return gas
}

func (g Flame) carbonActivity(pascal float64) float64 {
	moles := g.CO + g.CO2 + g.H2 + g.H2O + g.OH + g.O2 + g.N2 + g.Ar
	return CarbonActivity(g.Temperature, g.CO/moles*pascal, g.CO2/moles*pascal)
}

// gasAt gives the equilibrium gas with the given carbon in it, found by the pressure of oxygen: all ratios follow from it,
// and the oxygen they hold grows with it.
func (f FlameFeed) gasAt(kelvin, carbon float64) Flame {
	oxygen := SpeciesO2.Gibbs(kelvin)
	kCO2 := equilibriumConstant(kelvin, SpeciesCO2.Gibbs(kelvin), SpeciesCO.Gibbs(kelvin)+oxygen/2)
	kH2O := equilibriumConstant(kelvin, SpeciesSteam.Gibbs(kelvin), SpeciesH2.Gibbs(kelvin)+oxygen/2)
	kOH := equilibriumConstant(kelvin, SpeciesOH.Gibbs(kelvin), SpeciesH2.Gibbs(kelvin)/2+oxygen/2)
	gas := func(logOxygen float64) Flame {
		root := math.Exp(logOxygen / 2) // square root of pO2 in bar
		g := Flame{Temperature: kelvin, N2: f.N / 2, Ar: f.Ar}
		g.CO2 = carbon * kCO2 * root / (1 + kCO2*root)
		g.CO = carbon - g.CO2
		moles := carbon + f.H/2 + g.N2 + g.Ar
		for range 20 { // OH and O2 depend on the sum of moles, weakly
			pressurePerMole := f.Pressure / bar / moles
			g.O2 = root * root / pressurePerMole
			// H = 2 H2 (1 + kH2O root) + OH, with OH = kOH root sqrt(H2/pressurePerMole): quadratic in sqrt(H2).
			a, b := 2*(1+kH2O*root), kOH*root/math.Sqrt(pressurePerMole)
			s := 0.0
			if f.H > 0 {
				s = 2 * f.H / (b + math.Sqrt(b*b+4*a*f.H))
			}
			g.H2 = s * s
			g.H2O = kH2O * root * g.H2
			g.OH = b * s
			moles = carbon + g.H2 + g.H2O + g.OH + g.O2 + g.N2 + g.Ar
		}
		return g
	}
	low, high := -160.0, math.Log(0.9*f.Pressure/bar)
	for range 80 {
		mid := (low + high) / 2
		g := gas(mid)
		if g.CO+2*g.CO2+g.H2O+g.OH+2*g.O2 < f.O {
			low = mid
		} else {
			high = mid
		}
	}
	return gas((low + high) / 2)
}
