package words

import (
	"strconv"
	"time"

	modelwords "chargehand/model/words"
)

// The Book.
const (
	NoEntryHere  = "no entries to show; k shows another kind"
	NotAnAct     = "this entry is the book's own: there is nothing to cross out or change in it"
	AmendTime    = "when it was"
	AmendEvent   = "what it was"
	ShortChanged = "changed"

	DoMessages = "what was put right"
	NoMessages = "nothing had to be put right since the book was opened"

	FilterActs      = "what was done and seen"
	FilterCharges   = "charges, fills and levels"
	FilterBlast     = "blast and tuyere"
	FilterLooks     = "looks, temperatures, slag"
	FilterWeighings = "weighings"
	FilterNotes     = "notes"
	FilterMended    = "crossed out or changed"
	FilterAll       = "every entry, keys too"
)

// BookShows says what the Book is narrowed to.
func BookShows(kind string) string { return "book: " + kind }

// MessageNumber stands before a message.
func MessageNumber(n int) string { return strconv.Itoa(n) + "  " }

// MessagesOf heads the page of what the book had to put right.
func MessagesOf(n int) string { return "put right since the book was opened: " + Messages(n) }

// AmendWhat asks what to change about an entry.
func AmendWhat(what string) string { return "change " + what }

// StruckWhen says who crossed an entry out, and when.
func StruckWhen(at, by string) string { return "crossed out " + at + byWhom(by) }

// MovedWhen says to which smelt an entry was moved, and when; MovedFrom from which.
func MovedWhen(smelt, at, by string) string { return "moved to " + smelt + " " + at + byWhom(by) }

// MovedFrom says from which smelt an entry was moved.
func MovedFrom(smelt string) string { return "moved here from " + smelt }

// ChangedWhen says what an entry was before it was changed, by whom and when.
func ChangedWhen(was, at, by string) string { return "was " + was + "; changed " + at + byWhom(by) }

// WasAt is the time that an entry had before it was changed.
func WasAt(at string) string { return "at " + at }

func byWhom(by string) string {
	if by == "" {
		return ""
	}
	return " by " + by
}

// EntryTaken says when and how an entry was taken down.
func EntryTaken(seq uint64, happened, kept time.Time, by, screen, key string, uncertain time.Duration) string {
	s := "entry " + strconv.FormatUint(seq, 10) + ", " + happened.Format("2 Jan 2006 15:04:05")
	if uncertain > 0 {
		s += " ±" + modelwords.Lasted(uncertain)
	}
	if !kept.IsZero() {
		s += ", taken down " + kept.Format("15:04:05")
	}
	s += byWhom(by)
	if screen != "" {
		s += ", at " + screen
	}
	if key != "" {
		s += ", key " + key
	}
	return s
}
