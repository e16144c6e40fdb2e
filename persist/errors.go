package persist

import (
	"errors"
	"syscall"

	"chargehand/model/entry"
	"chargehand/model/words"
)

// ErrClosed: the book was closed before the entry came.
var ErrClosed = errors.New(words.BookClosed)

// RefusedError says why an entry cannot be kept at all, now or later.
type RefusedError struct {
	Entry entry.Entry
	Why   string
}

func (e *RefusedError) Error() string {
	return words.EntryRefused(e.Entry.Stream, string(e.Entry.Kind()), e.Why)
}

// NotKeptError says how many entries are not kept, and why. They are held and
// tried again until the book is closed; only then does Entries hold them.
type NotKeptError struct {
	Count   int
	Entries []entry.Entry
	Cause   error
}

func (e *NotKeptError) Error() string {
	return words.EntriesHeld(e.Count, e.Cause, errors.Is(e.Cause, syscall.ENOSPC))
}

// Unwrap gives the cause.
func (e *NotKeptError) Unwrap() error { return e.Cause }

// PresentError says that a smelt is in the book already.
type PresentError struct {
	Stream string   // the one that was to be put in
	As     []string // what it is called in the book; more than one when it is there more than once
	By     string   // by what it was recognised: its id, uid, or source
}

func (e *PresentError) Error() string { return words.Present(e.As, e.By) }
