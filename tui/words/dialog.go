package words

import (
	"strconv"
	"strings"
	"unicode/utf8"

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
	TicksStay      = "list closed, its ticks stay"
	QuestionClosed = "no answer, nothing done"
	YesNo          = "y yes, n no"
	DoDone         = "done"
)

// ClosedKeeping says what was kept of a list that closed without a choice.
func ClosedKeeping(what string) string { return "list closed, kept: " + what }

// FieldKeeping says the same of a field: what became of its number comes first.
func FieldKeeping(said, what string) string { return said + ", kept: " + what }

// HalfTyped says that a field closed by itself and keeps what is typed, HalfTypedAt
// shows it again.
func HalfTyped(asked, text string) string {
	return "closed by itself, half typed and kept here: " + asked + " " + strconv.Quote(text)
}

// HalfTypedAt says since when something stands half typed.
func HalfTypedAt(at string, number bool) string {
	if number {
		return "half typed " + at + ": enter takes it, or type anew"
	}
	return "half typed " + at + ": go on, or x"
}

// FormHalfTyped says so of a form.
func FormHalfTyped(at string) string {
	return "half typed " + at + ": go on, or x in the first or last row"
}

// FormCalledOff answers esc in a form that something was typed into.
const FormCalledOff = "called off: what was typed in the form is dropped"

// DraftCleared answers x where something half typed stood.
const DraftCleared = "cleared; backspace brings it back"

// StandsHalfTyped says, behind which smelt goes on, what was left half typed in it.
func StandsHalfTyped(field, text, at string, more int) string {
	said := "; half typed " + at + ": " + field + " " + strconv.Quote(text)
	if more > 0 {
		said += " and " + strconv.Itoa(more) + " more"
	}
	return said
}

// Really asks whether what can hardly be is so.
func Really(says string) string { return says + ": really" }

// StepAgain answers no to that, DoubtNotKept a key that closed it.
const (
	StepAgain    = "then change it, or esc"
	DoubtNotKept = "no answer, NOT kept"
)

// Both is what closed, and what the key did. What would be too long for 80 columns leaves
// out that the list did nothing.
func Both(closed, did string) string {
	switch both := closed + "; " + did; {
	case did == "":
		return closed
	case utf8.RuneCountInString(both) <= roomForAnswer:
		return both
	}
	return strings.TrimSuffix(closed, ", nothing done") + "; " + did
}

// roomForAnswer is how long an answer may be in a window of 80 columns.
const roomForAnswer = 76

// EnterTakes says which line of a list enter takes.
func EnterTakes(line string) string { return "enter: " + line + ", " }

// ClosedItself says that a list or question was open for too long without a key.
func ClosedItself(what string) string { return "closed by itself: " + what }

// NotInList answers a key that no line of the list has.
func NotInList(key string) string {
	return "a letter or number, or esc: none on " + key
}

// NotInField answers a key that a field has no use for.
func NotInField(number bool) string {
	if number {
		return "only digits, comma and point; enter when done"
	}
	return "only text here; enter when done"
}

// short is what was typed, as far as a line has room for it.
func short(typed string) string {
	const most = 8
	if r := []rune(typed); len(r) > most {
		return string(r[:most]) + ".."
	}
	return typed
}

func quoted(typed string) string { return strconv.Quote(short(typed)) }

// NumberVoid answers a letter in a number.
func NumberVoid(typed, key string) string {
	if typed == "" {
		return "type digits: " + key + " is none; esc leaves the number"
	}
	return "type it again: " + key + " is no digit, so " + short(typed) + " does not count"
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
	return "press again if meant: " + key + " came as what was asked closed, nothing done"
}

// KeyAfterList answers a key that came too late for the list it was meant for.
func KeyAfterList(key string) string {
	return "press again if meant: " + key + " came as the list closed, nothing done"
}

// Ambiguous asks which number is meant.
func Ambiguous(typed, thousand, point string) string {
	return "type " + thousand + " or " + point + ": " + short(typed) + " may be either"
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
	return "press again if meant: " + key + " came twice at once, like a leaning glove"
}

// NumberMissing, NoNumber and OutOfRange say what is wrong with a number.
func NumberMissing(unit string) string { return "type it in " + unit + ", then enter" }

// NoNumber says that what was typed is no number.
func NoNumber(typed string) string {
	return "type it like 1.9 or 1,9: " + quoted(typed) + " is no number"
}

// OutOfRange says that a number cannot be meant.
func OutOfRange(typed, unit string, least, most float64) string {
	return "type " + modelwords.Number(least, 2) + " to " + modelwords.Number(most, 2) + " " + unit + ": " + short(typed) + " cannot be"
}

// NoTime says that what was typed is no time of day.
func NoTime(typed string) string {
	return "type it like 14:32 or 1432: " + quoted(typed) + " is no time"
}

// LinesOf says which part of a long list is shown.
func LinesOf(first, last, of int) string {
	return " " + strconv.Itoa(first) + " to " + strconv.Itoa(last) + " of " + strconv.Itoa(of) + " lines, up and down show the rest "
}
