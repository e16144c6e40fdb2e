package words

import (
	"math"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/plan"
	modelwords "chargehand/model/words"
)

// The plan: what its keys do, and the same in the keys line.
const (
	DoPlanSmelt      = "plan a smelt"
	DoTakePlan       = "take this way to charge"
	DoWayBack        = "the way before"
	DoWayOn          = "the next way to charge"
	DoWanted         = "what is wanted"
	DoSure           = "how sure it is to be"
	DoWhichFurnace   = "in which furnace"
	DoBeforeLighting = "before lighting: what must be so"
	DoLightPlan      = "light the fire by it"

	DoAssumed = "what is assumed, and what replaces it"

	DoRises  = "how the ore rises, by the way shown"
	DoTheDay = "the day: by when what, and when the fire is lit"

	ShortRises = "ore rising"
	ShortDay   = "the day"

	ShortAssumed      = "assumed"
	ShortTakePlan     = "take it"
	ShortWhichWay     = "choose"
	ShortWanted       = "wanted"
	ShortSure         = "how sure"
	ShortWhichFurnace = "furnace"
	ShortBefore       = "checks"

	DoTrying    = "what is tried this time, and the last lessons"
	ShortTrying = "tried"
	DoWallWords = "words for the wall page of the sheet"
	ShortWall   = "wall words"
)

// What the screen of the plan says.
const (
	PlanTitle        = "plan"
	UsualFurnace     = "the usual furnace: none is keyed"
	BeingReckoned    = "being reckoned"
	NoOreGivesIt     = "No amount of ore that is known of gives that chance. Ask for less (w), or be content with less certainty (n)."
	NotNeeded        = "not needed"
	NoAmount         = "no amount of ore gives it"
	ChanceOfIt       = "chance of it, about"
	NeedsHead        = "needs"
	ThereIsHead      = "there is"
	ChanceWord       = "chance"
	HearthWord       = "hearth °C"
	FearsWord        = "the model"
	WhatIsWanted     = "what is wanted"
	ABloom           = "bloom"
	ABillet          = "billet"
	ABar             = "bar"
	HowSure          = "how sure"
	InTen            = "in 10"
	TakeOneFirst     = "take a plan first: enter"
	AnotherLine      = "a line of your own"
	OnlyWhatWasKeyed = "before lighting, as far as it was keyed"
	JudgeYourself    = "this list knows only what was keyed; fire ban, wind, gas and people you judge yourself"
)

// FurnaceAsIn is the furnace of a smelt that was, where none is keyed.
func FurnaceAsIn(furnace, smelt string) string { return furnace + ", as in " + smelt }

// AboutPlan says of which furnace and which day the plan is.
func AboutPlan(furnace, day string) string {
	if t, err := time.Parse(time.DateOnly, day); err == nil {
		return furnace + ", " + t.Format("Mon 2 Jan")
	}
	return furnace
}

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

// HearthBandWord is the head of the band, or in how many of the plausible furnaces it was
// asked so far.
func HearthBandWord(furnaces int, solving bool) string {
	if !solving {
		return "band"
	}
	return "band " + modelwords.Number(float64(furnaces), 0) + "/8"
}

