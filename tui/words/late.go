package words

import "fmt"

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

// StillToCome says that a time lies ahead.
func StillToCome(now string) string {
	return "type an earlier time: it is " + now + " now"
}

// Rows of a paper log.
const (
	RowsOfPaper = "rows of paper"
	DoRows      = "rows from paper, many at a go"
	RowsHead    = " rows as on paper: time, letter, amount "
	RowHint     = "as 10:42 c 1 4; enter on an empty row keeps all"
	RowsEnter   = "next row"
	RowsUp      = "row above"
	RowsLeave   = "leave"
	NoRowsYet   = "no row yet: type one, as 10:42 c 1 4"
)

// RowNumber is which row is typed.
func RowNumber(n int) string { return fmt.Sprintf("row %d", n) }

// RowIs says what is wrong with a row.
func RowIs(n int, wrong string) string { return fmt.Sprintf("row %d: %s", n, wrong) }

// TooManyRows refuses a paste.
func TooManyRows(most int) string {
	return fmt.Sprintf("more than %d rows: take them in two goes; nothing done", most)
}

// KeepRows asks whether the rows are kept.
func KeepRows(n, charges int, from, to string) string {
	return fmt.Sprintf("keep %s, %s to %s, %s", some(n, "row"), from, to, some(charges, "charge"))
}

// RowsKept says that they are.
func RowsKept(n int) string {
	return some(n, "row") + " of paper kept; each is changed or crossed out in the book"
}

// DropRows asks before rows are thrown away.
func DropRows(n int) string { return "leave, and drop " + some(n, "row") }

// RowsHalfTyped says what stands there.
func RowsHalfTyped(at string) string { return "half typed at " + at + ": go on, or esc" }

func some(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
