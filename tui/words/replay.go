package words

import (
	"strconv"
	"time"

	modelwords "chargehand/model/words"
)

// What the keys of Replay do.
const (
	DoReplay     = "replay"
	DoReplayHere = "replay from here"
	DoReplayIt   = "replay it"
	DoPlay       = "play, or stand still"
	DoForth      = "a step forth"
	DoBackStep   = "a step back"
	DoFaster     = "faster"
	DoSlower     = "slower"
	DoTurn       = "run the other way"
	DoByTime     = "step by the minute"
	DoByEntry    = "step by entry"
	DoByWarning  = "step by warning"
	DoKnown      = "as we saw it, or as we know it"
	DoLeapForth  = "ten minutes forth"
	DoLeapBack   = "ten minutes back"
	DoToLight    = "to the beginning"
	DoToEnd      = "to the end"

	ShortPlay    = "play"
	ShortStop    = "stop"
	ShortStep    = "step"
	ShortSpeed   = "speed"
	ShortTurn    = "other way"
	ShortStepsBy = "step by time, entry, warning"
	ShortKnown   = "as seen, as known"
)

// StepsBy is what a step goes by.
var StepsBy = [...]string{"steps by the minute", "steps by entry", "steps by warning"}

// NoMoreSteps answers a step beyond the end.
const NoMoreSteps = "nothing further that way"

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

// ReplayOpens says how to go on from the moment that Replay opens at.
func ReplayOpens(play, first, last string) string {
	return "the moment with most to see: " + play + " plays on, " + first + " goes to the beginning, " + last + " to the end"
}

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
func NowOf(now, end time.Time) string {
	return now.Format(modelwords.Clock) + " of " + end.Format(modelwords.Clock)
}
