package words

import (
	"strconv"
	"time"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// What acts ask, and the answers they offer.
const (
	BlastOff      = "off"
	BlastOn       = "on again"
	ByGate        = "gate"
	ByStrokes     = "strokes"
	ByTuyeres     = "tuyeres"
	ByPressure    = "pressure"
	ByMeter       = "meter"
	ByBlower      = "blower"
	BlowerNow     = "which blower blows now"
	BlowerGives   = "what it gives"
	BlastGate     = "gate mark"
	BlastStrokes  = "bellows strokes"
	BlastTuyeres  = "tuyeres open"
	BlastPressure = "pressure before the tuyere"

	MeterWhich    = "which instrument, or metered at a setting"
	PipeBore      = "bore of the pipe, inside"
	PlateHole     = "hole of the plate"
	ReadsPressure = "it reads"
	ReadsSpeed    = "it reads"
	MarkGate      = "gate mark, metered"
	MarkStrokes   = "strokes, metered"
	MarkTuyeres   = "tuyeres open, metered"
	MarkStroke    = "litres one stroke gives"
	MarkGives     = "there it gives"

	DipBelowRim    = "dip, down from the rim"
	DipAboveTuyere = "dip, up from the tuyere"

	TemperatureWhere = "where was it taken"
	WhereWall        = "wall"
	WhereSlag        = "slag"
	WhereNotSaid     = "not said"

	LookWhere = "look at what"

	SlagTapped = "slag tapped, weight"

	ArchOpened = "opened"
	ArchClosed = "closed"

	TuyereAngle   = "angle of the tuyere"
	TuyereTip     = "tip of the tuyere, into the shaft"
	TuyereBore    = "bore of the tuyere"
	TuyereSwapped = "tuyere swapped for"

	SampleOf   = "sample of what"
	SampleMark = "label of the sample"
	HandOverTo = "hand over to, initials"

	ExtractHow  = "how did the bloom come out"
	ExtractTop  = "from the top"
	ExtractArch = "through the arch"
	ExtractDown = "furnace taken down"
	ExtractNone = "there was no bloom"

	WeighWhat         = "weigh what"
	WeighMeasure      = "a measure"
	WeighBloom        = "the bloom"
	WeighSlag         = "slag"
	WeighFragments    = "fragments"
	WeighCharcoalLeft = "charcoal left"
	WeighWall         = "wall lost"
	WhichSlag         = "which slag"
	SlagTappedOut     = "tapped, or run out"
	SlagCake          = "left in the furnace, whole or broken"
	SlagOfAll         = "all of it together"
	WeighState        = "in which state"
	StateHot          = "hot from the furnace"
	StateCold         = "cold, not yet compacted"
	StateCompacted    = "compacted"
	StateNotSaid      = "not said"
	GiveOrTake        = "give or take so much"
	GiveOrTakeKg      = "give or take"
	AlsoInWater       = "also hung in water"
	InWaterKg         = "hung in water it weighs"
	WasSoaked         = "did it soak first"
	NotSoaked         = "no, straight into the water"
	SoakedFirst       = "soaked until no bubbles came"
	WeighLot          = "a lot"
	WeighNever        = "will not be weighed"
	WeighWhich        = "which measure"
	WeighSince        = "since when does it weigh that"
	WeighWhole        = "for the whole smelt, charges so far too"
	WeighFromNow      = "from now on"
	WeighWhy          = "why does it weigh that"
	WhyOffer          = "; wetter or fuller: v, b, a"
	WhyWetter         = "wetter, the same otherwise"
	WhyFuller         = "fuller"
	WhyOtherLot       = "charcoal of another lot"
	DampBooked        = "damp: carbon and ratio stay. Dry the rest in sun and wind, never by the fire"
	FullerAsItIs      = "fuller: the ore of the next charge keeps the ratio as it is"
	WhyOther          = "other charcoal or ore"
	WhyNotKnown       = "not known, or as ever"
	ByWeight          = "by weight"

	NoMeasures = "no measures in this smelt: there is nothing to weigh again"
	NoRoom     = "full to the rim: it did not go in. Wait until the charge has sunk"
	NoRecipe   = "no next charge yet: o, r, n sets it by weight"
)

// LookSees asks what is seen at a place.
func LookSees(at entry.LookAt) string { return string(at) + " is" }

// Weighing asks for the mass of a thing.
func Weighing(what string) string { return "weight of " + what }

// HeavierWhy asks why a measure weighs more than before.
func HeavierWhy(measure string, by float64) string {
	return measure + " is " + strconv.Itoa(int(100*by+0.5)) + " % heavier: why"
}

// KeepRatio offers the ore that keeps the ratio.
func KeepRatio(ore, was string) string { return "to keep the ratio: " + ore + ", not " + was }

// TopUp offers as much more charcoal by weight as is water.
func TopUp(kg, was string) string {
	return "weighed out: " + kg + ", not " + was + ", to hold the same carbon"
}

// PartAmount asks how much of a material goes in, in a measure or by weight.
func PartAmount(w entry.What, measure string) string {
	if measure == "" {
		return modelwords.Material(w) + " by weight"
	}
	return modelwords.Plural(measure) + " of " + modelwords.Material(w)
}

// Answers of the keys at the fire.
const (
	NoSmelt           = "no smelt is open: v then s shows all smelts"
	LookOnly          = "this smelt is here to look at only; esc goes back"
	ImportedSmelt     = "imported: o then e enters what was forgotten; the book mends the rest"
	ClosedSmelt       = "closed: o then e enters what was forgotten; the book mends the rest"
	NoCharcoalMeasure = "no measure of charcoal in this smelt: o, r, w books a weighed charge"
	NoOreMeasure      = "no measure of ore in this smelt: o, r, w books a weighed charge"
	ByWeightOnly      = "the next charge goes by weight and the measure was never weighed: o, r, n sets it"
	NoChargeYet       = "no charge yet"
	NothingToCross    = "nothing to cross out"
	CrossedAlready    = "crossed out already"
	NotTheLight       = "the lighting of the fire cannot be crossed out: without it there is no smelt"
	NothingCrossed    = "nothing is crossed out"
	NothingToUndo     = "nothing was done to this entry"
	NothingToMove     = "nothing to move"
	NotBeforeLight    = "that would be before the fire was lit"
	Double            = ", double?"
	Surely            = ", sure"
	IfDouble          = " u crosses it out"
)

// DoubleBrief is a charge that may have been keyed twice, where there is little room.
func DoubleBrief(number int) string { return "charge " + strconv.Itoa(number) + Double }

// NoneAlready says that the next charge holds none of a material.
func NoneAlready(w entry.What) string {
	return "the next charge has no " + modelwords.Material(w) + " already"
}

// LevelAfter is a remark about the level after a charge.
func LevelAfter(number int, r entry.LevelRemark) string {
	return "after charge " + strconv.Itoa(number) + ": " + string(r)
}

// CrossedOut says what was crossed out, BroughtBack what holds again, and
// Changed what an entry says now.
func CrossedOut(what string) string { return "crossed out: " + what }

// CrossedOutRun says so of all that one key kept while it came quickly; what is
// the last of it.
func CrossedOutRun(what string, n int) string {
	return "crossed out, " + strconv.Itoa(n) + " entries of one run of a key: " + what + " and those before it"
}

// BroughtBackRun says that such a run holds again.
func BroughtBackRun(n int) string {
	return "holds again: " + strconv.Itoa(n) + " entries of one run of a key"
}

// RunHeldBack says that a key came more often than a hand presses it.
func RunHeldBack(key string, most int, within time.Duration) string {
	return "let " + key + " go, u crosses the run out: more than " + strconv.Itoa(most) + " in " + strconv.Itoa(int(within.Seconds())) + " s, held back"
}

// BroughtBack says what holds again.
func BroughtBack(what string) string { return "holds again: " + what }

// Changed says what an entry says now.
func Changed(at, what string) string { return "now " + at + ", " + what }

// ChargeInBurnDown asks before a charge that nobody expects any more.
func ChargeInBurnDown(p entry.Phase) string {
	if p == entry.BurnsDown {
		return "burn-down has begun: charge all the same"
	}
	return "the smelt is over: charge all the same"
}

// PhaseAgain asks before a phase begins that the smelt has left behind.
func PhaseAgain(now entry.Phase, begins string) string {
	return "it is " + modelwords.Phase(now) + " now: " + begins + " all the same"
}

// CannotReckonAir says why a reading gives no volume, and what to do. A plate has
// to keep to ISO 5167-2: a hole of 12.5 mm or more, too, and air enough.
func CannotReckonAir(with entry.AirMeter) string {
	if with == entry.OrificePlate {
		return "or key l/min: none from it, pipe 50 mm up, hole 0.1 to 0.75 of it"
	}
	return "key l/min: no volume from that reading"
}

// SampleNoMark says what a blank label means.
const SampleNoMark = "the lab's answer goes by it; blank: none"

// SampleWhats are what samples are taken of mostly.
var SampleWhats = []string{"slag tapped", "slag of the furnace", "slag on a rod", "bloom", "ore", "fragments"}

// OtherPiece offers to take a weighing for that of another piece of the bloom; all is what
// the pieces weigh together.
func OtherPiece(all string) string { return "another piece of it: " + all + " in all" }
