package words

import (
	"math"
	"strconv"
	"time"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// The far view.
const (
	FarMinutes = "minutes"
	FarLate    = "late"
)

// FarUsual is how many minutes a burn-down usually takes.
func FarUsual(least, most int) string {
	return "usual " + strconv.Itoa(least) + " to " + strconv.Itoa(most) + " min"
}

// FarBurden is how high the burden stands above the tuyere.
func FarBurden(u modelwords.Units, cm float64) string { return "burden " + u.Value(cm, "cm", 0) }

// The burn-down card.
const (
	CardLastOre      = "last ore"
	CardNoOre        = "no ore went in"
	CardStack        = "burden"
	CardFlame        = "flame"
	CardNoFlame      = "nobody has looked"
	CardNoFlameBrief = "not seen yet" // where there is little room
	CardNobodyBrief  = "nobody yet"   // likewise
	CardReady        = "ready"
	CardCloses       = "who closes"
	CardNobody       = "nobody named yet"
	CardUnknown      = "not known, dip it"
	CardUnknownBrief = "unknown: dip" // likewise
	CardUsualDone    = "within the usual"
)

// ReadyChecks are the tools and the people that must be ready before the bloom
// is taken out.
var ReadyChecks = []string{
	"arch tools, hook, long tongs",
	"sledges, stump or anvil",
	"dry ground, water and sand near",
	"shields, gloves, leather on",
	"everybody knows who does what",
}

// AgoMin is how long ago something was.
func AgoMin(d time.Duration) string { return modelwords.Lasted(d) + " ago" }

// SeenAt is what was seen, and when.
func SeenAt(sees string, at time.Time) string { return sees + ", " + at.Format(modelwords.Clock) }

// UsualBurnDown is how long a burn-down usually takes, in minutes.
func UsualBurnDown(least, most int) string {
	return "usual " + strconv.Itoa(least) + " to " + strconv.Itoa(most) + " min"
}

// BurnDownStands is how the time since burn-down began stands to the usual.
func BurnDownStands(lasted time.Duration, least, most int) string {
	switch m := int(lasted.Minutes()); {
	case m < least:
		return strconv.Itoa(least-m) + " min short of it"
	case m > most:
		return strconv.Itoa(m-most) + " min past it"
	}
	return CardUsualDone
}

// The decision card.
const (
	DecideHead    = "extract, wait or give up: you decide"
	DecideNote    = "below each, what the figures say for it"
	DecideExtract = "extract"
	DecideWait    = "wait"
	DecideGiveUp  = "give up"
	DecideNothing = "nothing in the figures speaks for it"

	OreAllThrough  = "no ore is left above the tuyere"
	NoOreForBloom  = "no ore went in: there is no iron to gather"
	FlameUsedUp    = "flame yellow again: the ore is used up"
	FlameWorks     = "flame pale: ore still takes the gas"
	FlameGone      = "flame out: little is left to burn, or the gas is unlit"
	FlameUnseen    = "flame: nobody has looked; look first"
	StackUnseen    = "height of the burden not known; dip first"
	NotBurningDown = "burn-down has not begun: charges go on"
)

// BurnDownFor is how long burn-down has gone on, against the usual.
func BurnDownFor(lasted time.Duration, least, most int) string {
	return "burning down for " + modelwords.Lasted(lasted) + ", usual " + strconv.Itoa(least) + " to " + strconv.Itoa(most) + " min"
}

// BurdenAt is the height of the burden against the tuyere.
func BurdenAt(u modelwords.Units, cm float64, basis string) string {
	if math.Round(cm) <= 0 {
		return "burden down at the tuyere, " + basis
	}
	return "burden " + modelwords.AboveTuyere(u.Value(cm, "cm", 0)) + ", " + basis
}

// OreStands is where the ore charged last now is.
func OreStands(u modelwords.Units, charge int, cm float64) string {
	return "ore of charge " + strconv.Itoa(charge) + " still " + modelwords.AboveTuyere(u.Value(cm, "cm", 0))
}

// LastOreAgo is when ore last went in.
func LastOreAgo(d time.Duration) string { return "last ore " + AgoMin(d) }

// OreFew says that less ore went in than any published bloom came of.
func OreFew(u modelwords.Units, ore, least entry.Kilogram) string {
	return "only " + u.Kg(ore) + " of ore is in; published blooms took " + u.Kg(least) + " or more"
}

// OreEnough says that as much ore went in as published blooms came of.
func OreEnough(u modelwords.Units, ore, least entry.Kilogram) string {
	return u.Kg(ore) + " of ore is in; published blooms took " + u.Kg(least) + " or more"
}

// BlastOffFor is how long no blast has gone in.
func BlastOffFor(d time.Duration) string {
	return "blast off for " + modelwords.Lasted(d) + ": what cools in there freezes"
}
