package figure

import (
	"math"

	"chargehand/model/fold"
	"chargehand/physics"
)

// settingRel is how well the air of a blower repeats at a mark of it, as a
// relative standard deviation: what it gives depends on what burden and tuyere
// hold against it. A guess.
const settingRel = 0.10

// air sets the blast as last observed and what follows from it: the least and
// the most charcoal it burns, and the blast over area and over charcoal.
func air(r *Reading, s fold.State) {
	outside := fold.AirAt(s.Light.Furnace, s.Ambient)
	r.Figures[MeterFactor] = MeterOf(s)
	if pa, at, ok := s.Pressure(); ok {
		r.Figures[BackPressure], r.PressedAt = Figure{Band: physics.Exact(float64(pa)), Basis: Measured}, at
	}
	b, ok := s.BlastAt(s.At)
	if !ok || !b.Volume.Known {
		return
	}
	lMin := float64(b.Volume.Value)
	rel, basis := physics.FlowRelSD, Measured
	if b.BySetting {
		rel, basis = math.Hypot(rel, settingRel), Estimated
	}
	blast := physics.LogNormal(lMin, rel)
	if b.Off {
		blast = physics.Exact(0)
	}
	r.Figures[Air] = Figure{Band: blast, Basis: basis}
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
	rel = math.Hypot(rel, physics.CarbonShareSD/fuel.Carbon)
	burns := func(carbon float64) Figure {
		return Figure{Band: physics.LogNormal(physics.ToKgPerHour(fuel.DryMassForCarbon(carbon)), rel), Basis: Estimated}
	}
	r.Figures[BurnLeast], r.Figures[BurnMost] = burns(flow.LeastCarbon()), burns(flow.MostCarbon())
}

// furnaceBasis is what a figure rests on that uses the furnace's own sizes.
func (r *Reading) furnaceBasis() Basis {
	if r.Light.Furnace.Guessed {
		return Guessed
	}
	return Estimated
}
