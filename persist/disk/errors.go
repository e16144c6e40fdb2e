package disk

import (
	"cmp"
	"errors"
	"fmt"
	"os"

	"chargehand/model/words"
)

// What may be wrong with a file, for errors.Is.
var (
	// ErrHeld: another program has the book open for writing.
	ErrHeld = errors.New("the book is in use")
	// ErrDamaged: the file is empty, cut, foreign or has bad pages.
	ErrDamaged = errors.New("the book is damaged")
	// ErrReadOnlyFile: the file or its folder cannot be written.
	ErrReadOnlyFile = errors.New("the book cannot be written")
	// ErrMissing: there is no book at the place named.
	ErrMissing = errors.New("there is no book")
	// ErrNewer: the book was made by a newer version of the program.
	ErrNewer = errors.New("the book is newer than this program")
	// ErrGone: a path leads no longer to the file that is open, or that is no longer
	// as it was left: what is written to it would not be found again.
	ErrGone = errors.New("the file is not where it was")
	// ErrPoisoned: the book could not be flushed, pages of it cannot be read, or its
	// path leads to it no longer. What was written since may not be on the disk or not
	// be found there, so the file is not written again.
	ErrPoisoned = errors.New("the book is not written to any more")
)

// FileError says what is wrong with a file and what to do. Kind is one of the above,
// or ErrNoFile; Kind and Cause may be nil.
type FileError struct {
	Path, What, Do string
	Kind, Cause    error
}

func (e *FileError) Error() string { return words.Trouble(e.Path, e.What, e.Do) }

// Happened is the message without what to do.
func (e *FileError) Happened() string { return e.Path + " " + e.What }

// Unwrap gives Kind and Cause.
func (e *FileError) Unwrap() []error { return []error{e.Kind, e.Cause} }

// Damaged is the error for a file that is not a whole book.
func Damaged(path, what string) error {
	return &FileError{Path: path, What: what, Do: words.FileDamagedDo, Kind: ErrDamaged}
}

// Held is the error for a file that another program has.
func Held(path string) error {
	return &FileError{Path: path, What: words.FileHeld, Do: words.FileHeldDo, Kind: ErrHeld}
}

// Gone is the error for a file that is not as it was left.
func Gone(path, why string) error {
	return &FileError{Path: path, What: words.FileGone(why), Do: words.GoneDo, Kind: ErrGone}
}

// Poisoned is the error for a book that is not written again.
func Poisoned(path string, cause error) error {
	e := &FileError{Path: path, What: words.NotFlushed(cause), Do: words.NotFlushedDo, Kind: ErrPoisoned, Cause: cause}
	if known := new(FileError); errors.As(cause, &known) {
		e.What, e.Do = known.What, known.Do
	}
	return e
}

// AccessError says in our words why a file could not be opened.
func AccessError(path string, err error) error {
	switch {
	case errors.Is(err, os.ErrNotExist):
		return &FileError{Path: path, What: words.FileMissing, Do: words.FileMissingDo, Kind: ErrMissing}
	case errors.Is(err, ErrNoFile):
		return &FileError{Path: path, What: words.FileNoFile, Do: words.FileNoFileDo, Kind: ErrNoFile}
	case errors.Is(err, os.ErrPermission), IsReadOnlySystem(err):
		return &FileError{Path: path, What: words.FileClosed, Do: words.FileClosedDo, Kind: ErrReadOnlyFile}
	default:
		return words.FileNotOpened(path, err)
	}
}

// Both is two errors in one line; either may be nil.
func Both(a, b error) error {
	if a == nil || b == nil {
		return cmp.Or(a, b)
	}
	return fmt.Errorf("%w; and %w", a, b)
}
