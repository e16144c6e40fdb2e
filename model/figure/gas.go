package figure

import (
	"iter"

	"chargehand/model/entry"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// Gas is the carbon gas in a zone: how much of it is CO, and how much has to be
// for what goes on there, both in per cent of CO and CO2 together.
type Gas struct {
	HasCO bool
	CO    physics.Band         // as the solver has it
	Needs entry.Maybe[float64] // the balance with the oxides at the zone's temperature
}

// boundaryOf is the line that a step of reduction has to get across.
var boundaryOf = map[Process]physics.OxideBoundary{
	RedToBlack: physics.HematiteMagnetite, LosesOxygen: physics.MagnetiteWustite, IronForms: physics.WustiteIron,
}

// LeastCO is the share of CO in per cent of the carbon gas above which a step of
// reduction goes, at a temperature in Celsius. It is unknown for what is no such
// step, and for the steps to and from wustite where it is too cold for wustite
// to last.
func (p Process) LeastCO(celsius float64) entry.Maybe[float64] {
	b, step := boundaryOf[p]
	kelvin := physics.FromCelsius(celsius)
	if !step || b != physics.HematiteMagnetite && kelvin < physics.WustiteTriplePoint() {
		return entry.None[float64]()
	}
	return entry.Some(100 * b.CO(kelvin))
}

// layers are those of the solver's in a zone, with their thickness in m; the
// heights of the zone are stretched.
func (z Zone) layers(profile []shaft.Layer, stretch float64) iter.Seq2[shaft.Layer, float64] {
	return func(yield func(shaft.Layer, float64) bool) {
		for _, l := range profile {
			if top := stretch * l.Top; top <= z.Bottom || top > z.Top {
				continue
			}
			if !yield(l, l.Top-l.Bottom) {
				return
			}
		}
	}
}

// carbonMonoxide is the share of CO in the carbon gas over a zone, in per cent; known
// where the solver has any such gas there.
func (z Zone) carbonMonoxide(profile []shaft.Layer, stretch float64) (share physics.Band, known bool) {
	co, both := 0.0, 0.0
	for l, thick := range z.layers(profile, stretch) {
		co, both = co+thick*l.CO, both+thick*(l.CO+l.CO2)
	}
	if both <= 0 {
		return physics.Band{}, false
	}
	return carbonGas(co, both-co), true
}
