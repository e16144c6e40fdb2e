package plan

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Charging is one way to charge: steps from the fill to the burn-down.
type Charging struct {
	Name     string
	Steps    []Step
	Ore      float64 // kg dry, in all
	Charcoal float64 // kg dry, in all
	Minutes  float64 // from the first blast to the bloom: fill, charges and burn-down, without the wood fire
	Fears    []Fear
}

// Step is some charges that are alike.
type Step struct {
	Does     entry.StepDoes
	Charges  int
	Charcoal float64 // kg dry of each
	Ore      float64 // kg dry of each
	Slag     float64 // kg of iron-rich slag with each
	Minutes  float64 // of each
}

// Fear is what speaks against a way to charge.
type Fear string

// What may be feared of one.
const (
	FearRich Fear = "rich" // much ore at once: the hearth cools, the slag takes the iron
	FearLong Fear = "long" // a long day
	FearCold Fear = "cold" // ore before the hearth is warm
)

// ramp is how the ore rises: so many charges of so many kg on each kg of charcoal,
// the last for all that is left.
type ramp struct {
	name   string
	before int // charges of charcoal only after the fill
	rises  []rise
}

type rise struct {
	charges int
	ore     float64 // kg on a kg of charcoal
}

// ramps are three ways that gave blooms, with the ore by the charcoal's mass (all
// Markewitz, data sheets and blog): usual is 30 Nov 2016 (5 x 1, 4 x 1.5 and 9 x 2 kg
// on 1.92 kg, after six of charcoal only), bold 2022 (3 x 1, 3 x 1.5, 3 x 2 and
// 3 x 3 on 1.8 kg, after four), careful the summer solstice of 2018 (7 x 1, 3 x 1.5
// on 1.8 kg) without its last step to 2, after seven: 2 to 11 are published.
var ramps = []ramp{
	{"careful", 7, []rise{{7, 0.55}, {0, 0.8}}},
	{"usual", 6, []rise{{5, 0.52}, {4, 0.78}, {0, 1.04}}},
	{"bold", 4, []rise{{3, 0.55}, {3, 0.83}, {3, 1.1}, {0, 1.65}}},
}

// usualWay is the place of the usual one of them.
const usualWay = 1

// WayNames are the names of the three, in their order.
func WayNames() (names []string) {
	for _, r := range ramps {
		names = append(names, r.name)
	}
	return names
}

// Own is what a way is called of which a person changed how the ore rises.
const Own = "own"

// Rise is how a person has the ore rise.
type Rise struct {
	Before int     // charges of charcoal only after the fill
	First  float64 // kg dry in the first charge with ore
	Step   float64 // kg dry more at each step; 0 for none
	Every  int     // charges to a step
	Most   float64 // kg dry in a charge at most
}

// RiseOf is how the ore rises by a way, as a person would begin to change it.
func RiseOf(c Charging) Rise {
	var r Rise
	var rising []Step
	for _, s := range c.Steps {
		switch {
		case s.Does == entry.StepCharcoal, s.Does == entry.StepIronSlag:
			r.Before += s.Charges
		case s.Ore > 0:
			rising = append(rising, s)
		}
	}
	for i, s := range rising {
		if i > 0 && i == len(rising)-1 && s.Charges == 1 && s.Ore < (1+crumb)*rising[i-1].Ore { // what was left over
			break
		}
		switch i {
		case 0:
			r.First, r.Every, r.Most = s.Ore, s.Charges, s.Ore
		case 1:
			r.Step = max(math.Round(100*(s.Ore-r.First))/100, 0)
		}
		r.Most = max(r.Most, s.Ore)
	}
	r.Every = max(r.Every, 1)
	return r
}

// ramp is the rise by measures of so many kg of charcoal.
func (r Rise) ramp(measure float64) ramp {
	own := ramp{Own, max(r.Before, 0), nil}
	ore := max(r.First, leastRise)
	for most := max(r.Most, ore); r.Step > 0 && ore < most && len(own.rises) < mostRises; ore = min(ore+r.Step, most) {
		own.rises = append(own.rises, rise{max(r.Every, 1), ore / measure})
	}
	own.rises = append(own.rises, rise{0, ore / measure})
	return own
}

// Less ore than leastRise on a charge, kg, is none; more steps than mostRises nobody keeps
// in mind.
const (
	leastRise = 0.1
	mostRises = 40
)

// BurnDown is that of the fold in minutes.
const BurnDown = float64(fold.BurnDown) / float64(time.Minute)

// coverCharges are of charcoal only, over the last ore (common practice).
const coverCharges = 1

// longDay is from how many hours of blast on a day is said to be long: the main
// sequences of published smelts with 15 to 42 kg of ore took 3 1/4 to 7 1/2 (testdata/smelts).
const longDay = 7.5

