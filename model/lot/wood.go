package lot

import (
	"strings"

	"chargehand/model/house"
	"chargehand/physics"
)

// stacked are kg a stacked cubic metre of split wood at 22 % water, by species
// (brennholz-kamin.com/raumgewicht-brennholz-sorten; the page does not say on which
// basis). A stack that holds less, of round or thin wood, is further off than the species
// are from one another: 0.29 to 0.79 of a stack is solid.
var stacked = map[string]float64{
	"maple": 480, "birch": 470, "beech": 550, "douglas fir": 370, "oak": 520, "alder": 420, "ash": 490, "spruce": 365, "fir": 365,
	"pine": 400, "cherry": 440, "larch": 440, "poplar": 340, "willow": 325,
}

// looseOrTight is by how much two stacks of one wood differ (assumed).
const looseOrTight = 0.15

// DryStacked is the dry wood in a stacked cubic metre, kg: by its species, where one is
// named that is known, else between the lightest and the heaviest.
func DryStacked(species string) (kg physics.Band, known bool) {
	low, high := 0.0, 0.0
	words := strings.Fields(strings.ToLower(species))
	for name, is := range stacked {
		switch said := strings.Join(words, " "); {
		case said == name || !known && len(words) > 0 && strings.TrimSuffix(words[0], ",") == name:
			low, high, known = is, is, true
			if said == name {
				return dryAt22(low, high), true
			}
		}
	}
	if !known {
		low, high = stacked["willow"], stacked["beech"]
	}
	return dryAt22(low, high), known
}

// dryAt22 takes 22 % of water out, on either basis, and lets the stack be loose or tight.
func dryAt22(low, high float64) physics.Band {
	const ofWeight, onDry = 1 - 0.22, 1 / 1.22
	return physics.Band{P10: low * ofWeight * (1 - looseOrTight), P50: (low + high) / 2 * (ofWeight + onDry) / 2, P90: high * onDry * (1 + looseOrTight)}
}

// DryWood is the dry wood in what is left of a lot, kg, and whether anything says: its
// weight, else the stack it stands in.
func DryWood(l house.Lot) (kg physics.Band, ok bool) {
	switch {
	case l.Left.Known() && l.Left.Kg > 0:
		return physics.LogNormal(l.Left.Kg, l.Left.SD/l.Left.Kg), true
	case l.Volume > 0:
		b, _ := DryStacked(l.Species)
		return b.Scale(l.Volume), true
	}
	return physics.Band{}, false
}

// Stacked is how many stacked cubic metres so much dry wood makes, kg, of a species.
func Stacked(dry physics.Band, species string) physics.Band {
	a, _ := DryStacked(species)
	return dry.Over(a)
}
