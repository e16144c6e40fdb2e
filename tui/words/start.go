package words

import (
	"strconv"
	"time"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// The start screen.
const (
	ProgramName = "chargehand"
	ProgramIs   = "the record and the sums of a smelt"

	PractiseIs    = "a smelt under way, its first ore in"
	PractiseTakes = "one key; counts for nothing"
	SmeltIs       = "furnace and measures, then the fire is lit"
	SmeltTakes    = "fill in ten fields: a minute"
	LookIs        = "every smelt kept here, and an invented one"
	LookTakes     = "as it went, with its week"

	ShelfBeingRead = "the smelts are still being read: a moment"
	NoneUnfinished = "no smelt was left unfinished"
)

// UnfinishedIs is the smelt to go on with.
func UnfinishedIs(id string, p entry.Phase, charges int) string {
	return id + ", " + modelwords.Phase(p) + ", " + Charges(charges)
}

// BurningIs is the smelt at work.
func BurningIs(id string, p entry.Phase) string { return id + ", " + modelwords.Phase(p) }

// Charges is a number of charges.
func Charges(n int) string {
	switch n {
	case 0:
		return "no charge yet"
	case 1:
		return "1 charge"
	}
	return strconv.Itoa(n) + " charges"
}

// LeaveFor asks before another smelt takes the place of the running one.
func LeaveFor(id string) string { return "leave " + id + " as it stands" }

// Lit says that a smelt has begun.
func Lit(id string) string { return "the fire is lit: " + id }

// Large, and over it, on the start screen.
const (
	WhatNow           = "WHAT NOW"
	GoOnLarge         = "GO ON"
	NothingBurns      = "nothing is burning"
	MayBurn           = "not closed, and it may be burning"
	PractisesStill    = "a practice smelt, not closed"
	LastSmelt         = "last smelt"
	LastSmelts        = "the last smelts"
	WasPutRight       = "put right when the book was opened"
	ItsDay            = "its day"
	NoBloomWeighed    = "no bloom was weighed"
	NoBloomCame       = "no compact bloom"
	BloomNotWeighed   = "bloom not weighed"
	AndSlagNotWeighed = ", slag not weighed"
)

// BloomOf is a bloom's weight, OfOre the ore that it came of.
func BloomOf(kg string) string { return "bloom " + kg }

// YieldOfOre is a bloom as a share of the ore, with its base.
func YieldOfOre(share float64, dry bool) string {
	if dry {
		return ", " + Percent(share) + " of the ore dry"
	}
	return ", " + Percent(share) + " of the ore as charged"
}

// OfOre is the ore that a bloom came of.
func OfOre(kg string) string { return " of " + kg + " ore as charged" }

// SmeltOf is a smelt by its furnace and day, or by its name in the book where it has no furnace.
func SmeltOf(furnace, id string, lit time.Time) string {
	if furnace == "" {
		return id
	}
	return furnace + ", " + lit.Format("2 Jan")
}

// StartInvented says what furnace the start screen shows.
func StartInvented(name string, at time.Time) string {
	return name + " at " + at.Format(modelwords.Clock) + "; nobody lit it: l shows its day"
}

// StartInventedShort is the same where there is little room.
func StartInventedShort(name string) string { return name + "; nobody lit it" }

// StartShaft says the same of a smelt at work.
func StartShaft(id string, at time.Time) string { return id + " at " + at.Format(modelwords.Clock) }

// MoreInBook counts the messages that have no room on the start screen.
func MoreInBook(n int) string {
	return "and " + strconv.Itoa(n) + " more on the page of messages in the book"
}
