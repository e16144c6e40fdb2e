package shaft

import "math"

// powerSix gives x to the power 0.6, to 1e-11 of itself, at a tenth of the cost of math.Pow, which was a fifteenth of a step:
// the binary exponent and 64ths of the mantissa are looked up, the rest is the binomial series. What is not positive, or not
// within 1e-30 and 1e30, gives 0.
func powerSix(x float64) float64 {
	if !(x > 1e-30 && x < 1e30) {
		return 0
	}
	bits := math.Float64bits(x)
	part := int(bits>>(52-6)) & (powerParts - 1)
	whole := int(bits>>52) - 1023 + powerWholes/2
	d := math.Float64frombits(bits&(1<<52-1)|1023<<52)*powerInverse[part] - 1 // within 1/128
	return powerWhole[whole] * powerPart[part] * (1 + d*(0.6-d*(0.12-d*(0.056-d*0.0336))))
}

const powerParts, powerWholes = 64, 256

var powerWhole, powerPart, powerInverse = powerTables()

func powerTables() (whole [powerWholes]float64, part, inverse [powerParts]float64) {
	for i := range whole {
		whole[i] = math.Pow(2, 0.6*float64(i-powerWholes/2))
	}
	for i := range part {
		middle := 1 + (float64(i)+0.5)/powerParts
		part[i], inverse[i] = math.Pow(middle, 0.6), 1/middle
	}
	return whole, part, inverse
}
