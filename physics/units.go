package physics

import (
	"fmt"
	"math"
)

// Physical constants.
const (
	// GasConstant in J/(mol K); exact since the 2019 SI (CODATA 2018), here to the digits a float64 needs.
	GasConstant = 8.31446261815324

	// StandardPressure, one standard atmosphere, in Pa (exact; ISO 2533:1975).
	StandardPressure = 101325.0

	// StandardGravity in m/s2 (exact; CGPM 1901).
	StandardGravity = 9.80665

	// ZeroCelsius is 0 C in K (exact by definition of the Celsius scale).
	ZeroCelsius = 273.15
)

// Molar masses of the elements in kg/mol: abridged standard atomic weights, IUPAC 2021 (Prohaska et al. 2022, Pure Appl.
// Chem. 94:573). The published spread of natural carbon and oxygen is below 0.01 %, far below anything weighed at a furnace.
const (
	MolarMassH  = 1.0080e-3
	MolarMassC  = 12.011e-3
	MolarMassN  = 14.007e-3
	MolarMassO  = 15.999e-3
	MolarMassMg = 24.305e-3
	MolarMassAl = 26.982e-3
	MolarMassSi = 28.085e-3
	MolarMassP  = 30.974e-3
	MolarMassS  = 32.06e-3
	MolarMassAr = 39.95e-3
	MolarMassCa = 40.078e-3
	MolarMassMn = 54.938e-3
	MolarMassFe = 55.845e-3
)

// Molar masses of the compounds met in more than one file, in kg/mol.
const (
	MolarMassH2O   = 2*MolarMassH + MolarMassO
	MolarMassCO    = MolarMassC + MolarMassO
	MolarMassCO2   = MolarMassC + 2*MolarMassO
	MolarMassSiO2  = MolarMassSi + 2*MolarMassO
	MolarMassAl2O3 = 2*MolarMassAl + 3*MolarMassO
	MolarMassCaO   = MolarMassCa + MolarMassO
	MolarMassMgO   = MolarMassMg + MolarMassO
	MolarMassMnO   = MolarMassMn + MolarMassO
	MolarMassP2O5  = 2*MolarMassP + 5*MolarMassO
	MolarMassK2O   = 2*39.098e-3 + MolarMassO // potassium 39.098
	MolarMassFeO   = MolarMassFe + MolarMassO
	MolarMassFe2O3 = 2*MolarMassFe + 3*MolarMassO
	MolarMassFe3O4 = 3*MolarMassFe + 4*MolarMassO

	// MolarMassDryAir is the mean of dry air in kg/mol (US Standard Atmosphere 1976; ISO 2533:1975).
	MolarMassDryAir = 28.9644e-3
)

// Conversion factors, exact by definition.
const (
	inchM             = 0.0254 // international inch, 1959
	litrePerMinuteM3s = 1e-3 / 60
	secondsPerHour    = 3600.0
)

// The conversions below hand on what they are given, undefined numbers too: the functions that use a figure check it.

// FromLitresPerMinute converts l/min to m3/s. The litre is whatever the meter passed: see [Air] for its state.
func FromLitresPerMinute(lMin float64) float64 { return lMin * litrePerMinuteM3s }

// ToLitresPerMinute converts m3/s to l/min.
func ToLitresPerMinute(m3s float64) float64 { return m3s / litrePerMinuteM3s }

// FromCelsius converts C to K.
func FromCelsius(c float64) float64 { return c + ZeroCelsius }

// ToCelsius converts K to C.
func ToCelsius(k float64) float64 { return k - ZeroCelsius }

// FromKgPerHour converts kg/h to kg/s.
func FromKgPerHour(kgh float64) float64 { return kgh / secondsPerHour }

// ToKgPerHour converts kg/s to kg/h.
func ToKgPerHour(kgs float64) float64 { return kgs * secondsPerHour }

// RangeError says that a figure lies outside what its quantity can be. Quantity is a stable name for a caller to put into
// words; Value is as given, in SI units, and may be infinite or not a number.
type RangeError struct {
	Quantity         string
	Value, Low, High float64
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("physics: %s is %g, outside %g to %g", e.Quantity, e.Value, e.Low, e.High)
}

// InRange returns a *RangeError unless low <= v <= high; a v that is not a number is never in range.
func InRange(quantity string, v, low, high float64) error {
	if v >= low && v <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: v, Low: low, High: high}
}

// orNone turns what cannot be an amount, a negative or undefined number, into none.
func orNone(v float64) float64 {
	if v > 0 && allFinite(v) {
		return v
	}
	return 0
}

// allFinite says whether every value is a finite number.
func allFinite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
