package words

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
	DoTurn       = "the other way"
	DoByTime     = "step by the minute"
	DoByEntry    = "step by entry"
	DoByWarning  = "step by warning"
	DoKnown      = "as we saw it, or as we know it"
	DoLeapForth  = "ten minutes forth"
	DoLeapBack   = "ten minutes back"
	DoToLight    = "to the light"
	DoToEnd      = "to the end"

	ShortPlay    = "play"
	ShortStop    = "stop"
	ShortStep    = "step"
	ShortSpeed   = "speed"
	ShortTurn    = "turn"
	ShortStepsBy = "step by time, entry, warning"
	ShortKnown   = "saw or know"
)

// StepsBy is what a step goes by.
var StepsBy = [...]string{"steps by the minute", "steps by entry", "steps by warning"}

// NoMoreSteps answers a step beyond the end.
const NoMoreSteps = "nothing further that way"
