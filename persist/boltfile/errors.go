package boltfile

import (
	"errors"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// ErrNewer: the book was made by a newer version of the program.
var ErrNewer = errors.New("the book is newer than this program")

// NewerBookError says that the book's schema is newer than this program's.
type NewerBookError struct {
	Path   string
	Schema int
}

func (e *NewerBookError) Error() string { return words.BookIsNewer(e.Path, e.Schema, Schema) }

// Is makes it an ErrNewer.
func (e *NewerBookError) Is(target error) bool { return target == ErrNewer }

// PoisonedError says that the book could not be flushed, that pages of it cannot
// be read, or that its path leads to it no longer. What was written since may
// not be on the disk or not be found there, so the file is not written again
// before it was opened anew.
type PoisonedError struct {
	Path  string
	Cause error
}

func (e *PoisonedError) Error() string {
	if t := e.told(); t != nil {
		return t.Error()
	}
	return e.What() + words.NotFlushedDo
}

// What is the message without what to do.
func (e *PoisonedError) What() string {
	if t := e.told(); t != nil {
		return t.Happened()
	}
	return words.NotFlushed(e.Path, e.Cause)
}

// told is the cause where it says itself what happened and what to do.
func (e *PoisonedError) told() (t disk.Trouble) {
	errors.As(e.Cause, &t)
	return t
}

// Unwrap gives the cause.
func (e *PoisonedError) Unwrap() error { return e.Cause }
