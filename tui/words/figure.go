package words

// The ratio against the charge that is shown as the next, and the head of a
// caution.
const (
	MeterNotBelieved = "air meter doubted" // over the zones that rest on its blast
	MeterDoubted     = "meter doubted"     // the same where there is little room
	OverTheBlast     = "over the blast"    // a burn faster than the blast can burn, likewise
	WhileItBlew      = "while it blew"     // a burn, when the blast is off
	NotAsModelled    = "not as modelled"   // a stack that the model does not follow, likewise

	RatioUnderBrief = "below the next" // where there is little room
	RatioOverBrief  = "above the next"

	RatioAsNext = "as planned"
	RatioUnder  = "below next"
	RatioOver   = "above next"
	CautionMark = "take care"
	CautionGoes = "the next key closes it"
	CautionEnds = "a key closes it" // the same where there is little room
)

// AboveIsAGuess stands over temperatures hotter than any that was read in such a
// furnace.
func AboveIsAGuess(degrees string) string { return "above " + degrees + " " + Guessed }

// Guessed is the same where there is little room.
const Guessed = "a guess"
