package words

import (
	"fmt"
	"strings"

	"chargehand/model/entry"
)

// Troubles of the book: what is said of its files when one is missing, damaged,
// closed to us, full, or goes away while the program runs. Each says what
// happened, what it means, and what to do.

// What is wrong with a file, and what to do about it; put together by Trouble.
const (
	FileMissing   = "is not there"
	FileMissingDo = "name another with --book, or start the program to make it"
	FileClosed    = "cannot be written or read"
	FileClosedDo  = "give yourself the right to write it, or name another with --book"
	FileDamagedDo = "it was not touched: chargehand rescue rebuilds it from its twins and what can be read of it, and keeps it under another name"
	FileNoFile    = "is no regular file but a folder, a device, a pipe or a socket"
	FileNoFileDo  = "it was not touched: name the book with --book"
	NoRegularFile = "it is no regular file but a folder, a device, a pipe or a socket"
	FileEmpty     = "is empty"
	FileHead      = "has a damaged head"
	FileForeign   = "is not a book of this program"
	NoSchema      = "there is no schema in it"
	BadSum        = "what it says of itself was changed"
)

// Trouble is a file, what is wrong with it, and what to do.
func Trouble(path, what, do string) string { return path + " " + what + "; " + do }

// FileDamaged says how it was noticed.
func FileDamaged(why any) string { return fmt.Sprintf("is damaged (%v)", why) }

// FileCut says how much of a file is left.
func FileCut(there int64, need uint64) string {
	return fmt.Sprintf("was cut off: %d of %d bytes are there", there, need)
}

// FileForeignFor says why a file is none of ours.
func FileForeignFor(why error) string { return FileForeign + " (" + why.Error() + ")" }

// BadSchema says what stood for the book's form.
func BadSchema(got []byte) string { return fmt.Sprintf("its schema is %q", got) }

// NoBucket says which part of a book is missing.
func NoBucket(name []byte) string { return fmt.Sprintf("bucket %q is missing", name) }

// BookInUse says that another program has the book.
func BookInUse(path string) string {
	return path + " is in use: the program is probably running in another window; go on there, or close it first"
}

// BookIsNewer says that only a newer version writes this book.
func BookIsNewer(path string, schema, known int) string {
	return fmt.Sprintf("%s was written by a newer version of this program (schema %d, this one knows %d); it is open for reading only: use the newer version to write in it", path, schema, known)
}

// FileNotOpened is for what the system says and no other word fits.
func FileNotOpened(path string, err error) error {
	return fmt.Errorf("%s could not be opened: %w; look after the disk, or name another with --book", path, err)
}

// FileNotClosed says what a failed closing means.
func FileNotClosed(path string, err error) error {
	return fmt.Errorf("%s could not be closed properly (%w); what was called kept is in it: look after the disk", path, err)
}

// Why a path leads no longer to the file that is open.
const (
	GoneRemoved  = "it was removed or renamed, or its folder was"
	GoneReplaced = "another file is in its place"
	GoneFolder   = "its folder is gone"
	GoneDo       = "; put it or its folder back, or see that a new one can be made there"
)

// GoneLength says that somebody else wrote in a file, or cut it.
func GoneLength(now, written int64) string {
	return fmt.Sprintf("it has %d bytes where %d were written", now, written)
}

// FileGone is what happened, without what to do.
func FileGone(path, why string) string {
	return fmt.Sprintf("%s is not as it was left (%s)", path, why)
}

// AnotherBook is a book with another uid.
const AnotherBook = "another book"

// Stranger says that another file is where the book was.
func Stranger(path, why string) string {
	return fmt.Sprintf("another file is at %s now (%s), and is left alone; put the folder back that was there", path, why)
}

// NotFlushed is what happened, without what to do.
func NotFlushed(path string, err error) string {
	return fmt.Sprintf("%s could not be flushed to the disk (%v)", path, err)
}

// NotFlushedDo is what to do about it.
const NotFlushedDo = "; it is not written again until the program is opened anew: look after the disk"

// Entries that are not kept.

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
func Present(stream string, as []string, by string) string {
	if len(as) > 1 {
		return fmt.Sprintf("%s is in the book %d times already, as %s (the same %s); nothing was imported", stream, len(as), listed(as, "and"), by)
	}
	return fmt.Sprintf("%s is in the book already as %s (the same %s); nothing was imported", stream, as[0], by)
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
)

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

// What was put right, or took over, while the program ran or when it opened.

// OfStream is something said of one stream.
func OfStream(stream, said string) string { return stream + ": " + said }

// NotCompared says that a stream can be looked at as it is.
func NotCompared(err error) string {
	return fmt.Sprintf("book and twin could not be compared: %v", err)
}

