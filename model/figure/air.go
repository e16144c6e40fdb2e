package figure

import (
	"math"

	"chargehand/model/fold"
	"chargehand/physics"
)

// air sets the blast as last observed and what follows from it: the least and
// the most charcoal it burns, and the blast over area and over charcoal.
func air(r *Reading, s fold.State) {
	outside := ambient(s)
	meter(r, s, outside)
	b, ok := s.BlastAt(s.At)
	if !ok || !b.Volume.Known {
		return
	}
	lMin := float64(b.Volume.Value)
	blast := physics.LogNormal(lMin, physics.FlowRelSD)
	if b.Off {
		blast = physics.Exact(0)
	}
	r.Figures[Air] = Figure{Band: blast, Basis: Measured}
	if bore := r.Light.Furnace.Bore; bore.Positive() {
		cm := float64(bore.Value)
		r.Figures[AirPerArea] = Figure{Band: blast.Scale(4 / (math.Pi * cm * cm)), Basis: r.furnaceBasis()}
	}
	if rate := r.Figures[BurnRate]; rate.Known() && lMin > 0 {
		perHour := blast.Scale(60.0 / 1000) // l/min to m3/h
		r.Figures[AirPerCharcoal] = Figure{Band: perHour.Over(rate.Band), Basis: rate.Basis}
	}
	flow, err := outside.Flow(physics.FromLitresPerMinute(lMin))
	if err != nil {
		return
	}
	fuel, _ := fuelOf(s)
	rel := math.Hypot(physics.FlowRelSD, physics.CarbonShareSD/fuel.Carbon)
	burns := func(carbon float64) Figure {
		return Figure{Band: physics.LogNormal(physics.ToKgPerHour(fuel.DryMassForCarbon(carbon)), rel), Basis: Estimated}
	}
	r.Figures[BurnLeast], r.Figures[BurnMost] = burns(flow.LeastCarbon()), burns(flow.MostCarbon())
}

// ambient is the air that the blower takes in: 15 C and one atmosphere unless
// the site's altitude or the temperature outside was given.
func ambient(s fold.State) physics.Air {
	a := physics.StandardAir()
	if alt := s.Light.Furnace.Altitude; alt.Known {
		if p, err := physics.PressureAtAltitude(float64(alt.Value)); err == nil {
			a.Pressure = p
		}
	}
	if s.Ambient.Known {
		warm := a
		warm.Temperature = physics.FromCelsius(float64(s.Ambient.Value))
		if warm.Validate() == nil {
			a = warm
		}
	}
	return a
}

// furnaceBasis is what a figure rests on that uses the furnace's own sizes.
func (r *Reading) furnaceBasis() Basis {
	if r.Light.Furnace.Guessed {
		return Guessed
	}
	return Estimated
}
