package words

import (
	"strconv"

	modelwords "chargehand/model/words"
)

// What lists, questions and fields answer.
const (
	NothingDone = "nothing done"
	EscCloses   = "one key chooses, esc closes"

	EnterNothing = "enter takes none, "
	EnterDone    = "enter ends it, "
	NoDefault    = "enter takes none of these: a letter or number, or esc"

	// ListClosed and QuestionClosed come before the answer of the key that closed it.
	ListClosed     = "list closed, nothing done"
	QuestionClosed = "no answer, nothing done"
	YesNo          = "y yes, n no"
	DoDone         = "done"
)

// ClosedKeeping says what was kept of a list that closed without a choice.
func ClosedKeeping(what string) string { return "list closed, kept: " + what }

// HalfTyped says that a field closed by itself and keeps what is typed, HalfTypedAt
// shows it again.
func HalfTyped(asked, text string) string {
	return "closed by itself, half typed and kept here: " + asked + " " + strconv.Quote(text)
}

// HalfTypedAt says since when something stands half typed.
func HalfTypedAt(at string) string { return "half typed " + at + ": go on, or x" }

// Both is what closed, and what the key did.
func Both(closed, did string) string {
	if did == "" {
		return closed
	}
	return closed + "; " + did
}

// EnterTakes says which line of a list enter takes.
func EnterTakes(line string) string { return "enter: " + line + ", " }

// ClosedItself says that a list or question was open for too long without a key.
func ClosedItself(what string) string { return "closed by itself, nothing done: " + what }

// NotInList answers a key that no line of the list has.
func NotInList(key string) string {
	return "nothing in this list on " + key + ": a letter or number of it, or esc"
}

// NotInField answers a key that a field has no use for.
func NotInField(number bool) string {
	if number {
		return "only digits, comma and point; enter when done"
	}
	return "only text here; enter when done"
}

// NumberVoid answers a letter in a number.
func NumberVoid(typed, key string) string {
	if typed == "" {
		return "type digits: " + key + " is none; esc leaves the number"
	}
	return "type it again: " + key + " is no digit, so " + typed + " does not count"
}

// NumberNotKept says that an act ended a field in which a number was asked.
func NumberNotKept(asked, typed string) string {
	if typed == "" {
		return asked + ": no number kept"
	}
	return asked + " " + typed + " NOT kept"
}

// DigitAfterField answers a digit that came too late for the field it was meant for.
func DigitAfterField(key string) string {
	return key + " came as the field closed: nothing done; press it again if it was meant"
}

// Ambiguous asks which number is meant.
func Ambiguous(typed, thousand, point string) string {
	return "type " + thousand + " or " + point + ": " + typed + " may be either"
}

// NoAct answers a key that does nothing on this screen.
func NoAct(key string) string { return "nothing on " + key + "; h shows the keys" }

// HeldDown answers a key that turned out to have been held down: what it booked
// the second time is crossed out.
func HeldDown(key, what string) string {
	return key + " was held down: crossed out again: " + what
}

// LeaningGlove answers a key that came again too soon.
func LeaningGlove(key string) string {
	return key + " came twice at once: taken for a leaning glove, not booked; press it again if it was meant"
}

// NumberMissing, NoNumber and OutOfRange say what is wrong with a number.
func NumberMissing(unit string) string { return "no number yet: type it in " + unit + ", then enter" }

// NoNumber says that what was typed is no number.
func NoNumber(typed string) string {
	return strconv.Quote(typed) + " is no number; one is like 1.9 or 1,9"
}

// OutOfRange says that a number cannot be meant.
func OutOfRange(typed, unit string, least, most float64) string {
	return typed + " " + unit + " cannot be: between " + modelwords.Number(least, 2) + " and " + modelwords.Number(most, 2) + " " + unit
}

// NoTime says that what was typed is no time of day.
func NoTime(typed string) string {
	return strconv.Quote(typed) + " is no time: hours and minutes, like 14:32 or 1432"
}

// LinesOf says which part of a long list is shown.
func LinesOf(first, last, of int) string {
	return " " + strconv.Itoa(first) + " to " + strconv.Itoa(last) + " of " + strconv.Itoa(of) + " lines, up and down show the rest "
}
