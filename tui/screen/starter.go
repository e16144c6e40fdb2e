package screen

import (
	"chargehand/model/entry"
)

// Starter is a furnace to begin with: its sizes, its measures and its first
// charge.
type Starter struct {
	Name     string
	Furnace  entry.Furnace
	Measures []entry.Measure
	Lots     []entry.Lot
	Recipe   entry.Parts
	Plan     *entry.PlanTaken   // the plan that it is lit by, nil for none
	Ramp     []entry.RecipeStep // its charges
	Trying   string             // what is tried by it
}

// Starters are furnaces of the usual sizes, every number of them a guess to be
// replaced by measuring. The short shaft has the sizes, the bucket and the
// first ratio of the course furnace of 30 Nov 2016 (Markewitz, data sheet); the
// others are that one scaled by bore and height (common practice).
func Starters() []Starter {
	return []Starter{
		starter("short shaft", 25, 50, 60, 15, 20, 1.9, 0.5, 2),
		starter("tall narrow shaft", 22, 80, 90, 15, 20, 1.5, 0.4, 2),
		starter("wide shaft", 35, 60, 70, 20, 25, 3.5, 0.9, 2),
	}
}

func starter(name string, bore, stack, rim, base entry.Centimetre, tuyere entry.Millimetre, bucket, scoop entry.Kilogram, scoops entry.Count) Starter {
	const charcoal, ore = "bucket", "scoop"
	return Starter{
		Name: name,
		Furnace: entry.Furnace{
			Name: name, Bore: entry.Some(bore), Stack: entry.Some(stack), Rim: entry.Some(rim), TuyereBase: entry.Some(base),
			TuyereBore: entry.Some(tuyere), TuyereAngle: entry.Some(entry.Degree(20)), Practice: entry.SlagBowl, Guessed: true,
		},
		Measures: []entry.Measure{
			{Name: charcoal, What: entry.Charcoal, Mass: entry.Some(bucket), Guessed: true},
			{Name: ore, What: entry.Ore, Mass: entry.Some(scoop), Guessed: true},
		},
		Recipe: entry.Parts{
			{What: entry.Charcoal, Measure: charcoal, Count: entry.Some(entry.Count(1))},
			{What: entry.Ore, Measure: ore, Count: entry.Some(scoops)},
		},
	}
}
