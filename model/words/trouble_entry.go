package words

import (
	"fmt"

	"chargehand/model/entry"
)

// Entries that are not kept, and lines that are no good entry.

// EntriesOf is a number of entries in words.
func EntriesOf(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}

// EntriesHeld says how many, why, and what to do.
func EntriesHeld(n int, why error, diskFull bool) string {
	verb, do := "are", ""
	if n == 1 {
		verb = "is"
	}
	if diskFull {
		do = ": make room on the disk"
	}
	return fmt.Sprintf("%s %s NOT kept: %v%s", EntriesOf(n), verb, why, do)
}

// EntryRefused says why an entry can never be kept.
func EntryRefused(stream, kind, why string) string {
	return fmt.Sprintf("an entry for %q (%s) was refused: %s; key it again", stream, kind, why)
}

// NeverKept says which entry another names in vain.
func NeverKept(local string) string { return fmt.Sprintf("it names %q, which was never kept", local) }

// BookClosed is said of an entry that came too late.
const BookClosed = "the book is closed already; the entry was not kept"

// Present says that a smelt was imported before, under one name or more; by is the
// id, the uid or the source.
func Present(as []string, by string) string {
	if len(as) > 1 {
		return fmt.Sprintf("this smelt is in the book %d times already, as %s (the same %s); nothing was imported", len(as), listed(as, "and"), by)
	}
	return fmt.Sprintf("this smelt is in the book already, as %s (the same %s); nothing was imported", as[0], by)
}

// NoStream says that nothing was ever kept under a name.
func NoStream(stream string) string {
	return fmt.Sprintf("there is no %q in the book; list what there is with: chargehand smelts", stream)
}

// JournalLong says that a file is no journal of one smelt.
func JournalLong(most int) string {
	return fmt.Sprintf("the file is longer than %d bytes, more than one smelt can be", most)
}

// NothingToImport says so.
func NothingToImport(stream string) string {
	return fmt.Sprintf("there is nothing to import as %q; nothing was", stream)
}

// BadName and BadNameLength say why a name cannot be that of a smelt.
func BadName(name string) string {
	return fmt.Sprintf("the name of a stream has lower-case letters, digits and hyphens only, unlike %q", name)
}

func BadNameLength(most, n int) string {
	return fmt.Sprintf("the name of a stream has 1 to %d letters, not %d", most, n)
}

// Lines that are no good entry.

// BadBookLine and BadFileLine say where.
func BadBookLine(stream string, seq uint64, what string) string {
	return fmt.Sprintf("%s, entry %d: %s; compare with its twin: chargehand check", stream, seq, what)
}

func BadFileLine(file string, line int, what string) string {
	return fmt.Sprintf("%s:%d: %s; take the line from a good copy", file, line, what)
}

const (
	LineNoEntry = "this is not an entry of a journal"
	LineCut     = "the last line is cut off"
	LinesNone   = "there is no entry in it"
	LineMissing = "the entry is missing from the book"
	LineSum     = "the entry was changed: its sum does not agree"
)

// LineAlone says of a last entry that it may be another than was kept.
func LineAlone(seq uint64) string {
	return fmt.Sprintf("entry %d, the last, is shown as it reads: it has no sum, and nothing kept after it tells whether it was changed", seq)
}

// LineLong says how long a line may be.
func LineLong(most int) string {
	return fmt.Sprintf("the line is longer than the %d bytes of an entry", most)
}

// LineNoJSON, LineOfAnother, LineOutOfOrder and LineChanged say what breaks a chain.
func LineNoJSON(err error) string { return "the line is no JSON: " + err.Error() }

func LineOfAnother(got, want string) string {
	return fmt.Sprintf("the line belongs to %q, not to %q", got, want)
}

func LineOutOfOrder(got, want uint64) string {
	return fmt.Sprintf("sequence %d stands where %d should", got, want)
}

func LineChanged(after int) string {
	return fmt.Sprintf("the hash of the line before does not agree, so entry %d or %d was changed", after, after+1)
}

// LineOfHouse says that the house's own entries are no smelt.
const LineOfHouse = "these are entries of the house, not of a smelt: copy the whole book to take a house with you"

// ByEntries is by what a smelt is recognised when nothing else tells.
const ByEntries = "entries"

// Taken says what rescue --take took in.
func Taken(file, name string, entries int) string {
	return fmt.Sprintf("%s: %s taken in as %s; nothing was merged with what was there", file, EntriesOf(entries), name)
}

// GapSaid is a gap in words.
func GapSaid(g entry.Gap) string {
	said := fmt.Sprintf("entries %d to %d are lost", g.After+1, g.Before-1)
	if g.Before == g.After+2 {
		said = fmt.Sprintf("entry %d is lost", g.After+1)
	}
	if g.Unsure {
		said += fmt.Sprintf(", %d may be changed", g.After)
	}
	return said
}
