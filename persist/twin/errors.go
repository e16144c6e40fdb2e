package twin

import "chargehand/model/words"

// NoStreamError says that nothing was ever kept under a name.
type NoStreamError struct{ Stream string }

func (e *NoStreamError) Error() string {
	return words.NoStream(e.Stream)
}

// LineError names a line that is no good entry of its stream.
type LineError struct {
	File   string // empty for a line of the book itself
	Line   int    // 1 for the first
	Stream string
	Seq    uint64 // the sequence that should stand there
	What   string
	Cause  error // may be nil
}

// Unwrap gives the cause.
func (e *LineError) Unwrap() error { return e.Cause }

func (e *LineError) Error() string {
	if e.File == "" {
		return words.BadBookLine(e.Stream, e.Seq, e.What)
	}
	return words.BadFileLine(e.File, e.Line, e.What)
}
