package rule_test

import (
	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/model/solve"
)

// paced is a smelt filled at minute 10 and charged from minute 20 on, every so many
// minutes, with a bucket of 1.8 kg and so much ore.
func paced(every, kg float64, charges int) *day {
	return pacedIn(entry.Light{Measures: []entry.Measure{bucketOf(1.8)}}, every, kg, charges)
}

func pacedIn(l entry.Light, every, kg float64, charges int) *day {
	d := newDay(l).with(10, entry.Fill{Parts: entry.Parts{coal(5)}}).with(10.5, look(entry.AtTopGas, entry.TopGasAlight))
	for i := range charges {
		d.key(20+every*float64(i), charge(buckets(1), ore(kg)))
	}
	return d
}

// blown is the same with a blast from minute 15 on; the bore of 25 cm has 491 cm2.
func blown(lMin, every, kg float64, charges int) *day {
	d := newDay(entry.Light{Measures: []entry.Measure{bucketOf(1.8)}}).with(10, entry.Fill{Parts: entry.Parts{coal(5)}}).with(10.5, look(entry.AtTopGas, entry.TopGasAlight)).with(15, blast(lMin))
	for i := range charges {
		d.key(20+every*float64(i), charge(buckets(1), ore(kg)))
	}
	return d
}

// knownScenes are those of what every smelter knows (rules of thumb: a bucket of about
// 1.8 kg in 8 to 10 minutes, under 6 too fast, over about 14 too slow; ore to charcoal
// about 1 : 1 over all; 1.2 to 1.5 l/min per cm2). Good smelts were fast, or rich, or
// blown otherwise: one of the two alone says nothing.
func knownScenes() map[rule.ID][]scene {
	bare := charge(buckets(1))
	lit := func() *day { return newDay(entry.Light{}).with(10, entry.Fill{}) }
	withOre := charge(coal(1.9), ore(1))
	planned := entry.Light{Recipe: entry.Parts{coal(1.9), ore(1)}}
	warming := seen(60, 0, 60, func(g *solve.Sample) { g.Hearth = about(900 + 5*g.At.Minutes()) })
	cooling := seen(60, 0, 60, func(g *solve.Sample) { g.Hearth = about(1300 - 5*g.At.Minutes()) })
	bowl := entry.Light{Measures: []entry.Measure{bucketOf(0.5)}}
	guessed := entry.Light{Furnace: entry.Furnace{Name: "invented", Bore: cm(25), Stack: cm(50), Rim: cm(55), Guessed: true}, Measures: []entry.Measure{bucketOf(1.8)}}
	return map[rule.ID][]scene{
		// The fifth charge goes in at minute 40, every five minutes; 2.2 on 1.8 kg.
		rule.MixRich: {
			{name: "rich and fast", day: paced(5, 2.2, 8), to: 56, raised: 40, says: "1.22 : 1 over five charges and 5 min a measure: the ore has no time"},
			{name: "two charges without ore", day: paced(5, 2.2, 5).with(45, bare).with(50, bare), to: 52, raised: 40, cleared: 50},
			{name: "fast, and as much ore as charcoal", day: paced(5, 1.8, 12), to: 76},
			{name: "rich and as fast as most", day: paced(9, 2.2, 8), to: 84},
			{name: "rich late, in nine minutes", day: paced(9, 1, 6).with(74, charge(buckets(1), ore(3))).with(83, charge(buckets(1), ore(3))).with(92, charge(buckets(1), ore(3))), to: 95},
			{name: "rich, and two in a hurry", day: paced(9, 2.2, 6).with(69, charge(buckets(1), ore(2.2))).with(73, charge(buckets(1), ore(2.2))), to: 75},
			{name: "of bowls, half a kilogram each", day: pacedIn(bowl, 4, 0.6, 10), to: 58},
			{name: "the last ore in", day: paced(5, 2.2, 5).with(41, entry.LastOre{}), to: 45, raised: 40, cleared: 41},
		},
		// The fifth charge with ore goes in at minute 56, every nine minutes.
		rule.RatioHigh: {
			{name: "rich all day", day: paced(9, 2.2, 8), to: 84, raised: 57, says: "1.22 : 1 since the first ore: blooms come of less than 1.1 : 1"},
			{name: "five charges without ore", day: paced(9, 2.2, 5).with(65, bare).with(74, bare), to: 76, raised: 57, cleared: 74},
			{name: "as rich as any with a bloom", day: paced(9, 1.9, 12), to: 125},
			{name: "rich at the end only", day: paced(9, 1, 8).with(92, charge(buckets(1), ore(3))).with(101, charge(buckets(1), ore(3))), to: 105},
			{name: "four charges", day: paced(9, 2.2, 4), to: 50},
			{name: "told as rich and fast", day: paced(5, 2.2, 8), to: 56},
		},
		// 250 l/min are 0.51 a cm2. Three intervals are over at minute 80.
		rule.AirWeak: {
			{name: "little air and slow", day: blown(250, 20, 1, 5), to: 101, raised: 90, says: "0.51 l/min a cm² over the bore and 20 min a measure; blooms come of 0.6 and more"},
			{name: "a step more", day: blown(250, 20, 1, 5).with(101, blast(400)), to: 103, raised: 90, cleared: 101},
			{name: "little air and as fast as most", day: blown(250, 10, 1, 7), to: 85},
			{name: "enough air and slow", day: blown(350, 20, 1, 5), to: 101},
			{name: "nobody read it", day: paced(20, 1, 5), to: 101},
		},
		// 1200 l/min are 2.44 a cm2. Three intervals are over at minute 35.
		rule.AirStrong: {
			{name: "much air and fast", day: blown(1200, 5, 1, 6), to: 50, raised: 45, says: "2.44 l/min a cm² over the bore and 5 min a measure; most blooms come of 2.2 and less"},
			{name: "a step less", day: blown(1200, 5, 1, 7).with(51, blast(800)), to: 53, raised: 45, cleared: 51},
			{name: "much air and as fast as most", day: blown(1200, 10, 1, 7), to: 85},
			{name: "less air and fast", day: blown(900, 5, 1, 8), to: 58},
		},
		rule.AirOdd: {
			{name: "little", day: blown(250, 10, 1, 7), to: 45, raised: 30, says: "0.51 l/min a cm² over the bore; most blooms come of 0.6 to 2.2"},
			{name: "told for a while, once", day: blown(250, 10, 1, 7).with(82, blast(500)).with(84, blast(250)), to: 97, raised: 30, cleared: 50},
			{name: "a crew that tires for five minutes", day: blown(500, 10, 1, 7).with(35, blast(250)).with(40, blast(500)), to: 85},
			{name: "a usual one", day: blown(500, 10, 1, 7), to: 85},
			{name: "in a furnace whose sizes nobody gave", day: pacedIn(guessed, 10, 1, 7).with(82, blast(250)), to: 95},
		},
		rule.OreEarly: {
			{name: "red with the first ore", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepRed)), to: 24, raised: 22, says: "peep red while the hearth is still warming"},
			{name: "orange twice", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepOrange)).with(26, look(entry.AtPeep, entry.PeepOrange)), to: 28, raised: 22, says: "peep orange while the hearth is still warming"},
			{name: "orange once, a note", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepOrange)), to: 24, raised: 22, note: true},
			{name: "read too cold with ore in the next charge", day: newDay(planned).with(10, entry.Fill{}).with(20, charge(coal(1.9))).with(22, entry.Temperature{Degrees: 1050, Where: entry.WherePeep}), to: 24, raised: 22},
			{name: "white then", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepRed)).with(26, look(entry.AtPeep, entry.PeepWhite)), to: 28, raised: 22, cleared: 26},
			{name: "no sign", day: lit().with(20, withOre), to: 50},
			{name: "by the model alone", day: lit().with(20, withOre), solver: warming, to: 50},
			{name: "by the model and a sign", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepRed)), solver: warming, to: 24, raised: 22},
			{name: "over a hearth that cools", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepRed)), solver: cooling, to: 24},
			{name: "after three charges with ore", day: lit().with(20, withOre).with(30, withOre).with(40, withOre).with(42, look(entry.AtPeep, entry.PeepOrange)), to: 45},
			{name: "of charcoal alone", day: lit().with(20, charge(coal(1.9))).with(22, look(entry.AtPeep, entry.PeepOrange)), to: 24},
			{name: "white", day: lit().with(20, withOre).with(22, look(entry.AtPeep, entry.PeepWhite)), to: 24},
		},
	}
}