// Chargings are three ways to bring in so much ore (kg dry) with a measure of
// charcoal (kg dry) that lasts so many minutes a kg, in a furnace that takes so
// much to fill. The ore is brought in to the last 10 g.
func Chargings(ore, fill, measure, pace float64) []Charging {
	return chargings(ore, 0, fill, measure, pace, nil)
}

// chargings are those with so much iron-rich slag before the ore, and a person's own rise in
// place of some.
func chargings(ore, seed, fill, measure, pace float64, own map[string]Rise) []Charging {
	all := make([]Charging, len(ramps))
	for i, r := range ramps {
		if o, is := own[r.name]; is {
			r = o.ramp(measure)
		}
		all[i] = r.charging(ore, seed, fill, measure, pace)
	}
	return all
}

// seedCharges is on how many of the last charges before the ore iron-rich slag goes in: two
// of 1 kg in 2018, two of 0.75 kg in 2021 (Markewitz, data sheets).
const seedCharges = 2

func (r ramp) charging(ore, seed, fill, measure, pace float64) Charging {
	c := Charging{Name: r.name}
	each := measure * pace
	add := func(s Step) {
		c.Steps = append(c.Steps, s)
		c.Charcoal += float64(s.Charges) * s.Charcoal
		c.Ore += float64(s.Charges) * s.Ore
		c.Minutes += float64(s.Charges) * s.Minutes
	}
	fills := int(math.Max(1, math.Round(fill/measure)))
	add(Step{Does: entry.StepFill, Charges: fills, Charcoal: measure, Minutes: each / 3})
	seeded := 0
	if seed > 0 {
		seeded = min(max(r.before, 1), seedCharges)
	}
	if alone := max(r.before-seeded, 0); alone > 0 {
		add(Step{Does: entry.StepCharcoal, Charges: alone, Charcoal: measure, Minutes: each})
	}
	if seeded > 0 {
		add(Step{Does: entry.StepIronSlag, Charges: seeded, Charcoal: measure, Slag: seed / float64(seeded), Minutes: each})
	}
	left := ore
	for _, s := range r.rises {
		one := math.Round(s.ore*measure*20) / 20 // by 50 g, as a scale outdoors shows
		n := int(left / one)
		if s.charges > 0 {
			n = min(n, s.charges)
		}
		if n > 0 {
			add(Step{Does: entry.StepCharge, Charges: n, Charcoal: measure, Ore: one, Minutes: each})
			left -= float64(n) * one
		}
	}
	c.rest(math.Round(left*100)/100, measure, each, add)
	add(Step{Does: entry.StepLastOre, Charges: coverCharges, Charcoal: measure, Minutes: each})
	c.Steps = append(c.Steps, Step{Does: entry.StepBurnDown, Minutes: BurnDown})
	c.Minutes += BurnDown
	c.Fears = c.fears(measure, pace)
	return c
}

// A rest of the ore less than crumb of a full charge goes in with the last of them; one less
// than half of it makes two even ones of the last and itself, so that no charge of charcoal
// goes in for a handful of ore.
const (
	crumb    = 0.1
	halfFull = 0.5
)

// rest brings in what the full charges left of the ore, kg, with measures that last so many
// minutes each.
func (c *Charging) rest(left, measure, each float64, add func(Step)) {
	one := Step{Does: entry.StepCharge, Charges: 1, Charcoal: measure, Ore: left, Minutes: each}
	last := &c.Steps[len(c.Steps)-1]
	switch {
	case left <= 0:
		return
	case left < halfFull*last.Ore:
		if one.Ore = last.Ore + left; left >= crumb*last.Ore {
			one.Charges, one.Ore = 2, one.Ore/2
		}
		c.Ore, c.Charcoal, c.Minutes = c.Ore-last.Ore, c.Charcoal-measure, c.Minutes-each
		if last.Charges--; last.Charges == 0 {
			c.Steps = c.Steps[:len(c.Steps)-1]
		}
	}
	add(one)
}

func (c Charging) fears(measure, pace float64) (fs []Fear) {
	if c.Minutes > longDay*60 {
		fs = append(fs, FearLong)
	}
	rich, first := 0.0, true
	minutes := 0.0
	for _, s := range c.Steps {
		if s.Charcoal > 0 {
			rich = max(rich, s.Ore/s.Charcoal)
		}
		if s.Ore > 0 && first {
			first = false
			if minutes < warmed {
				fs = append(fs, FearCold)
			}
		}
		minutes += float64(s.Charges) * s.Minutes
	}
	if rich > 1.1 && measure*pace < 6 || rich > 1.5 {
		fs = append(fs, FearRich)
	}
	return fs
}

// warmed is how long charcoal burns under the blast before ore goes in, min: 45 of
// charcoal in the Rockbridge recipe (iron.wlu.edu/recipe.htm).
const warmed = 45
