package words

import (
	"math"

	"chargehand/model/plan"
	modelwords "chargehand/model/words"
)

// HearthBandWord is the head of the band, or in how many of the plausible furnaces it was
// asked so far.
func HearthBandWord(furnaces int, solving bool) string {
	if !solving {
		return "its range"
	}
	return "range " + modelwords.Number(float64(furnaces), 0) + "/8"
}

// HearthBand is the hearth in eight plausible furnaces, to fifty degrees: from where to
// where or, without room, how far off the middle.
func HearthBand(u modelwords.Units, low, mid, high float64, roomy bool) string {
	if roomy {
		return u.Coarse(low) + " to " + u.Coarse(high)
	}
	if ends := u.Coarse(low) + "-" + u.Coarse(high); len(ends) < 9 {
		return ends
	}
	off := math.Max(50, 50*math.Round(math.Max(mid-low, high-mid)/50))
	return "±" + modelwords.Number(u.Shown(off, "K"), 0)
}

// FearIn is what is feared, with in how many of the furnaces asked where there is room.
func FearIn(f plan.Fear, n, of, room int) string {
	if brief := FearBrief(f); n > 0 && of >= plan.BandFurnaces {
		said := brief + ", " + modelwords.Number(float64(n), 0) + " of " + modelwords.Number(float64(of), 0)
		if len(said) < room {
			return said
		}
	}
	if room < 10 {
		return fearTiny[f]
	}
	return FearBrief(f)
}

var fearTiny = map[plan.Fear]string{
	plan.FearLong: "long day", plan.FearCold: "too soon", plan.FearRich: "rich ore", plan.FearHearth: "too cold", plan.FearStiff: "slag set", plan.FearCast: "cast",
	plan.FearDark: "too late", plan.FearOre: "ore low", plan.FearCharcoal: "fuel low", plan.FearLittle: "no bloom",
}

// HearthAbout is the hearth as the model has it, to fifty degrees.
func HearthAbout(u modelwords.Units, celsius float64, roomy bool) string {
	if roomy {
		return "about " + u.Coarse(celsius)
	}
	return u.Coarse(celsius)
}

// NothingToFear says that the model fears nothing.
func NothingToFear(roomy bool) string {
	if roomy {
		return "fears nothing"
	}
	return "no fear"
}

var fearBrief = map[plan.Fear]string{
	plan.FearLong: "a long day", plan.FearCold: "ore too early", plan.FearRich: "rich ore", plan.FearHearth: "cold hearth", plan.FearStiff: "stiff slag", plan.FearCast: "cast iron",
	plan.FearDark: "too late", plan.FearOre: "ore short", plan.FearCharcoal: "charcoal short", plan.FearLittle: "little ore for a bloom",
}

// FearBrief is what is feared.
func FearBrief(f plan.Fear) string { return fearBrief[f] }
