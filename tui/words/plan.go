package words

import (
	"time"

	"chargehand/model/entry"
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
	NotNeededBrief   = "unused" // where there is little room
	NoAmount         = "no amount of ore gives it"
	ChanceOfIt       = "chance of it, about"
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

// What is asked to prepare a smelt.
const (
	DoPrepare       = "prepare one"
	PrepareIs       = "what can be made, what it takes, the day"
	PrepareTakes    = "three enters; lights nothing"
	TheUsualFurnace = "the usual one: bore 25 cm, 50 cm above the tuyere"
	OreToSmelt      = "roasted ore, dry"
	BlastGiven      = "what the blower gives"
)

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

// MinutesABucket and OreACharge are the scales of the strip.
func MinutesABucket(v float64) string { return modelwords.Number(v, 0) + " min a charge" }

// OreACharge is the most ore.
func OreACharge(u modelwords.Units, kg float64) string { return u.Value(kg, "kg", 2) + " ore" }

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
