package figure

import (
	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
	"math"
)

// timeRel is how well a few intervals tell the rate: a charge goes in when
// somebody comes to it, a minute or two after it could, and the level it is
// brought to is judged by eye. A guess, on one mean interval.
const timeRel = 0.10

// burn sets the burn rate and the minutes a measure takes, over the last three
// intervals.
func burn(r *Reading, s fold.State) {
	b, ok := s.Burning()
	if !ok || b.Hours <= 0 {
		return
	}
	perInterval := timeRel / math.Sqrt(float64(b.Intervals))
	if m := b.Charcoal.Dry; !m.Unknown && m.Kg > 0 {
		r.Figures[BurnRate] = Figure{
			Band:  physics.LogNormal(m.Kg/b.Hours, math.Sqrt(m.RelVariance()+perInterval*perInterval)),
			Basis: basisOf(m),
		}
	}
	if b.Counted {
		r.Figures[MinutesPerMeasure] = Figure{
			Band:  physics.LogNormal(b.Hours*60/float64(b.Measures), perInterval),
			Basis: Estimated,
		}
	}
}

// meter sets how much more carbon burned than the metered blast allows at most,
// over every interval between charges whose blast was metered all the while.
func meter(r *Reading, s fold.State, ambient physics.Air) {
	var coal fold.Mass
	var hours, litres float64
	var intervals int
	for i := 1; i < len(s.Charges); i++ {
		from, to := s.Charges[i-1], s.Charges[i]
		blown, known := s.Blown(from.At, to.At)
		if !known || blown <= 0 || to.Charcoal.Charged.Unknown {
			continue
		}
		coal = coal.Plus(to.Charcoal.Charged)
		litres += blown
		hours += (to.At - from.At).Hours()
		intervals++
	}
	if intervals < fewestForMeter {
		return
	}
	fuel, moistureSD := fuelOf(s)
	check := physics.MeterCheck{
		Charcoal: coal.Kg, Duration: hours * 3600, Flow: physics.FromLitresPerMinute(litres / (hours * 60)),
		Fuel: fuel, Air: ambient,
		MassRelSD: math.Sqrt(coal.RelVariance() + timeRel*timeRel/float64(intervals)), MoistureSD: moistureSD,
		CarbonSD: physics.CarbonShareSD, FlowRelSD: 0, // the factor is about the meter; its error is what is sought
	}
	if band, err := check.Factor(); err == nil {
		r.Figures[MeterFactor] = Figure{Band: band, Basis: basisOf(coal)}
	}
}

// fewestForMeter is over how many intervals the meter is first judged.
const fewestForMeter = 3

func basisOf(m fold.Mass) Basis {
	if m.Guessed {
		return Guessed
	}
	return Estimated
}

// fuelOf is the charcoal of the smelt: of its lot as far as that says, else the
// usual.
func fuelOf(s fold.State) (fuel physics.Charcoal, moistureSD float64) {
	fuel, moistureSD = physics.DefaultCharcoal(), physics.CharcoalMoistureSD
	for _, l := range s.Light.Lots {
		if l.What != entry.Charcoal {
			continue
		}
		if l.Moisture.Known {
			fuel.Moisture, moistureSD = float64(l.Moisture.Value), fold.MoistureReadSD
		}
		fuel.Carbon = float64(l.Carbon.Or(entry.Share(fuel.Carbon)))
		fuel.Ash = float64(l.Ash.Or(entry.Share(fuel.Ash)))
	}
	return fuel, moistureSD
}
