package house

import (
	"math"

	"chargehand/model/entry"
	"chargehand/physics"
)

// Mass is a dry mass, with what is not known of it.
type Mass struct {
	Kg   float64 `json:"kg"`             // dry, the known part
	SD   float64 `json:"sd_kg"`          // kg
	More bool    `json:"more,omitempty"` // an unknown amount came on top: at least this
	Less bool    `json:"less,omitempty"` // an unknown amount was taken from it: at most this
}

// Known tells whether the mass is known but for its spread.
func (m Mass) Known() bool { return !m.More && !m.Less }

// Plus is the mass with another given to it.
func (m Mass) Plus(o Mass) Mass {
	return Mass{m.Kg + o.Kg, math.Hypot(m.SD, o.SD), m.More || o.More, m.Less || o.Less}
}

// Minus is the mass with another taken from it: an unknown amount taken leaves
// at most what was known.
func (m Mass) Minus(o Mass) Mass {
	return Mass{m.Kg - o.Kg, math.Hypot(m.SD, o.SD), m.More || o.Less, m.Less || o.More}
}

// Some is an amount of which nothing is known.
var Some = Mass{More: true}

// How well a weight is known, as relative standard deviations, where nobody says.
const (
	// scaleSD is a hanging or kitchen scale outdoors (common practice).
	scaleSD = 0.02
	// guessedSD is a measure that was never weighed.
	guessedSD = 0.15
	// stackedSD is a stack of wood of known bulk density (assumed).
	stackedSD = 0.2
	// perHalfWidth turns a plus-minus, taken as the 10th to the 90th
	// percentile, into a standard deviation.
	perHalfWidth = 1 / 1.2816
)

// weight is what an amount of a lot weighs as it was taken or given, before its
// moisture is taken off.
func (f *folder) weight(a entry.Amount, lot entry.Lot) Mass {
	var m Mass
	switch measure, named := f.measure(a.Measure); {
	case a.Mass.Known:
		m = Mass{Kg: float64(a.Mass.Value)}
		m.SD = scaleSD * m.Kg
	case a.Count.Known && named && measure.Mass.Known:
		n := float64(a.Count.Value)
		m = Mass{Kg: n * float64(measure.Mass.Value)}
		rel := scaleSD
		if measure.Guessed {
			rel = guessedSD
		}
		m.SD = m.Kg * math.Hypot(rel, physics.MeasureRelSD/math.Sqrt(max(n, 1)))
	case a.Stacked.Known && lot.BulkDensity.Known:
		m = Mass{Kg: float64(a.Stacked.Value) * float64(lot.BulkDensity.Value)}
		m.SD = stackedSD * m.Kg
	default:
		return Some
	}
	if a.PlusMinus.Known {
		m.SD = float64(a.PlusMinus.Value) * perHalfWidth
	}
	return m
}

// dried is a weight without its moisture, which is on the dry mass.
func dried(m Mass, moisture float64) Mass {
	m.Kg, m.SD = m.Kg/(1+moisture), m.SD/(1+moisture)
	return m
}
