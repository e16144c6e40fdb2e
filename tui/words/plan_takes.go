package words

import (
	"math"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
)

var ceilingWords = map[plan.CeilingOf]string{
	plan.ByTheDay: "until the bloom is to be out", plan.BySlag: "room for slag under the tuyere, if it is not tapped (a guess)",
	plan.ByPrint: "no published smelt known here took more", plan.ByTheCrew: "advised for a first smelt, never under 9",
}

// OtherOffers are the smelts that the plan does not go by, with their chances.
func OtherOffers(u modelwords.Units, all []plan.Offer, taken int) (said []string) {
	for i, o := range all {
		switch {
		case i == taken:
		case o.Ore > 0:
			said = append(said, modelwords.Number(float64(o.Smelts), 0)+" x "+KgRound(u, o.Ore)+": "+ChanceBrief(o.Chance))
		case i < taken:
			said = append(said, [...]string{"", "one", "two", "three"}[o.Smelts]+" alone: "+ChanceBrief(o.Chance))
		}
	}
	return said
}

// WithOffers is the chance of no bloom with as many other offers as there is room for.
func WithOffers(none string, offers []string, room int) string {
	for _, o := range offers {
		if len(none)+2+len(o) > room {
			break
		}
		none += "; " + o
	}
	return none
}

// NeedsHead heads what so many smelts need.
func NeedsHead(smelts int) string {
	return [...]string{"needs", "needs", "needs, both", "needs, all 3"}[min(smelts, 3)]
}

func smeltsOf(n int) string {
	return [...]string{"", "", "two smelts of ", "three smelts of "}[n]
}

// OreLetters is the ore in large letters.
func OreLetters(u modelwords.Units, smelts int, kg float64) string {
	text := LargeKg(u, kg) + " ORE"
	if smelts > 1 {
		text = string(rune('0'+smelts)) + " X " + text
	}
	return text
}

// OreLettersShort is the same where there is less room.
func OreLettersShort(u modelwords.Units, smelts int, kg float64) string {
	return strings.TrimSuffix(OreLetters(u, smelts, kg), " ORE")
}

// OreLine is the same in a line.
func OreLine(u modelwords.Units, smelts int, kg float64) string {
	return smeltsOf(smelts) + KgRound(u, kg) + " ore dry"
}

// ChanceLetters is a chance in large letters, ChanceLine in a line, ChanceBrief in a few.
func ChanceLetters(c float64) string { return strings.ToUpper(ChanceBrief(c)) }

// ChanceLine is a chance.
func ChanceLine(c float64) string { return modelwords.NIn10(c) }

// ChanceBrief is a chance in few letters.
func ChanceBrief(c float64) string { return strings.TrimPrefix(modelwords.NIn10(c), "about ") }

// NoneOf is the chance of no compact bloom.
func NoneOf(c float64, own int) string {
	if own < 2 {
		return "no bloom at all: 1 to 8 in 10, for a new crew 3 to 8"
	}
	return "and no compact bloom: " + modelwords.NIn10(c)
}

// TakesLine is what else it takes.
func TakesLine(u modelwords.Units, smelts int, charcoal, hours float64) string {
	each := ""
	if smelts > 1 {
		each = "each "
	}
	return "ore dry; " + each + "with " + KgRound(u, charcoal) + " charcoal dry, " + modelwords.Number(hours, 0) + " hours at the fire"
}

var needShort = map[plan.Need]string{
	plan.NeedOreRoasted: "ore", plan.NeedOreRaw: "or ore as dug", plan.NeedCharcoal: "charcoal", plan.NeedCharcoalForge: "for the forge", plan.NeedWood: "or wood",
	plan.NeedClay: "clay, sand", plan.NeedHours: "hours", plan.NeedHands: "hands",
}

// NeedWord names a need.
func NeedWord(n plan.Need) string { return needShort[n] }

// NeedIs is how much of it.
func NeedIs(u modelwords.Units, n plan.Needed) string {
	if !n.Known {
		return NotKnown
	}
	if n.Wide() {
		return HardlyKnown
	}
	number := func(v float64) string {
		if v >= 100 {
			v = math.Round(v/10) * 10
		}
		if n.Unit == "kg" {
			v = u.Shown(v, "kg")
		}
		return modelwords.Number(v, 0)
	}
	unit := ""
	if n.Unit == "kg" {
		unit = " " + u.Name("kg")
	}
	if n.Need == plan.NeedHours {
		return HoursIs(n.Band.P10, n.Band.P90)
	}
	if n.Point || n.Band.P90 <= n.Band.P10 {
		return number(n.Band.P50) + unit
	}
	return number(n.Band.P10) + " to " + number(n.Band.P90) + unit
}

// TooLittleMark stands before a need of which there is too little, where there is no room to say by how much.
const TooLittleMark = "!"

// needBrief are those that are cut where there is hardly room.
var needBrief = map[plan.Need]string{plan.NeedOreRaw: "as dug", plan.NeedWood: "wood", plan.NeedCharcoalForge: "to forge"}

// NeedWordBrief is what is needed, in eight letters or fewer.
func NeedWordBrief(n plan.Need) string {
	if brief, ok := needBrief[n]; ok {
		return brief
	}
	return needShort[n]
}

// NeedIsBrief is how much of it, in little room: 33-87; HeadDryIn, which stands over it, has the unit.
func NeedIsBrief(u modelwords.Units, n plan.Needed) string {
	return strings.TrimSuffix(strings.ReplaceAll(NeedIs(u, n), " to ", "-"), " "+u.Name("kg"))
}

// HeadDryIn is HeadDry with the unit of what stands under it.
func HeadDryIn(u modelwords.Units) string { return HeadDry + ", " + u.Name("kg") }

// NeedRemark is what a need rests on.
func NeedRemark(n plan.Needed) string {
	switch {
	case n.Need == plan.NeedCharcoalForge && n.Unsaid:
		return ForgeUnsaid
	case n.Need == plan.NeedHours || n.Need == plan.NeedHands:
		return BasisIs(n.Basis)
	case n.Basis == entry.BasisGuessed:
		return Guessed
	}
	return NotWeighedYet
}

// TooLittleShort says by how much it is too little.
func TooLittleShort(u modelwords.Units, kg float64) string { return "too little by " + KgRound(u, kg) }

// HoursIs are hours.
func HoursIs(low, high float64) string {
	return modelwords.Number(low, 0) + " to " + modelwords.Number(math.Ceil(high), 0)
}

// LessShort says by how much it is too little where there is no room.
func LessShort(u modelwords.Units, kg float64) string {
	return modelwords.Number(u.Shown(kg, "kg"), 0) + " less"
}

// LessTerse says the same where there is less.
func LessTerse(u modelwords.Units, kg float64) string {
	return "-" + modelwords.Number(u.Shown(kg, "kg"), 0)
}
