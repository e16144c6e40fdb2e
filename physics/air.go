package physics

import (
	"errors"
	"math"
)

// DryAirO2 is the mole fraction of oxygen in dry air (US Standard Atmosphere 1976; ISO 2533:1975). All the rest, argon and
// carbon dioxide with it, is counted as nitrogen: none of it burns anything.
const DryAirO2 = 0.209476

// Weather the equations here are good for: the range of the saturation curve, cut to what people stand in, and pressures
// from a high pass to a deep low-lying valley.
const (
	ColdestAir  = ZeroCelsius - 60 // K, the least that a thermometer outdoors can say
	hottestAir  = ZeroCelsius + 55
	thinnestAir = 50e3
	densestAir  = 115e3
)

// most air any furnace of this kind could be given, m3/s (60,000 l/min): beyond it a typing slip, not a blower.
const greatestFlow = 1.0

// Air is the state of the air at the blower's meter: temperature in K, absolute pressure in Pa, relative humidity from 0 to 1
// over liquid water (below freezing too, as weather services state it).
//
// A litre a minute in this program is a litre as it passes the meter, at the state of the air there: gate marks, anemometers
// and plate gauges all read actual volume. When nothing is known about the weather it is a litre of [StandardAir];
// between 15 and 20 C that is 1.7 %.
type Air struct {
	Temperature, Pressure, RelativeHumidity float64
}

// StandardAir is dry air of 15 C and one atmosphere: sea level of the standard atmosphere (ISO 2533:1975) and the reference
// state of ISO 13443 for metered gas, chosen over 20 C because furnaces are run outdoors and because the published burn-rate
// bounds are given at it. Dry, because humidity costs less than 1 % of the oxygen at this temperature and is rarely noted.
func StandardAir() Air {
	return Air{Temperature: FromCelsius(15), Pressure: StandardPressure}
}

// UsualHumidity is the relative humidity of the air that is blown where nobody measured it: that of a day outdoors in the
// temperate zone (assumed; climate tables give 55 to 80 %, from memory). Its water meets glowing charcoal, C + H2O = CO + H2,
// and takes heat: burned with as much carbon as makes all CO, dry air comes to 1222 C, with 5 g of water a kg to 1182, with 10 to
// 1144 (computed outside: NASA CEA2, dry and moist air with graphite at one atmosphere).
const UsualHumidity = 0.65

// Validate returns a *RangeError for weather that cannot be: below -60 C or above 55 C, under 50 or over 115 kPa, or a
// relative humidity outside 0 to 1.
func (a Air) Validate() error {
	return errors.Join(
		InRange("air temperature", a.Temperature, ColdestAir, hottestAir),
		InRange("air pressure", a.Pressure, thinnestAir, densestAir),
		InRange("relative humidity", a.RelativeHumidity, 0, 1),
	)
}

// SaturationPressure gives the vapour pressure of water in Pa over the liquid, supercooled below 0 C, for -60 to 55 C.
// Murphy & Koop 2005, Q. J. R. Meteorol. Soc. 131:1539, equation 10 (stated for 123 to 332 K).
func SaturationPressure(kelvin float64) (float64, error) {
	if err := InRange("air temperature", kelvin, ColdestAir, hottestAir); err != nil {
		return 0, err
	}
	t, lnT := kelvin, math.Log(kelvin)
	return math.Exp(54.842763 - 6763.22/t - 4.210*lnT + 0.000367*t +
		math.Tanh(0.0415*(t-218.8))*(53.878-1331.22/t-9.44523*lnT+0.014025*t)), nil
}

// PressureAtAltitude gives the pressure in Pa of the US Standard Atmosphere 1976 at a height above sea level in m, for
// -400 to 5000 m. Weather moves the true one by about 2 %: a barometer reading is better.
func PressureAtAltitude(metres float64) (float64, error) {
	t, err := standardTemperature(metres)
	if err != nil {
		return 0, err
	}
	// The gas constant of the 1976 standard, not today's: the standard is defined with it.
	const gasConstant1976 = 8.31432
	const exponent = StandardGravity * MolarMassDryAir / (gasConstant1976 * lapseRate)
	return StandardPressure * math.Pow(t/StandardAir().Temperature, exponent), nil
}

const lapseRate = 6.5e-3 // K per geopotential metre, US Standard Atmosphere 1976, up to 11 km

func standardTemperature(metres float64) (float64, error) {
	if err := InRange("altitude", metres, -400, 5000); err != nil {
		return 0, err
	}
	const earthRadius = 6356766.0 // m, of the 1976 standard
	geopotential := earthRadius * metres / (earthRadius + metres)
	return StandardAir().Temperature - lapseRate*geopotential, nil
}

// vapourShare is the mole fraction of water in the air.
func (a Air) vapourShare() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	saturation, err := SaturationPressure(a.Temperature)
	return a.RelativeHumidity * saturation / a.Pressure, err
}

// HumidityRatio gives kg of water per kg of dry air.
func (a Air) HumidityRatio() (float64, error) {
	x, err := a.vapourShare()
	if err != nil {
		return 0, err
	}
	return MolarMassH2O / MolarMassDryAir * x / (1 - x), nil
}

// Concentration gives all gases together in mol/m3 (ideal gas; the departure is below 0.1 % in this range).
func (a Air) Concentration() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return a.Pressure / (GasConstant * a.Temperature), nil
}

// Density gives kg/m3 of the moist air.
func (a Air) Density() (float64, error) {
	x, err := a.vapourShare()
	if err != nil {
		return 0, err
	}
	c, err := a.Concentration()
	return c * ((1-x)*MolarMassDryAir + x*MolarMassH2O), err
}

// AirFlow is a blast in mol/s. N2 stands for everything dry that is not oxygen. An AirFlow made by [Air.Flow] is finite and
// never negative.
type AirFlow struct {
	O2, N2, H2O float64
}

// Flow turns a metered volume flow at this state, in m3/s, into moles. Negative, absurd (over 1 m3/s) or undefined flows and
// impossible weather are errors; no flow is a flow of nothing.
func (a Air) Flow(m3s float64) (AirFlow, error) {
	if err := InRange("air flow", m3s, 0, greatestFlow); err != nil {
		return AirFlow{}, err
	}
	x, err := a.vapourShare()
	if err != nil {
		return AirFlow{}, err
	}
	c, err := a.Concentration()
	all := m3s * c
	dry := all * (1 - x)
	return AirFlow{O2: DryAirO2 * dry, N2: (1 - DryAirO2) * dry, H2O: all * x}, err
}

// Moles gives the whole flow in mol/s.
func (f AirFlow) Moles() float64 { return f.O2 + f.N2 + f.H2O }

// Mass gives the whole flow in kg/s, the dry part at the mean molar mass of air (argon included).
func (f AirFlow) Mass() float64 { return (f.O2+f.N2)*MolarMassDryAir + f.H2O*MolarMassH2O }
