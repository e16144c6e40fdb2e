package plan

import (
	"time"

	"chargehand/model/entry"
)

// Moment is a line of the day's clock.
type Moment struct {
	After time.Duration // since the wood fire is lit
	What  Happening
	Ore   float64 // kg on each measure, of rising ore
	Slag  float64 // kg with each measure, of iron-rich slag
}

// Happening is what a line of the day says.
type Happening string

// What happens on the day.
const (
	LightWood    Happening = "wood fire"
	Filling      Happening = "fill"
	CharcoalOnly Happening = "charcoal only"
	SlagFirst    Happening = "iron-rich slag"
	FirstOre     Happening = "first ore"
	OreRises     Happening = "ore rises"
	OverLastOre  Happening = "last ore is in"
	BurningDown  Happening = "burn-down"
	Pulling      Happening = "pull the bloom"
)

// Day is the clock of the day by a way to charge, in the middle of its spread.
func (p Plan) Day(w Charging) []Moment {
	at := time.Duration(0)
	day := []Moment{{What: LightWood}}
	at += time.Duration(WoodFire.P50 * float64(time.Hour))
	first := true
	for _, s := range w.Steps {
		m := Moment{After: at, Ore: s.Ore, Slag: s.Slag}
		switch {
		case s.Ore > 0 && first:
			m.What, first = FirstOre, false
		case s.Ore > 0:
			m.What = OreRises
		case s.Slag > 0:
			m.What = SlagFirst
		case len(day) == 1:
			m.What = Filling
		case s.Does == entry.StepLastOre:
			m.What = OverLastOre
		case s.Charges == 0:
			m.What = BurningDown
		default:
			m.What = CharcoalOnly
		}
		day = append(day, m)
		minutes := float64(max(s.Charges, 1)) * s.Minutes
		at += time.Duration(minutes * float64(time.Minute))
	}
	return append(day, Moment{After: at, What: Pulling})
}
