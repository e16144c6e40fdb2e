package words

import (
	"fmt"
)

// What check finds in a book, down to its pages, and what to do about it.

// What check finds, and what to do about it.
const (
	FindingOpen  = "open the book once with this program, which puts it right and sets aside what has to give way"
	FindingSave  = "copy book and twins to a safe place, then run: chargehand rescue"
	FindingNewer = "read it with the newer version of the program"
	FindingRenew = "no entry is wrong: the summary is made anew when the smelt is next written to"

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

// Why entries are missing in a stream.
const (
	GapLost    = "lost: neither the book nor its twin has them"
	GapChanged = "changed or damaged since they were kept, and left out"
)

// FoundNoCount says that the record of a stream is missing or was changed.
const FoundNoCount = "the count of its entries is missing or was changed"

// PageBad says of a page of the book, or of what it names, that it cannot be followed.
const PageBad = "it does not say what the library under the book writes there"

// InPage says in which page something is wrong.
func InPage(id uint64, err error) error { return fmt.Errorf("page %d: %w", id, err) }
