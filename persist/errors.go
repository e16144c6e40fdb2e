package persist

import (
	"cmp"
	"errors"
	"fmt"
	"syscall"

	"chargehand/model/entry"
)

// Sentinels, for errors.Is.
var (
	// ErrHeld: another program has the book open for writing.
	ErrHeld = errors.New("the book is in use")
	// ErrDamaged: the file is empty, cut, foreign or has bad pages.
	ErrDamaged = errors.New("the book is damaged")
	// ErrReadOnlyFile: the file or its folder cannot be written.
	ErrReadOnlyFile = errors.New("the book cannot be written")
	// ErrMissing: there is no book at the place named.
	ErrMissing = errors.New("there is no book")
	// ErrClosed: the book was closed before the entry came.
	ErrClosed = errors.New("the book is closed already; the entry was not kept")
	// ErrNewer: the book was made by a newer version of the program.
	ErrNewer = errors.New("the book is newer than this program")
)

// HeldError says which file another program holds.
type HeldError struct{ Path string }

func (e *HeldError) Error() string {
	return e.Path + " is in use: the program is probably running in another window; go on there, or close it first"
}

// Is makes it an ErrHeld.
func (e *HeldError) Is(target error) bool { return target == ErrHeld }

// FileError says what is wrong with the book's file and what to do. Kind is the
// sentinel it answers to: ErrDamaged, ErrReadOnlyFile or ErrMissing.
type FileError struct {
	Path, What, Do string
	Kind           error
}

func (e *FileError) Error() string { return e.Path + " " + e.What + "; " + e.Do }

// Unwrap gives the sentinel.
func (e *FileError) Unwrap() error { return e.Kind }

// NewerBookError says that the book's schema is newer than this program's.
type NewerBookError struct {
	Path   string
	Schema int
}

func (e *NewerBookError) Error() string {
	return fmt.Sprintf("%s was written by a newer version of this program (schema %d, this one knows %d); it is open for reading only: use the newer version to write in it", e.Path, e.Schema, schema)
}

// Is makes it an ErrNewer.
func (e *NewerBookError) Is(target error) bool { return target == ErrNewer }

// RefusedError says why an entry cannot be kept at all, now or later.
type RefusedError struct {
	Entry entry.Entry
	Why   string
}

func (e *RefusedError) Error() string {
	return fmt.Sprintf("an entry for %q (%s) was refused: %s; key it again", e.Entry.Stream, e.Entry.Kind(), e.Why)
}

// NotKeptError says how many entries are not kept, and why. They are held and
// tried again until the book is closed; only then does Entries hold them.
type NotKeptError struct {
	Count   int
	Entries []entry.Entry
	Cause   error
}

func (e *NotKeptError) Error() string {
	verb := "are"
	if e.Count == 1 {
		verb = "is"
	}
	do := ""
	if errors.Is(e.Cause, syscall.ENOSPC) {
		do = ": make room on the disk"
	}
	return fmt.Sprintf("%s %s NOT kept: %v%s", entriesOf(e.Count), verb, e.Cause, do)
}

// Unwrap gives the cause.
func (e *NotKeptError) Unwrap() error { return e.Cause }

// PresentError says that a smelt is in the book already.
type PresentError struct {
	Stream string // the one that was to be put in
	As     string // what it is called in the book
	By     string // by what it was recognised: its id, uid, or source
}

func (e *PresentError) Error() string {
	return fmt.Sprintf("%s is in the book already as %s (the same %s); nothing was imported", e.Stream, e.As, e.By)
}

// NoStreamError says that nothing was ever kept under a name.
type NoStreamError struct{ Stream string }

func (e *NoStreamError) Error() string {
	return fmt.Sprintf("there is no %q in the book; list what there is with: chargehand smelts", e.Stream)
}

// LineError names a line that is no good entry of its stream.
type LineError struct {
	File   string // empty for a line of the book itself
	Line   int    // 1 for the first
	Stream string
	Seq    uint64 // the sequence that should stand there
	What   string
	Cause  error // may be nil
}

// Unwrap gives the cause.
func (e *LineError) Unwrap() error { return e.Cause }

func (e *LineError) Error() string {
	if e.File == "" {
		return fmt.Sprintf("%s, entry %d: %s; compare with its twin: chargehand check", e.Stream, e.Seq, e.What)
	}
	return fmt.Sprintf("%s:%d: %s; take the line from a good copy", e.File, e.Line, e.What)
}

// PoisonedError says that the book could not be flushed, that pages of it cannot
// be read, or that its path leads to it no longer. What was written since may
// not be on the disk or not be found there, so the file is not written again
// before it was opened anew.
type PoisonedError struct {
	Path  string
	Cause error
}

func (e *PoisonedError) Error() string {
	var gone *GoneError
	var bad *FileError
	switch {
	case errors.As(e.Cause, &gone):
		return gone.Error()
	case errors.As(e.Cause, &bad):
		return bad.Error()
	}
	return e.what() + "; it is not written again until the program is opened anew: look after the disk"
}

// what is the message without what to do.
func (e *PoisonedError) what() string {
	var gone *GoneError
	var bad *FileError
	switch {
	case errors.As(e.Cause, &gone):
		return gone.what()
	case errors.As(e.Cause, &bad):
		return bad.Path + " " + bad.What
	default:
		return fmt.Sprintf("%s could not be flushed to the disk (%v)", e.Path, e.Cause)
	}
}

// Unwrap gives the cause.
func (e *PoisonedError) Unwrap() error { return e.Cause }

// GoneError says that a path leads no longer to the file that is open: what is
// written to it would not be found again.
type GoneError struct{ Path, Why string }

func (e *GoneError) Error() string {
	return e.what() + "; put it or its folder back, or see that a new one can be made there"
}

// what is the message without what to do.
func (e *GoneError) what() string {
	return fmt.Sprintf("%s is not as it was left (%s)", e.Path, e.Why)
}

// StrangerError says that another book came to stand at the path of the one that
// is open, so that nothing can take over there.
type StrangerError struct {
	Path string
	Why  string
}

func (e *StrangerError) Error() string {
	return fmt.Sprintf("another file is at %s now (%s), and is left alone; put the folder back that was there", e.Path, e.Why)
}

// both is two errors in one line; either may be nil.
func both(a, b error) error {
	if a == nil || b == nil {
		return cmp.Or(a, b)
	}
	return fmt.Errorf("%w; and %w", a, b)
}
