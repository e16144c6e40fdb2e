package words

// Late entries.
const LateWhen = "when was it"

// WhenHint says what a time may be: counted back from now, or afterwards from the
// end of the smelt.
func WhenHint(afterwards bool) string {
	if afterwards {
		return "minutes before its end, or a time like 14:32"
	}
	return "minutes ago, or a time like 14:32"
}

// LateWhat asks what is entered late.
func LateWhat(at string) string { return "what was at " + at }

// Late says what was entered late.
func Late(at, what string) string { return "entered late, at " + at + ": " + what }

// BeforeLight says that a time lies before the smelt.
func BeforeLight(lit string) string {
	return "type a later time: the fire was lit at " + lit
}
