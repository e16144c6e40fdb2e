package rehearse

import "chargehand/model/truth"

// Mishap is something that goes wrong in a rehearsal, by its name on the wire.
type Mishap = truth.Mishap

// Mishaps are all of them.
func Mishaps() []Mishap { return truth.Mishaps() }

// ByChance are those that the furnace of a number has of itself: none on about half of all days.
func ByChance(number int64) []Mishap { return truth.ByChance(number) }
