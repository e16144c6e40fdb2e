package figure

import (
	"math"

	"chargehand/model/fold"
	"chargehand/physics"
)

// lastCharges is over how many charges the running ratio goes.
const lastCharges = 5

// ratios sets ore to charcoal of the last charge, of the last five, and of the
// whole smelt from the first charge with ore to the last: charcoal before and
// after heats the furnace, it does not carry ore.
func (r *Reading) ratios(s fold.State) {
	n := len(s.Charges)
	if n == 0 {
		return
	}
	r.ratioOver(s.Charges[n-1:], RatioLast, RatioLastDry)
	r.ratioOver(s.Charges[max(0, n-lastCharges):], RatioFive, RatioFiveDry)
	first, last := -1, -1
	for i, c := range s.Charges {
		if c.HasOre {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first >= 0 {
		r.ratioOver(s.Charges[first:last+1], RatioSmelt, RatioSmeltDry)
	}
}

func (r *Reading) ratioOver(cs []fold.Charge, charged, dry Name) {
	var coal, ore fold.Total
	for _, c := range cs {
		coal.Charged, coal.Dry = coal.Charged.Plus(c.Charcoal.Charged), coal.Dry.Plus(c.Charcoal.Dry)
		ore.Charged, ore.Dry = ore.Charged.Plus(c.Ore.Charged), ore.Dry.Plus(c.Ore.Dry)
	}
	r.Figures[charged] = ratio(ore.Charged, coal.Charged)
	r.Figures[dry] = ratio(ore.Dry, coal.Dry)
}

// ratio of two masses, each with its own spread; unknown when either is. Rain on the
// charcoal is no charcoal.
func ratio(ore, coal fold.Mass) Figure {
	coal = coal.Sound()
	if ore.Unknown || coal.Unknown || coal.Kg <= 0 {
		return none
	}
	f := Figure{
		Band:  physics.LogNormal(ore.Kg/coal.Kg, math.Sqrt(ore.RelVariance()+coal.RelVariance())),
		Basis: Estimated,
	}
	if ore.Guessed || coal.Guessed {
		f.Basis = Guessed
	}
	return f
}
