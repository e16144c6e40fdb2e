package words

import (
	"math"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
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
func (u Units) FarBurden(cm float64) string { return "burden " + u.Value(cm, "cm", 0) }

// The burn-down card.
const (
	CardLastOre   = "last ore"
	CardNoOre     = "no ore went in"
	CardStack     = "burden"
	CardFlame     = "flame"
	CardNoFlame   = "nobody has looked"
	CardReady     = "ready"
	CardCloses    = "who closes"
	CardNobody    = "nobody named yet"
	CardUnknown   = "not known, dip it"
	CardUsualDone = "within the usual"
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
func AgoMin(d time.Duration) string { return Lasted(d) + " ago" }

// AboveTuyere is a height of the burden.
func AboveTuyere(height string) string { return height + " above the tuyere" }

// SeenAt is what was seen, and when.
func SeenAt(sees string, at time.Time) string { return sees + ", " + at.Format(Clock) }

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
	return "burning down for " + Lasted(lasted) + ", usual " + strconv.Itoa(least) + " to " + strconv.Itoa(most) + " min"
}

// BurdenAt is the height of the burden against the tuyere.
func (u Units) BurdenAt(cm float64, basis string) string {
	if math.Round(cm) <= 0 {
		return "burden down at the tuyere, " + basis
	}
	return "burden " + AboveTuyere(u.Value(cm, "cm", 0)) + ", " + basis
}

// OreStands is where the ore charged last now is.
func (u Units) OreStands(charge int, cm float64) string {
	return "ore of charge " + strconv.Itoa(charge) + " still " + AboveTuyere(u.Value(cm, "cm", 0))
}

// LastOreAgo is when ore last went in.
func LastOreAgo(d time.Duration) string { return "last ore " + AgoMin(d) }

// OreFew says that less ore went in than any published bloom came of.
func (u Units) OreFew(ore, least entry.Kilogram) string {
	return "only " + u.Kg(ore) + " of ore is in; published blooms took " + u.Kg(least) + " or more"
}

// OreEnough says that as much ore went in as published blooms came of.
func (u Units) OreEnough(ore, least entry.Kilogram) string {
	return u.Kg(ore) + " of ore is in; published blooms took " + u.Kg(least) + " or more"
}

// Warned is a warning with what shows it.
func Warned(title, evidence string) string {
	if strings.HasSuffix(title, "?") {
		return joinedBy(title, " ", evidence)
	}
	return joinedBy(title, ": ", evidence)
}

// BlastOffFor is how long no blast has gone in.
func BlastOffFor(d time.Duration) string {
	return "blast off for " + Lasted(d) + ": what cools in there freezes"
}

func joinedBy(s, by, more string) string {
	if more == "" {
		return s
	}
	return s + by + more
}

// The time line of Replay.
const (
	ThePast      = "this is the past"
	AsWeSaw      = "as we saw it"
	AsWeKnow     = "as we know it"
	OnlyAsWeKnow = "as we know it (the log does not say what was known when)"
	StandsStill  = "stands still"
	OwnSpeed     = "as fast as it was"
	LineCharge   = "charge"
	LineTap      = "tap"
	LineNote     = "note"
	LineWarning  = "warning"
	LineAct      = "act"
)

// SpeedOf is how fast and which way a replay runs.
func SpeedOf(speed int, back bool) string {
	if speed == 0 {
		return StandsStill
	}
	way := "forwards"
	if back {
		way = "backwards"
	}
	if speed == 1 {
		return OwnSpeed + ", " + way
	}
	return strconv.Itoa(speed) + " times, " + way
}

// NowOf is where a replay stands.
func NowOf(now, end time.Time) string { return now.Format(Clock) + " of " + end.Format(Clock) }

// The ratio against the charge that is shown as the next, and the head of a
// caution.
const (
	RatioAsNext = "as the next charge"
	RatioUnder  = "less ore than the next"
	RatioOver   = "more ore than the next"
	CautionMark = "take care"
)
