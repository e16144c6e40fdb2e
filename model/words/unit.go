package words

import (
	"math"
	"slices"
	"strings"

	"chargehand/model/entry"
)

// Quantity is what a person may read and type in units of their own.
type Quantity int

// The quantities.
const (
	Mass Quantity = iota
	Length
	Blast
	Heat
	Pressure
	Quantities
)

// Units are the units that a person reads and types, by their place among those
// of each quantity. The zero value is metric. Journal, JSON and CSV are metric
// whatever stands here.
type Units [Quantities]int

// measure is one unit: what one of it is in the metric unit of its quantity,
// and where its nought lies.
type measure struct {
	name       string
	per, zero  float64
	finer      int // more decimals than the metric unit wants
	coarseFrom int // from this number on none of them; 0 for never
}

// units are the units of each quantity, the metric one first. The pound and the
// inch are those of the agreement of 1959, exact; a cubic foot is 12 inches
// cubed. The column of water is the conventional one, 9.80665 Pa a millimetre
// (NIST SP 811, appendix B.8, from memory, unverified).
var units = [Quantities][]measure{
	Mass:     {{name: "kg", per: 1}, {name: "lb", per: 0.45359237}},
	Length:   {{name: "cm", per: 1}, {name: "inch", per: 2.54, finer: 1}},
	Blast:    {{name: "l/min", per: 1}, {name: "cfm", per: 28.316846592, finer: 1, coarseFrom: 100}},
	Heat:     {{name: "°C", per: 1}, {name: "°F", per: 5. / 9, zero: -160. / 9}},
	Pressure: {{name: "Pa", per: 1}, {name: "mm of water", per: 9.80665}, {name: "inch of water", per: 249.08891, finer: 2}},
}

// quantityNames name the quantities, on the screen and in the settings.
var quantityNames = [Quantities]string{"mass", "length", "blast", "temperature", "pressure"}

func (q Quantity) String() string { return quantityNames[q] }

// Next is the same units with the next one of a quantity, the first again after
// the last.
func (u Units) Next(q Quantity) Units {
	u[q] = (u[q] + 1) % len(units[q])
	return u
}

// Of is the name of a quantity's unit.
func (u Units) Of(q Quantity) string { return units[q][u[q]].name }

// With is the same units with one of a quantity by its name; unchanged when
// there is no such unit.
func (u Units) With(quantity, name string) Units {
	q := slices.Index(quantityNames[:], quantity)
	if q < 0 {
		return u
	}
	if i := slices.IndexFunc(units[q], func(m measure) bool { return m.name == name }); i >= 0 {
		u[q] = i
	}
	return u
}

// in is the unit that a person has for one in which the program reckons. One
// that is nobody's choice stays as it is.
func (u Units) in(unit string) measure {
	of := func(q Quantity) measure { return units[q][u[q]] }
	switch unit {
	case "kg":
		return of(Mass)
	case "kg/h":
		m := of(Mass)
		m.name += "/h"
		return m
	case "cm":
		return of(Length)
	case "mm":
		m := of(Length)
		if u[Length] == 0 {
			return measure{name: unit, per: 1}
		}
		m.per, m.finer = m.per*10, 2
		return m
	case "l/min":
		return of(Blast)
	case "l/min/cm2":
		b, l := of(Blast), of(Length)
		return measure{name: b.name + " a " + square[l.name], per: b.per / (l.per * l.per)}
	case "°C", "C":
		return of(Heat)
	case "Pa":
		return of(Pressure)
	}
	return measure{name: unit, per: 1}
}

var square = map[string]string{"cm": "cm²", "inch": "square inch"}

// Name is what a unit of the program is called in the person's own.
func (u Units) Name(unit string) string { return u.in(unit).name }

// Shown is a number of the program in the person's unit.
func (u Units) Shown(v float64, unit string) float64 {
	m := u.in(unit)
	return (v - m.zero) / m.per
}

