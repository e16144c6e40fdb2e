package physics

import "errors"

// What a lot of charcoal is taken to be until its label or a test says otherwise.
const (
	// DefaultCarbonShare is the carbon of dry charcoal that air burns, kg/kg. Published fixed carbon of lump charcoal is 78 to
	// 90 %, and 86 % for a char made at 500 C (reference figures from general charcoal overviews).
	DefaultCarbonShare = 0.85

	// CarbonShareSD is the standard deviation of that share between lots: it puts the 10th and 90th percentile at 0.79 and
	// 0.91, about the published range.
	CarbonShareSD = 0.05

	// DefaultAshShare is ash per dry charcoal, kg/kg (published 1.5 to 5 %). With the carbon it leaves 12 % of volatiles, in
	// the 10 to 15 % published for charcoal sold to smelters.
	DefaultAshShare = 0.03

	// DefaultCharcoalMoisture is kg of water per kg of dry charcoal (published 5 to 8 % of stored lump charcoal).
	DefaultCharcoalMoisture = 0.06

	// CharcoalMoistureSD is its standard deviation, kg/kg: from oven-dry to the 10 to 15 % of moist stock.
	CharcoalMoistureSD = 0.03
)

// Charcoal is what a lot consists of. Moisture is kg of water per kg of dry charcoal (dry basis, so that adding water never
// changes the carbon); Carbon and Ash are shares of the dry mass. Carbon is what the blast and carbon dioxide burn, fixed
// carbon in the words of a fuel label; what volatiles carry leaves with the top gas unburned by the blast.
type Charcoal struct {
	Moisture, Carbon, Ash float64
}

// DefaultCharcoal is an unlabelled lot of lump charcoal.
func DefaultCharcoal() Charcoal {
	return Charcoal{Moisture: DefaultCharcoalMoisture, Carbon: DefaultCarbonShare, Ash: DefaultAshShare}
}

// Validate returns a *RangeError for a lot that cannot be: moisture outside 0 to 2 kg/kg (a soaked lump holds about its own
// mass), shares outside 0 to 1, or carbon and ash together above 1.
func (c Charcoal) Validate() error {
	return errors.Join(
		InRange("charcoal moisture", c.Moisture, 0, 2),
		InRange("charcoal carbon share", c.Carbon, 0, 1),
		InRange("charcoal ash share", c.Ash, 0, 1),
		InRange("charcoal carbon and ash share", c.Carbon+c.Ash, 0, 1),
	)
}

// Volatiles gives the share of dry charcoal that is neither carbon nor ash, as in a proximate analysis. This and the masses
// below are for a lot that passes [Charcoal.Validate]; a mass or lot that cannot be gives none.
func (c Charcoal) Volatiles() float64 { return orNone(1 - c.Carbon - c.Ash) }

// DryMass gives the dry charcoal in a mass as charged.
func (c Charcoal) DryMass(asCharged float64) float64 { return orNone(asCharged / (1 + c.Moisture)) }

// ChargedMass gives the mass as charged that holds a mass of dry charcoal.
func (c Charcoal) ChargedMass(dry float64) float64 { return orNone(dry * (1 + c.Moisture)) }

// CarbonMass gives the carbon to burn in a mass as charged.
func (c Charcoal) CarbonMass(asCharged float64) float64 {
	return orNone(c.DryMass(asCharged) * c.Carbon)
}

// DryMassForCarbon gives the dry charcoal that holds a mass of carbon to burn; none for a lot without carbon.
func (c Charcoal) DryMassForCarbon(carbon float64) float64 { return orNone(carbon / c.Carbon) }

// MostCarbon gives the carbon in kg/s that the oxygen of the air burns at most: all of it to CO. The blast's moisture, the
// charge's and the ore's oxygen come on top: see [AirFlow.SteamCarbon].
func (f AirFlow) MostCarbon() float64 { return 2 * f.O2 * MolarMassC }

// LeastCarbon gives the carbon in kg/s that the oxygen of the air burns at least: all of it to CO2.
func (f AirFlow) LeastCarbon() float64 { return f.O2 * MolarMassC }

// SteamCarbon gives the carbon in kg/s that the moisture of the blast takes besides, by H2O + C -> CO + H2, if all of it
// reacts. It belongs on top of [AirFlow.MostCarbon] when the bound must not be broken.
func (f AirFlow) SteamCarbon() float64 { return f.H2O * MolarMassC }

// CarbonAt gives the carbon in kg/s burned when the share CO/(CO+CO2) of the top gas is coShare (0 to 1) and all its oxygen
// came from the air.
func (f AirFlow) CarbonAt(coShare float64) (float64, error) {
	if err := InRange("CO share of the top gas", coShare, 0, 1); err != nil {
		return 0, err
	}
	return f.LeastCarbon() / (1 - coShare/2), nil
}