// MendedFromTwin and the like say what opening put right in one stream.
func MendedFromTwin(n int) string { return EntriesOf(n) + " lacking in the book came from the twin" }

func MendedFromBook(n int) string { return EntriesOf(n) + " lacking in the twin came from the book" }

func MendedByTwin(from, entries int, aside string) string {
	return fmt.Sprintf("the book did not agree with the twin from entry %d on; what it had was set aside as %s and the twin's %s hold", from, aside, EntriesOf(entries))
}

func MendedGap(g entry.Gap, aside string) string {
	return fmt.Sprintf("%s: the twin does not have it either; what the book had was set aside as %s (chargehand rescue --take takes such a file in)", GapSaid(g), aside)
}

func MendedCount(entries int, counted uint64) string {
	return fmt.Sprintf("%s in the book where %d were counted; the count was made anew", EntriesOf(entries), counted)
}

func MendedTwin(line int) string {
	return fmt.Sprintf("its twin did not agree with the book from line %d on; it was set aside and written anew", line)
}

const MendedTorn = "a half-written line at the end of its twin was cut off"

// TwinMade says that a twin was written anew, and why.
func TwinMade(file, why string) string {
	return fmt.Sprintf("its twin was written anew, for it %s: leave %s to the program, and look after the disk", why, file)
}

// TwinGone is why, when somebody had to do with it.
const TwinGone = "was removed, renamed or changed while the program ran"

// TwinNotRemade says that it could not be.
func TwinNotRemade(stream string, err error) error {
	return fmt.Errorf("the twin of %s could not be made anew: %w", stream, err)
}

// TwinUnflushed and TwinUnflushedDo say that the disk did not take what was written.
const (
	TwinUnflushed   = "could not be flushed to the disk"
	TwinUnflushedDo = "look after the disk"
)

// TwinUnread says why.
func TwinUnread(err error) string { return fmt.Sprintf("cannot be read (%v)", err) }

// TookOver says that a small book took over, and why.
func TookOver(why, file string) string {
	return fmt.Sprintf("a small book took over, and entries are kept: %s; they are in %s until the next opening merges all: look after the disk", why, file)
}

// NoTakeOver says that none could be begun.
func NoTakeOver(err error) error { return fmt.Errorf("no new book could be begun either: %w", err) }

// ReadUpTo says how far a stream could be read.
func ReadUpTo(stream string, n int, of uint64) string {
	return fmt.Sprintf("%s could be read only up to entry %d of %d", stream, n, of)
}

// Merged says what became of a book that could not be written to the end.
func Merged(file string, entries int, aside string) string {
	return fmt.Sprintf("%s could not be written to the end when it was last open; it was written anew with the %s of it, its twins and the small book that took over, which were set aside as %s", file, EntriesOf(entries), aside)
}

// OnlyThere says that streams could not be brought over from a file that no
// path leads to.
func OnlyThere(err error, streams int, path string) error {
	return fmt.Errorf("%w; what was kept of %d streams is only where that file went: bring it back to %s and open it again", err, streams, path)
}

// What check finds, and what to do about it.
const (
	FindingOpen  = "open the book once with this program, which puts it right and sets aside what has to give way"
	FindingSave  = "copy book and twins to a safe place, then run: chargehand rescue"
	FindingMerge = "open the book once with this program, which merges it"
	FindingNewer = "read it with the newer version of the program"
	FindingRenew = "no entry is wrong: the summary is made anew when the smelt is next written to"

	FoundTakeOver = "a small book that took over when the book could not be flushed is not merged yet"
	FoundTwinOnly = "the stream is in the twin alone"
	FoundLast     = "the last entry is not the one that was kept"
	FoundSummary  = "the summary does not agree with the entries"
	FoundNotHere  = "the line is not in the book as it stands here"
	FoundTorn     = "the last line is only half written"
)

// FoundCount and FoundBehind say what check found.
func FoundCount(entries int, counted uint64) string {
	return fmt.Sprintf("%s here where %d were counted", EntriesOf(entries), counted)
}

func FoundBehind(n int) string { return EntriesOf(n) + " of the book missing in the twin" }

// Found is one finding: where, of which entry, what, and what to do.
func Found(file string, line int, stream string, seq uint64, what, do string) string {
	where := file
	if line > 0 {
		where += fmt.Sprintf(":%d", line)
	}
	if stream != "" && seq > 0 {
		where += fmt.Sprintf(" (%s, entry %d)", stream, seq)
	} else if stream != "" {
		where += " (" + stream + ")"
	}
	return where + ": " + what + "; " + do
}

