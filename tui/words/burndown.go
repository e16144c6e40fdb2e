package words

// What keys do about the end of a smelt.
const (
	DoDecide  = "extract, wait or give up"
	DoReady   = "tick off what is ready"
	DoCloser  = "who closes"
	DoSafety  = "ready, who closes, cautions"
	ReadyDone = "the list of what must be ready is closed"
	AllReady  = "all is ready"

	ReadyAsks   = "what is ready"
	DecidedWait = "decided to wait"
	GiveUpAsks  = "give up: no bloom, and the smelt is closed"
	GivenUp     = "given up: no bloom, the smelt is closed; what is weighed or noted still goes in"
)

// Ticked says what is ready now, or not any more.
func Ticked(check string, ready bool) string {
	if ready {
		return "ready: " + check
	}
	return "not ready: " + check
}

// Closes says who closes the smelt.
func Closes(who string) string { return who + " closes the smelt" }
