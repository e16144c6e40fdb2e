package account

import (
	"math"

	"chargehand/physics"
)

// Amount is a mass in kg or a share with its standard deviation and what it
// rests on. The zero value is not known.
type Amount struct {
	Value, SD float64
	Standing  Standing
}

// Weighed is an amount that was measured.
func Weighed(value, sd float64) Amount { return Amount{value, sd, Measured} }

// Taken is an amount that is assumed.
func Taken(value, sd float64) Amount { return Amount{value, sd, Assumed} }

// Known tells whether there is a value.
func (a Amount) Known() bool { return a.Standing != Unknown }

// Band is the 10th, 50th and 90th percentile. It may fall below nought, since
// what does not close may be minus.
func (a Amount) Band() physics.Band { return physics.Normal(a.Value, a.SD) }

// Below tells whether the amount lies below nought by more than its spread
// explains (nine in ten).
func (a Amount) Below() bool { return a.Known() && a.Value+physics.Z90*a.SD < 0 }

// plus adds two amounts of independent error.
func (a Amount) plus(b Amount) Amount {
	return Amount{a.Value + b.Value, math.Hypot(a.SD, b.SD), min(a.Standing, b.Standing)}
}

func (a Amount) minus(b Amount) Amount { return a.plus(b.times(-1)) }

func (a Amount) times(k float64) Amount { return Amount{k * a.Value, math.Abs(k) * a.SD, a.Standing} }

// of is the product of two amounts of independent error.
func (a Amount) of(b Amount) Amount {
	return Amount{a.Value * b.Value, math.Hypot(a.SD*b.Value, a.Value*b.SD), min(a.Standing, b.Standing)}
}

// over is the quotient of two amounts of independent error; not known over
// nothing.
func (a Amount) over(b Amount) Amount {
	if !a.Known() || !b.Known() || !(b.Value > 0) {
		return Amount{}
	}
	q := a.Value / b.Value
	return Amount{q, math.Hypot(a.SD, q*b.SD) / b.Value, min(a.Standing, b.Standing)}
}

// total adds amounts; not known as soon as one is not.
func total(as ...Amount) Amount {
	sum := Weighed(0, 0)
	for _, a := range as {
		if !a.Known() {
			return Amount{}
		}
		sum = sum.plus(a)
	}
	return sum
}
