package main

import (
	"strconv"

	"chargehand/model/entry"
)

// number is a quantity on the wire. It is written to six digits, a gram in
// hundreds of kilograms and finer than anything a smelt is measured with: more
// of them are only what the sums in binary leave.
type number float64

// digits is how many of them are written.
const digits = 6

// MarshalJSON writes the number to its digits.
func (n number) MarshalJSON() ([]byte, error) {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(float64(n), 'g', digits, 64), 64)
	if err != nil {
		return nil, err
	}
	return strconv.AppendFloat(nil, rounded, 'f', -1, 64), nil
}

// pointer is a quantity as JSON has it: a number or null.
func pointer[Q entry.Quantity](m entry.Maybe[Q]) *number {
	if !m.Known {
		return nil
	}
	v := number(m.Value)
	return &v
}
