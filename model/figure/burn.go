package figure

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
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

// Against is how the burn rate stands to what the blast can burn.
type Against int

// A rate stands over the blast as soon as its middle does, so that no such rate is
// ever shown without a word; it stands under it only for certain.
const (
	BlastUnread Against = iota // the blast is not known in l/min, or there is no rate
	AsBlast
	OverBlast  // more than the blast burns if all of it leaves as CO
	UnderBlast // less than it burns if all of it leaves as CO2
)

// BurnAgainst holds the burn rate against the blast.
func (r *Reading) BurnAgainst() Against {
	rate, least, most := r.Figures[BurnRate], r.Figures[BurnLeast], r.Figures[BurnMost]
	switch {
	case !rate.Known() || !least.Known() || !most.Known():
		return BlastUnread
	case rate.P50 > most.P50:
		return OverBlast
	case rate.P90 < least.P10:
		return UnderBlast
	}
	return AsBlast
}

// meterLow is a meter factor below which so much of the metered air cannot have
// burned: the least a blast burns, all to dioxide, is half the most.
const meterLow = 0.5

// Disbelieved tells of a meter factor whether it lies outside of what can be, for
// certain: then the meter, the measure or a leak is wrong, and what rests on the
// metered blast with it.
func (f Figure) Disbelieved() bool {
	return f.Known() && f.Basis != Guessed && (f.P10 > 1 || f.P90 < meterLow)
}

// MeterDoubted tells whether the meter is not believed.
func (r *Reading) MeterDoubted() bool { return r.Figures[MeterFactor].Disbelieved() }

// MeterOf is the meter factor of a state: how much more carbon burned than the
// metered blast allows at most, over every interval between charges whose blast was
// metered all the while, and blown with the blower that blows now.
func MeterOf(s fold.State) Figure {
	ambient := fold.AirAt(s.Light.Furnace, s.Ambient)
	var coal fold.Mass
	var hours, litres float64
	var intervals int
	for i := 1; i < len(s.Charges); i++ {
		from, to := s.Charges[i-1], s.Charges[i]
		blown, known := s.Blown(from.At, to.At)
		if !known || blown <= 0 || to.Charcoal.Charged.Unknown || !blownAsNow(s, from.At, to.At) {
			continue
		}
		coal = coal.Plus(to.Charcoal.Charged)
		litres += blown
		hours += (to.At - from.At).Hours()
		intervals++
	}
	if intervals < fewestForMeter {
		return none
	}
	fuel, moistureSD := fuelOf(s)
	check := physics.MeterCheck{
		Charcoal: coal.Kg, Duration: hours * 3600, Flow: physics.FromLitresPerMinute(litres / (hours * 60)),
		Fuel: fuel, Air: ambient,
		MassRelSD: math.Sqrt(coal.RelVariance() + timeRel*timeRel/float64(intervals)), MoistureSD: moistureSD,
		CarbonSD: physics.CarbonShareSD, FlowRelSD: 0, // the factor is about the meter; its error is what is sought
	}
	band, err := check.Factor()
	if err != nil {
		return none
	}
	return Figure{Band: band, Basis: basisOf(coal)}
}

// blownAsNow tells whether the blower that blew last blew between two moments, and no other.
func blownAsNow(s fold.State, from, to time.Duration) bool {
	at, _ := s.BlastAt(from)
	now := s.Blast[len(s.Blast)-1].Blower
	return at.Blower == now && !slices.ContainsFunc(s.Blast, func(b fold.Blast) bool { return b.At > from && b.At < to && b.Blower != now })
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
