package entry

import (
	"encoding/json"
	"fmt"
	"math"
)

// Units of the journal. They are the units in which people at a furnace speak
// and in which the wire names its fields; package physics works in SI.
type (
	Kilogram       float64 // mass
	Centimetre     float64 // length of a furnace, height of a burden
	Millimetre     float64 // bore of a tuyere
	Litre          float64 // volume of a measure
	LitrePerMinute float64 // blast, as metered at the air's own temperature and pressure
	MetrePerSecond float64 // speed of air
	PerMinute      float64 // strokes of a bellows
	Celsius        float64 // temperature
	Pascal         float64 // pressure of the blast above ambient
	Degree         float64 // angle of a tuyere, downwards positive
	Metre          float64 // altitude of the site
	Share          float64 // part of a whole, 0 to 1
	Count          float64 // measures, scoops, tuyeres; halves are allowed
	CubicMetre     float64 // stacked wood
	Minute         float64 // time
	Hour           float64 // time
	Percent        float64 // of an assay, by mass
	PPM            float64 // carbon monoxide in air, by volume
	Money          float64 // in a currency that is said beside it
	Number         float64 // of a unit that is said beside it, or of none
)

// Quantity is any number the journal may hold or leave out.
type Quantity interface{ ~float64 }

// Maybe is a quantity that may not have been recorded. The zero value is "not
// recorded", which is not the same as nought: the wire leaves it out.
type Maybe[Q Quantity] struct {
	Value Q
	Known bool
}

// Some is a recorded quantity.
func Some[Q Quantity](v Q) Maybe[Q] { return Maybe[Q]{Value: v, Known: true} }

// None is a quantity that was not recorded.
func None[Q Quantity]() Maybe[Q] { return Maybe[Q]{} }

// Or gives the value, or the other one where none was recorded.
func (m Maybe[Q]) Or(other Q) Q {
	if m.Known {
		return m.Value
	}
	return other
}

// Positive tells whether a quantity was recorded and is more than nought.
func (m Maybe[Q]) Positive() bool { return m.Known && m.Value > 0 }

// IsZero makes encoding/json leave an unrecorded quantity out.
func (m Maybe[Q]) IsZero() bool { return !m.Known }

// MarshalJSON writes the bare number, or null.
func (m Maybe[Q]) MarshalJSON() ([]byte, error) {
	if !m.Known {
		return []byte("null"), nil
	}
	return json.Marshal(float64(m.Value))
}

// UnmarshalJSON reads a finite number or null.
func (m *Maybe[Q]) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		*m = Maybe[Q]{}
		return nil
	}
	var v float64
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return fmt.Errorf("not a finite number: %s", b)
	}
	*m = Maybe[Q]{Value: Q(v), Known: true}
	return nil
}
