package words

import (
	"strings"
	"time"

	"chargehand/model/plan"
	modelwords "chargehand/model/words"
)

// How the ore rises, and when the day is.
const (
	RiseBefore    = "charcoal only after the fill"
	RiseFirst     = "first ore, dry"
	RiseStep      = "more at each step"
	RiseEvery     = "charges to a step"
	RiseMost      = "most ore on a charge, dry"
	RiseCharges   = "charges"
	RiseAsItWas   = "as it was"
	RiseSlag      = "seed slag (iron-rich) before the ore"
	RiseTaken     = "the ore rises so; reckoned anew"
	RiseMostUnder = "the most is less than the first: give more, or a smaller first"
	InDays        = "in how many days"
	DaysFromNow   = "days from now, 0 today"
	WoodFireAt    = "wood fire at"
	OutBy         = "bloom out by"
	ClockHint     = "as 8:30"
	BadClock      = "that is no time of day: as 8, 8:30 or 20:15"
	ByWhenHead    = "by when"
)

// RiseIs is a number of it.
func RiseIs(u modelwords.Units, label string, v float64, unit string) string {
	if unit == "kg" {
		return label + ": " + u.Value(v, unit, 2)
	}
	return label + ": " + strings.TrimSuffix(strings.TrimSuffix(modelwords.Number(v, 2), "0"), ".0") + " " + unit
}

// DayIs is the day of a plan in words.
func DayIs(day string) string {
	if t, err := time.Parse(time.DateOnly, day); err == nil {
		return t.Format("Monday 2 January")
	}
	return "no day said yet"
}

// DueBy is by when an errand is to be done, and whether that is today or past.
func DueBy(day string, d plan.Due, now time.Time) (by string, late bool) {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		if d.Before == 1 {
			return "the day before", false
		}
		return modelwords.Number(float64(d.Before), 0) + " days before", false
	}
	t = t.AddDate(0, 0, -d.Before)
	today := time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, time.UTC)
	switch ahead := int(t.Sub(today).Hours() / 24); {
	case ahead < 0:
		return "late already", true
	case ahead == 0:
		return "today", true
	case ahead < 7:
		return "by " + t.Weekday().String(), false
	}
	return "by " + t.Format("Mon 2 Jan"), false
}

// DueSays is an errand in words.
func DueSays(u modelwords.Units, d plan.Due) string {
	hours := ""
	if d.Hours.P50 > 0 {
		hours = ", about " + modelwords.Number(d.Hours.P50, 0) + " h"
	}
	switch d.Errand {
	case plan.BuildIt:
		return "the furnace built: some days of air come after"
	case plan.DigOre:
		return "ore dug or bought: " + KgRound(u, d.Kg) + " dry more"
	case plan.RoastOre:
		return "ore roasted: " + KgRound(u, d.Kg) + " dry"
	case plan.BurnForIt:
		burns := "one more charcoal burn"
		if d.Times > 1 {
			burns = modelwords.Number(float64(d.Times), 0) + " more charcoal burns"
		}
		return burns + hours + ", or " + KgRound(u, d.Kg) + " dry bought; it lies a day or two shut outdoors"
	case plan.DryIt:
		return "small fires in the furnace until no steam"
	case plan.BreakAll:
		return "charcoal and ore broken, sieved and weighed out" + hours
	case plan.TestBlower:
		return "the blower timed with a bag (a at the furnaces)"
	}
	return "a bucket of charcoal weighed (k at the stores)"
}

// CeilingsHead heads what bounds the ore of one smelt, CeilingSays is a line of it.
const CeilingsHead = "ore of one smelt at most"

// CeilingSays is why.
func CeilingSays(c plan.Ceiling) string { return ceilingWords[c.Of] }

// PartOfDay is what begins then, in a word under the strip; "" for what is no part of its own.
func PartOfDay(what plan.Happening) string {
	switch what {
	case plan.OreRises, plan.CharcoalOnly, plan.BurningDown:
		return ""
	case plan.OverLastOre:
		return "last ore"
	case plan.Pulling:
		return "pull"
	case plan.SlagFirst:
		return "seed slag"
	}
	return string(what)
}

// MomentBrief is a line of the day in few words.
func MomentBrief(u modelwords.Units, m plan.Moment) string {
	switch m.What {
	case plan.LightWood:
		return "wood fire"
	case plan.Filling:
		return "fill, blast on"
	case plan.CharcoalOnly:
		return "charcoal only, until white"
	case plan.SlagFirst:
		return "seed slag: " + u.Value(m.Slag, "kg", 2)
	case plan.FirstOre:
		return "first ore: " + u.Value(m.Ore, "kg", 2) + " dry"
	case plan.OreRises:
		return "ore: " + u.Value(m.Ore, "kg", 2) + " dry"
	case plan.OverLastOre:
		return "last ore in: cover it"
	case plan.BurningDown:
		return "burn-down: people, tools"
	}
	return MomentSays(u, m)
}

// MomentSays is a line of the day.
func MomentSays(u modelwords.Units, m plan.Moment) string {
	switch m.What {
	case plan.FirstOre:
		return "first ore: " + u.Value(m.Ore, "kg", 2) + " dry to a measure of charcoal"
	case plan.OreRises:
		return "ore: " + u.Value(m.Ore, "kg", 2) + " dry to a measure"
	case plan.SlagFirst:
		return "seed slag, iron-rich: " + u.Value(m.Slag, "kg", 2) + " to a measure"
	}
	return modelwords.OfTheDay(m)
}
