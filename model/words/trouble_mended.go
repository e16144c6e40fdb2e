package words

import (
	"fmt"

	"chargehand/model/entry"
)

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

// TwinMade says that a twin was written anew, and what happened to it.
func TwinMade(happened string) string {
	return fmt.Sprintf("its twin was written anew: %s; leave it to the program, and look after the disk", happened)
}

// TwinNotRemade says that it could not be.
func TwinNotRemade(stream string, err error) error {
	return fmt.Errorf("the twin of %s could not be made anew: %w", stream, err)
}

// TwinUnflushed says that the disk did not take what was written.
const TwinUnflushed = "could not be flushed to the disk"

// TwinUnread says why.
func TwinUnread(err error) string { return fmt.Sprintf(" cannot be read (%v)", err) }

// TookOver says that a new book took over, and why.
func TookOver(why, path, aside string) string {
	said := fmt.Sprintf("a new book took over at %s, and entries are kept: %s", path, why)
	if aside != "" {
		said += "; the one before is kept as " + aside
	}
	return said + ": look after the disk"
}

// NoTakeOver says that none could be begun.
func NoTakeOver(err error) error { return fmt.Errorf("no new book could be begun either: %w", err) }

// OnlyThere says that not all could be brought over from a file that no path leads to.
func OnlyThere(err error, path string) error {
	return fmt.Errorf("%w; what was kept may be only where that file went: bring it back to %s and open it again", err, path)
}

// MendedSecond says that somebody went on with a stream elsewhere.
func MendedSecond(second string, entries int) string {
	return fmt.Sprintf("book and twin were carried on apart; the other one's %s are kept as %s, nothing is merged", EntriesOf(entries), second)
}

// NotListed says that a smelt is missing from a list, for nothing of it can be read.
func NotListed(fault error) string {
	return fmt.Sprintf("nothing of it can be read, so it is not among the smelts: %v (chargehand check says more)", fault)
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
