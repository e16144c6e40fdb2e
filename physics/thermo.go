package physics

import "math"

// Species is a substance with thermochemical data. A solid with several forms (iron, quartz) is one species: the form that
// is stable at the temperature is taken.
type Species int

// The species known. SpeciesWustite is the mineral Fe0.947O, SpeciesFeO the stoichiometric solid of the JANAF tables, which
// is off from measurement in equilibria (see [WustiteIronCO]) and kept for slag and comparison.
const (
	SpeciesC Species = iota
	SpeciesO2
	SpeciesN2
	SpeciesAr
	SpeciesCO
	SpeciesCO2
	SpeciesH2
	SpeciesSteam
	SpeciesOH
	SpeciesWater
	SpeciesFe
	SpeciesWustite
	SpeciesFeO
	SpeciesFe3O4
	SpeciesFe2O3
	SpeciesFeOOH
	SpeciesFe2SiO4
	SpeciesSiO2
	SpeciesAl2O3
	SpeciesCaO
	SpeciesCaCO3
	SpeciesMgO
	SpeciesMnO

	speciesCount
)

// ReferenceTemperature is the 25 C, in K, that heats of formation are stated at.
const ReferenceTemperature = 298.15

// thermoForm names the published formula a row of coefficients belongs to.
type thermoForm uint8

const (
	// nasa9: cp/R = a1/T2 + a2/T + a3 + a4 T + a5 T2 + a6 T3 + a7 T4, with b1, b2 for enthalpy and entropy.
	nasa9 thermoForm = iota
	// shomate: with t = T/1000, cp = A + B t + C t2 + D t3 + E/t2; F, G for enthalpy and entropy.
	shomate
	// fourTerm: cp = a + b T + c/T2 + d/sqrt(T), then the entropy and the heat of formation at 25 C.
	fourTerm
)

// thermoFit is one temperature interval, in K, of one form of a species.
type thermoFit struct {
	form      thermoForm
	low, high float64
	phase     string
	a         [9]float64
}

type speciesData struct {
	formula string
	fits    []thermoFit
}

func (s Species) fit(kelvin float64) *thermoFit {
	fits := thermoFits[s].fits
	for i := range fits {
		if kelvin < fits[i].high {
			return &fits[i]
		}
	}
	return &fits[len(fits)-1]
}

// HeatCapacity gives cp in J/(mol K). Outside the range of the data it stays at the value of the nearest end.
func (s Species) HeatCapacity(kelvin float64) float64 {
	f := s.fit(kelvin)
	return f.heatCapacity(math.Min(math.Max(kelvin, f.low), f.high))
}

// Enthalpy gives the absolute enthalpy in J/mol: heat of formation from the elements at 25 C plus the heat taken up since,
// changes of form and melting included. Outside the range of the data it goes on with the heat capacity of the nearest end.
// A temperature that is not a number gives one.
func (s Species) Enthalpy(kelvin float64) float64 {
	f := s.fit(kelvin)
	edge := math.Min(math.Max(kelvin, f.low), f.high)
	return f.enthalpy(edge) + f.heatCapacity(edge)*(kelvin-edge)
}

// Entropy gives the absolute entropy in J/(mol K) at 1 bar, continued outside the range like [Species.Enthalpy].
func (s Species) Entropy(kelvin float64) float64 {
	f := s.fit(kelvin)
	edge := math.Min(math.Max(kelvin, f.low), f.high)
	return f.entropy(edge) + f.heatCapacity(edge)*math.Log(kelvin/edge)
}

// Gibbs gives the Gibbs energy H - T S in J/mol at 1 bar.
func (s Species) Gibbs(kelvin float64) float64 { return s.Enthalpy(kelvin) - kelvin*s.Entropy(kelvin) }

// nasaGasConstant: the NASA fits were made with R = 8.314510; today's R moves them by 6e-6, within their rounding, and
// keeps one constant in the program.
const nasaGasConstant = GasConstant

func (f *thermoFit) heatCapacity(t float64) float64 {
	a := &f.a
	switch f.form {
	case nasa9:
		return nasaGasConstant * (a[0]/(t*t) + a[1]/t + a[2] + t*(a[3]+t*(a[4]+t*(a[5]+t*a[6]))))
	case shomate:
		k := t / 1000
		return a[0] + k*(a[1]+k*(a[2]+k*a[3])) + a[4]/(k*k)
	default:
		return a[0] + a[1]*t + a[2]/(t*t) + a[3]/math.Sqrt(t)
	}
}

func (f *thermoFit) enthalpy(t float64) float64 {
	a := &f.a
	switch f.form {
	case nasa9:
		return nasaGasConstant * (-a[0]/t + a[1]*math.Log(t) + a[7] +
			t*(a[2]+t*(a[3]/2+t*(a[4]/3+t*(a[5]/4+t*a[6]/5)))))
	case shomate:
		k := t / 1000
		return 1000 * (k*(a[0]+k*(a[1]/2+k*(a[2]/3+k*a[3]/4))) - a[4]/k + a[5])
	default:
		integral := func(t float64) float64 { return a[0]*t + a[1]*t*t/2 - a[2]/t + 2*a[3]*math.Sqrt(t) }
		return a[5] + integral(t) - integral(ReferenceTemperature)
	}
}

func (f *thermoFit) entropy(t float64) float64 {
	a := &f.a
	switch f.form {
	case nasa9:
		return nasaGasConstant * (-a[0]/(2*t*t) - a[1]/t + a[2]*math.Log(t) + a[8] +
			t*(a[3]+t*(a[4]/2+t*(a[5]/3+t*a[6]/4))))
	case shomate:
		k := t / 1000
		return a[0]*math.Log(k) + k*(a[1]+k*(a[2]/2+k*a[3]/3)) - a[4]/(2*k*k) + a[6]
	default:
		integral := func(t float64) float64 { return a[0]*math.Log(t) + a[1]*t - a[2]/(2*t*t) - 2*a[3]/math.Sqrt(t) }
		return a[4] + integral(t) - integral(ReferenceTemperature)
	}
}