// HearthBand is the hearth in eight plausible furnaces, to fifty degrees: from where to
// where or, without room, how far off the middle.
func HearthBand(u modelwords.Units, low, mid, high float64, roomy bool) string {
	if roomy {
		return u.Coarse(low) + " to " + u.Coarse(high)
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

// What is asked to prepare a smelt.
const (
	DoPrepare       = "prepare one"
	PrepareIs       = "what can be made, what it takes, the day"
	PrepareTakes    = "three enters; lights nothing"
	TheUsualFurnace = "the usual one: bore 25 cm, 50 cm above the tuyere"
	OreToSmelt      = "roasted ore, dry"
	BlastGiven      = "what the blower gives"
)

// Assumed is what a plan takes for granted, in the order of what helps most, each with
// what replaces it (the figures stand beside their sources in model/plan).
var Assumed = []struct {
	Text      string
	OfFurnace bool
}{
	{"bucket 1.8 kg within 15 %: weigh a bucket, k at the stores", false},
	{"blast as advised for the bore: the bag test, a at the furnaces", true},
	{"bore 25, 50 cm above the tuyere: measure, n at the furnaces", true},
	{"charcoal with 5 to 15 % water: dry a sample, m at the stores", false},
	{"ore of 35 to 60 % iron: an assay, a at the stores", false},
	{"ore of about 10 mm: two sieves, o at the stores", false},
	{"wall 5 cm: measure, w at the furnaces", true},
	{"wood fire 1.5 to 2.5 h, 8 to 16 min a bucket: your own smelts", false},
	{"first ore after 2 to 11 buckets, burn-down 27 to 35 min: your own smelts", false},
}

// BeforeLighting are the lines that are usual before a fire is lit.
var BeforeLighting = []string{
	"somebody is named who closes", "water and a burn kit at hand", "nobody alone, all know where to stand", "carbon monoxide alarm on",
	"ore and charcoal dry and under cover", "bucket and scoop weighed", "blower and a spare tried", "tools for the pull laid out", "fire ban and wind looked up",
}

// HowHeavy asks for a mass.
func HowHeavy(of string) string { return "a " + of + " of" }

// Wanting says what is wanted.
func Wanting(u modelwords.Units, what entry.PieceKind, kg float64) string {
	return "wanted: a " + modelwords.PieceKind(what) + " of " + KgRound(u, kg) + " or more"
}

// PlanName names a plan.
func PlanName(u modelwords.Units, what entry.PieceKind, kg float64) string {
	return modelwords.PieceKind(what) + " of " + KgRound(u, kg)
}

// PlanIsTaken refuses to take the same once more.
const PlanIsTaken = "this plan is taken: l lights it, g what must be so before"

// PlanTaken says that it is.
func PlanTaken(way, name string) string {
	return "plan taken: " + name + ", " + way + "; l lights by it"
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
		return "no bloom at all: about 3 to 8 in 10 for a new crew"
	}
	return "and no compact bloom: " + modelwords.NIn10(c)
}

// TakesLine is what else it takes.
func TakesLine(u modelwords.Units, charcoal, hours float64) string {
	return "ore dry; with " + KgRound(u, charcoal) + " charcoal dry, " + modelwords.Number(hours, 0) + " hours at the fire"
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
	if n.Point || n.Band.P90 <= n.Band.P10 {
		return number(n.Band.P50) + unit
	}
	return number(n.Band.P10) + " to " + number(n.Band.P90) + unit
}

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

// LessShort says by how much it is too little where there is no room.
func LessShort(u modelwords.Units, kg float64) string {
	return modelwords.Number(u.Shown(kg, "kg"), 0) + " less"
}

// LessTerse says the same where there is less.
func LessTerse(u modelwords.Units, kg float64) string {
	return "-" + modelwords.Number(u.Shown(kg, "kg"), 0)
}

var fearBrief = map[plan.Fear]string{
	plan.FearLong: "a long day", plan.FearCold: "ore too early", plan.FearRich: "rich ore", plan.FearHearth: "cold hearth", plan.FearStiff: "stiff slag", plan.FearCast: "cast iron",
	plan.FearDark: "too late", plan.FearOre: "ore short", plan.FearCharcoal: "charcoal short", plan.FearLittle: "little ore for a bloom",
}

// FearBrief is what is feared.
func FearBrief(f plan.Fear) string { return fearBrief[f] }

// MinutesABucket and OreACharge are the scales of the strip.
func MinutesABucket(v float64) string { return modelwords.Number(v, 0) + " min a charge" }

// OreACharge is the most ore.
func OreACharge(u modelwords.Units, kg float64) string { return u.Value(kg, "kg", 2) + " ore" }

// Tick is a line of a list, done or not.
func Tick(done, open string, is bool, line string) string {
	if is {
		return done + " " + line
	}
	return open + " " + line
}

// LineAdded says so.
func LineAdded(text string) string { return "added: " + short(text) }

// What the forge burns for a billet or bar.
const (
	WhatForgeBurns = "what does the forge burn"
	ForgeNotSaid   = "not known yet"
	ForgeUnsaid    = "if it burns that"
	ForgeOther     = "not reckoned"
	HardlyKnown    = "hardly known"
)

// ForgeBurns is a fuel in the list.
func ForgeBurns(f entry.FuelKind) string {
	if f == "" {
		return ForgeNotSaid
	}
	return string(f)
}

// The words for the wall.
const (
	WallTitle  = "on the wall page of the sheet, kept from smelt to smelt"
	WallPrints = "chargehand sheet --out FILE prints the paper log and the page for the wall"
)

// WallSays is a question of the wall page with what was keyed to it.
func WallSays(asks, says string) string {
	if says == "" {
		return asks + ": a blank line"
	}
	return asks + ": " + says
}

// WallKept says that it is.
func WallKept(text string) string { return "for the wall: " + text }

// OffTheWall asks before a line is taken off.
func OffTheWall(text string) string { return "take off the wall: " + text }

// TryingSaid says what is tried this time.
func TryingSaid(text string) string {
	if text == "" {
		return "nothing new is tried"
	}
	return "tried this time: " + text + "; it goes with the smelt"
}

// LessonsIn are lessons in one line.
func LessonsIn(texts []string) string { return LessonsHead + ": " + strings.Join(texts, "; ") }

// TryingIs says what is tried, on the plan.
func TryingIs(text string) string { return "tried this time: " + text }
