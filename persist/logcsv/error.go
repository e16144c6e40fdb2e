package logcsv

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Error says why a log was not read. All words of the package to the user
// stand in this file.
type Error struct {
	File   string // as Options.Name gave it; may be empty
	Line   int    // counted from 1
	Column string // the column's name, or its number from 1 where it has none; empty for the whole line
	What   string // what is wrong
	Do     string // what to do about it
	Err    error  // the error beneath when the file could not be read, else nil
}

// Error gives one line: what, where, what to do.
func (e *Error) Error() string {
	var where strings.Builder
	if e.File != "" {
		where.WriteString(e.File + " ")
	}
	fmt.Fprintf(&where, "line %d", e.Line)
	if e.Column != "" {
		where.WriteString(", column " + e.Column)
	}
	return fmt.Sprintf("%s (%s): %s", e.What, &where, e.Do)
}

// Unwrap gives the error beneath.
func (e *Error) Unwrap() error { return e.Err }

// complaint is what is wrong and what to do, before it is known where.
type complaint struct {
	what, do string
	err      error
}

func say(do, what string, args ...any) *complaint {
	return &complaint{what: fmt.Sprintf(what, args...), do: do}
}

const asNumber = "write digits with a point, as 1.9, or leave the cell blank if it was not recorded"

func notANumber(cell string) *complaint { return say(asNumber, "%s is not a number", quote(cell)) }

func tooLittle(cell string, s spec) *complaint {
	return say("write what was read, or leave the cell blank if it was not recorded",
		"%s is less than %g %s, the least that can be", quote(cell), s.least, s.unit)
}

func tooMuch(cell string, s spec) *complaint {
	return say("check the number and its unit, or leave the cell blank if it was not recorded",
		"%s is more than %g %s, the most a small furnace can show", quote(cell), s.most, s.unit)
}

func lineTooLong() *complaint {
	return say("check that this is the log of a smelt, one row a line", "the line is longer than %d bytes", MaxLine)
}

func tooManyRows() *complaint {
	return say("check that this is the log of one smelt", "the file has more than %d rows", MaxRows)
}

func fileTooLong() *complaint {
	return say("check that this is the log of a smelt", "the file is longer than %d bytes", MaxFile)
}

func remarksTooLong() *complaint {
	return say("shorten the remarks at the head of the file", "the lines that begin with # hold more than %d bytes", MaxRemarks)
}

func cellTooLong() *complaint {
	return say("shorten the text", "the text is longer than %d bytes", MaxCell)
}

func unreadable(err error) *complaint {
	c := say("check the file and read it again; nothing of it was taken", "the file could not be read: %v", err)
	c.err = err
	return c
}

const asUTF8 = `save it as UTF-8 (in a spreadsheet "CSV UTF-8")`

func notText(cell string) *complaint {
	return say(asUTF8, "%s is not UTF-8", quote(strings.ToValidUTF8(cell, "?")))
}

// NotText finds the first place of a file that is no text in UTF-8; nil where all of it is. The name
// of the file is left to fill in.
func NotText(text []byte) *Error {
	if bytes.HasPrefix(text, []byte{0xff, 0xfe}) || bytes.HasPrefix(text, []byte{0xfe, 0xff}) {
		return &Error{Line: 1, What: "the file is UTF-16", Do: asUTF8}
	}
	n := 0
	for line := range bytes.Lines(text) {
		n++
		if !utf8.Valid(line) {
			bad := slices.IndexFunc(bytes.Fields(line), func(word []byte) bool { return !utf8.Valid(word) })
			fault := notText(string(bytes.Fields(line)[bad]))
			return &Error{Line: n, What: fault.what, Do: fault.do}
		}
	}
	return nil
}

func controlCharacter(r rune) *complaint {
	return say("take it out; the file may be damaged or no text", "there is a character %U, which no log holds", r)
}

func openQuote() *complaint {
	return say(`close the quote on the same line, and write a quote within quotes twice`, "a quote is left open or stands amid a cell")
}

func unknownColumn(name string) *complaint {
	return say("use "+list(columnNames())+"; put anything else in note", "no column is called %s", quote(name))
}

func twiceNamed(name string) *complaint {
	return say("keep one of them", "the column %s stands twice", quote(name))
}

func missingColumn(c column) *complaint {
	return say("name the columns in the first row, with at least clock and event", "there is no column %s", c)
}

func noHeader() *complaint {
	return say("name the columns in the first row, as clock,event,charcoal_kg,ore_kg,air_l_min,temp_c,note", "the file has no row of column names")
}

func noRows() *complaint {
	return say("add at least one row with a clock and an event", "the log has no rows")
}

func tooManyCells(n, want int) *complaint {
	return say(`leave out the cells beyond the columns, or put a note with commas in "quotes"`, "the row has %d cells, the first row names %d columns", n, want)
}

func tooFewCells(n, want int) *complaint {
	return say("keep every cell, also the blank ones at the end", "the row has %d cells, the first row names %d columns", n, want)
}

func noClock() *complaint {
	return say("give the time as HH:MM; if it was not written down, estimate it and say so in the note", "the row has no time")
}

func badClock(cell string) *complaint {
	return say("write the time as HH:MM or HH:MM:SS on a clock of 24 hours", "%s is not a time of day", quote(cell))
}

func clockBack(from, to clock) *complaint {
	return say("put the rows in the order in which they happened; for the next day add a column date",
		"the clock goes back from %s to %s", from, to)
}

func badDate(cell string) *complaint {
	return say(`write the date as 2026-05-09, or as "day 2" if the day is unknown`, "%s is not a date between %d and %d", quote(cell), firstYear, lastYear)
}

func dateBack() *complaint {
	return say("put the rows in the order in which they happened", "the time of this row is before the row above")
}

func tooManyDays() *complaint {
	return say("check the dates; a log is of one smelt", "the row is more than %d days after the first", maxDays)
}

func noEvent() *complaint {
	return say("use "+list(eventNames())+"; for anything else use note", "the row has no event")
}

func unknownEvent(cell string) *complaint {
	return say("use "+list(eventNames())+"; for anything else use note", "no event is called %s", quote(cell))
}

func notCharged(event string) *complaint {
	return say("put what was charged in a charge or fill row of its own, at the same time", "a row of %s charges nothing", event)
}

func list(words []string) string { return strings.Join(words, ", ") }

// quote gives a cell in quotes, cut to what fits on a line of error.
func quote(cell string) string {
	const most = 40
	if utf8.RuneCountInString(cell) > most {
		cell = string([]rune(cell)[:most]) + "..."
	}
	return fmt.Sprintf("%q", cell)
}
