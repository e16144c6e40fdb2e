package words

import (
	"strconv"

	"chargehand/model/rehearse"
	modelwords "chargehand/model/words"
)

// The clock of a rehearsal, and what its furnace answers.
const (
	DoHold    = "hold"
	LookMeter = "blast meter"

	RehearsalBegins = "practice, not kept with your smelts: c charges, l then p is the peep"
)

// Rehearsing marks every screen of a rehearsal, with how fast its clock runs.
func Rehearsing(pace int, held, slowed, reads bool, asks rehearse.Notice) string {
	switch {
	case held:
		return TagPractice + ", held"
	case reads:
		return TagPractice + ", slowed: read this"
	case slowed && asks == rehearse.RoomForBucket:
		return TagPractice + ", slowed: room for a bucket"
	case slowed && asks == rehearse.BurnedDown:
		return TagPractice + ", slowed: burned down"
	case slowed && asks == rehearse.OreIsIn:
		return TagPractice + ", slowed: all ore is in"
	case slowed:
		return TagPractice + ", slowed: F4 goes on"
	case pace == 1:
		return TagPractice + ", as a clock"
	case pace == 60:
		return TagPractice + ", a minute a second"
	}
	return TagPractice + ", " + strconv.Itoa(pace) + " times"
}

// RehearsalTells is what nobody at the furnace could miss, and the key that answers it.
func RehearsalTells(n rehearse.Notice) string {
	said := modelwords.Noticed(n)
	switch n {
	case rehearse.CrackOpened:
		return said + "; o a w keys it"
	case rehearse.BlowerLabours:
		return said + "; b keys what it gives"
	case rehearse.BlowerStands:
		return said + "; b says it is off"
	case rehearse.BlowerRuns:
		return said + "; b says it is on"
	}
	return said
}

// YouSee is what the furnace answered.
func YouSee(what string) string { return "you see: " + what }

// Unseen says why nothing is seen.
func Unseen(why rehearse.Unseen) string {
	switch why {
	case rehearse.NoInstrument:
		return "this furnace has no such instrument: look, listen and dip"
	case rehearse.NoSlagYet:
		return "there is too little slag yet to see any"
	case rehearse.NoScent:
		return "it smells of smoke, as every furnace here"
	case rehearse.NothingIn:
		return "there is nothing to be seen of that now"
	}
	return "no furnace answers"
}

// RehearsalNext says what to do next, of a notice that says no more.
func RehearsalNext(n rehearse.Notice, lastOre bool) string {
	switch {
	case n == rehearse.RoomForBucket && lastOre:
		return "room for a bucket: c over the last ore, then o b, the burn-down"
	case n == rehearse.RoomForBucket:
		return "there is room for a bucket: c charges it as shown"
	case n == rehearse.OreIsIn:
		return "all the ore is in: o l says so, then c, charcoal over it"
	case n == rehearse.BurnedDown:
		return "half an hour burned down: o o takes the bloom out"
	}
	return string(n)
}

// NoFurnaceAnswers says why a rehearsal cannot go on.
func NoFurnaceAnswers(id, why string) string {
	return "no furnace answers in " + id + ": " + why + "; look at it, or begin another"
}
