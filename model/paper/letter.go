package paper

import "chargehand/model/entry"

// Letter is the key of an act, and the kind of event that a row of it becomes.
type Letter struct {
	Key   string
	Kind  entry.Kind
	Takes Takes
}

// Takes is what stands behind a letter.
type Takes int

// What a letter takes.
const (
	TakesNothing  Takes = iota
	TakesBoth           // charcoal, then ore
	TakesOre            //
	TakesCharcoal       //
	TakesBlast          // l/min, or on, or off
	TakesMass           // kg, may be left out
	TakesLook           // what is seen, in the peep unless another place is named first
	TakesDepth          // cm below the rim
	TakesHeat           // degrees Celsius
	TakesWeight         // what was weighed, kg
	TakesWords
)

// Letters are all letters of the paper log, the commonest first.
var Letters = []Letter{
	{"c", entry.KindCharge, TakesBoth},
	{"s", entry.KindCharge, TakesOre},
	{"f", entry.KindCharge, TakesCharcoal},
	{"b", entry.KindBlast, TakesBlast},
	{"t", entry.KindTap, TakesMass},
	{"r", entry.KindRod, TakesNothing},
	{"l", entry.KindLook, TakesLook},
	{"p", entry.KindPoke, TakesNothing},
	{"i", entry.KindDip, TakesDepth},
	{"e", entry.KindTemperature, TakesHeat},
	{"w", entry.KindWeigh, TakesWeight},
	{"n", entry.KindNote, TakesWords},
	{"m", entry.KindLastOre, TakesNothing},
	{"d", entry.KindBurnDown, TakesNothing},
}

// Of finds a letter by its key.
func Of(key string) (Letter, bool) {
	for _, l := range Letters {
		if l.Key == key {
			return l, true
		}
	}
	return Letter{}, false
}