// Metric is a number that a person typed in the program's unit.
func (u Units) Metric(v float64, unit string) float64 {
	m := u.in(unit)
	return v*m.per + m.zero
}

// decimals is how many a number wants in the person's unit.
func (u Units) decimals(v float64, unit string, metric int) int {
	m := u.in(unit)
	if m.coarseFrom > 0 && u.Shown(v, unit) >= float64(m.coarseFrom) {
		return metric
	}
	return metric + m.finer
}

// Value is a number with its unit, in as many decimals as it needs, at most so
// many in the metric unit.
func (u Units) Value(v float64, unit string, decimals int) string {
	return Number(u.Shown(v, unit), u.decimals(v, unit, decimals)) + " " + u.Name(unit)
}

// Spread is a number with its spread and its unit: "44 ±3 cm". A spread that
// rounds to nought is left out.
func (u Units) Spread(low, middle, high float64, unit string, decimals int) string {
	n := u.decimals(middle, unit, decimals)
	s := fixed(u.Shown(middle, unit), n)
	if half := fixed((u.Shown(high, unit)-u.Shown(low, unit))/2, n); strings.Trim(half, "0.") != "" {
		s += " ±" + half
	}
	return s + " " + u.Name(unit)
}

// coarse is a temperature that was reckoned, in the person's unit: to fifty degrees
// of Celsius or a hundred of Fahrenheit, as well as it is known. What is hardly
// warm yet is told to ten, rounded up: a fresh charge is not colder than the day.
func (u Units) coarse(celsius float64) float64 {
	step, v := u.coarseStep(), u.Shown(celsius, "°C")
	if celsius < 75 {
		return math.Ceil(v/10) * 10
	}
	return math.Round(v/step) * step
}

func (u Units) coarseStep() float64 {
	if u.Shown(100, "°C")-u.Shown(0, "°C") > 150 {
		return 100
	}
	return 50
}

// Coarse is the same in print, without its unit.
func (u Units) Coarse(celsius float64) string { return fixed(u.coarse(celsius), 0) }

// About is a temperature that was reckoned, with its spread: "about 1150 °C (1000
// to 1250)".
func (u Units) About(low, middle, high float64) string {
	return "about " + u.Coarse(middle) + " " + u.Name("°C") + " (" + u.Coarse(low) + " to " + u.Coarse(high) + ")"
}

// degreesApart is a difference of temperatures, in K.
func (u Units) degreesApart(kelvin float64) string {
	name := "K"
	if u[Heat] != 0 {
		name = u.Name("°C")
	}
	return fixed(u.Shown(kelvin, "°C")-u.Shown(0, "°C"), 0) + " " + name
}

// coldest is as cold as anything is said to be that stands outdoors, °C.
const coldest = 20

// Roughly is the same where there is little room, the spread rounded up: "1150 °C
// ±150". Where that would reach below what stands cold, "under 300 °C" says what is
// known.
func (u Units) Roughly(low, middle, high float64) string {
	const unit = "°C"
	s := u.Coarse(middle) + " " + u.Name(unit)
	half, step := (u.Shown(high, unit)-u.Shown(low, unit))/2, u.coarseStep()
	if half <= 0 {
		return s
	}
	half = math.Ceil(half/step-1e-9) * step
	if math.Round(u.Shown(middle, unit)/step)*step-half < u.Shown(coldest, unit) {
		return "under " + fixed(math.Ceil(u.Shown(high, unit)/step-1e-9)*step, 0) + " " + u.Name(unit)
	}
	return s + " ±" + fixed(half, 0)
}

// Kg is a mass as weighed: to two decimals below ten, to one above.
func (u Units) Kg(kg entry.Kilogram) string {
	if u.Shown(float64(kg), "kg") >= 10 {
		return u.Value(float64(kg), "kg", 1)
	}
	return u.Value(float64(kg), "kg", 2)
}