// Pages of the book that cannot be followed.

func PageOfTooMany(id, pages uint64) string {
	return fmt.Sprintf("page %d is named where there are %d", id, pages)
}

func PageOfAnother(id uint64) string { return fmt.Sprintf("page %d says that it is another", id) }

func PageTwice(id uint64) string { return fmt.Sprintf("page %d is used twice", id) }

func PageKind(kind uint16, count int) string {
	return fmt.Sprintf("it is of kind %d with %d elements", kind, count)
}

func PageBeyond(i int) string { return fmt.Sprintf("element %d reaches beyond it", i) }

func PageOrder(i int) string { return fmt.Sprintf("element %d is out of order", i) }

func PageNoBucket(bytes int) string { return fmt.Sprintf("a bucket of %d bytes", bytes) }

func PageValue(bytes int) string {
	return fmt.Sprintf("a value of %d bytes where only buckets stand", bytes)
}

func PageNoFreelist(id uint64) string { return fmt.Sprintf("page %d is no list of free pages", id) }

func PageNotFree(id uint64) string {
	return fmt.Sprintf("page %d is called free and cannot be", id)
}

// InPage says in which page something is wrong.
func InPage(id uint64, err error) error { return fmt.Errorf("page %d: %w", id, err) }

// Why entries are missing in a stream.
const (
	GapLost    = "lost: neither the book nor its twin has them"
	GapChanged = "changed or damaged since they were kept, and left out"
)

// FoundNoCount says that the record of a stream is missing or was changed.
const FoundNoCount = "the count of its entries is missing or was changed"

// MendedSecond says that somebody went on with a stream elsewhere.
func MendedSecond(second string, entries int) string {
	return fmt.Sprintf("book and twin were carried on apart; the other one's %s are kept as %s, nothing is merged", EntriesOf(entries), second)
}

// FileOneHead says what one damaged head may mean.
const FileOneHead = "has two heads of which one is damaged: its last commit may be missing"

// TwinsOfAnother says whose twins stand where the book's should.
func TwinsOfAnother(folder string) string {
	return folder + " holds the twins of another book; they are left alone"
}

// TwinsRenamed says that the twins have a folder of a new name, and which
// streams of the old one are not this book's.
func TwinsRenamed(old, folder string, left []string) string {
	said := fmt.Sprintf("the twins are in %s now; before, books that differ in their ending shared %s", folder, old)
	if len(left) > 0 {
		said += fmt.Sprintf("; what is not this book's stays there untouched: %s (chargehand rescue --take FILE takes such a file in)", strings.Join(left, ", "))
	}
	return said
}

// ReadOtherwise says that a fault was found while reading and got round.
func ReadOtherwise(fault error) string {
	return fmt.Sprintf("a fault was found while reading it, and what is shown comes from the other copy: %v (chargehand check says more)", fault)
}

// OnlyTwins says that the book could not be read, so that the twins were.
func OnlyTwins(err error) string {
	return fmt.Sprintf("%v; what is shown comes from its twins (chargehand check says more)", err)
}

// MadeAnew says that a damaged book was made anew when it was opened.
func MadeAnew(path, trouble string, entries int, aside string) string {
	return fmt.Sprintf("%s %s; it was made anew with %s from its twins and what could be read of it; the damaged one is kept as %s", path, trouble, EntriesOf(entries), aside)
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

// NotAbsolute says what a place in the environment must be.
func NotAbsolute(name, value string) string {
	return fmt.Sprintf("%s is %q, which is no whole path from /: set it to one, or name the book with --book", name, value)
}

// FileExists and OwnFile say why a file is not written.
func FileExists(path string) string {
	return path + " is there already and was left alone: name another, or add --replace"
}

func OwnFile(path string) string {
	return path + " belongs to the book and is never written over: name another file"
}

// DumbTerminal is said where nothing can be drawn.
const DumbTerminal = "this terminal (TERM=dumb) cannot show the screen: chargehand state and chargehand smelts print plain lines"

const (
	FlagReplace = "write over a file that is there"
	FlagTake    = "take the lines in FILE in, as a smelt of its own"
)

// WhereElse asks where to write what could not be kept.
func WhereElse(entries int) string {
	return fmt.Sprintf("chargehand: %s could NOT be kept. Write them to another place? A file's name, or Enter for no: ", EntriesOf(entries))
}

// WrittenElsewhere says how they come back.
func WrittenElsewhere(entries int, path string) string {
	return fmt.Sprintf("chargehand: %s written to %s; chargehand rescue --take %s takes them in, as a smelt of their own", EntriesOf(entries), path, path)
}
