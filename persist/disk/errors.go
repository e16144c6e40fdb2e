package disk

import (
	"cmp"
	"errors"
	"fmt"
	"os"

	"chargehand/model/words"
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
)

// HeldError says which file another program holds.
type HeldError struct{ Path string }

func (e *HeldError) Error() string { return words.BookInUse(e.Path) }

// Is makes it an ErrHeld.
func (e *HeldError) Is(target error) bool { return target == ErrHeld }

// Trouble is an error that can be told without what to do about it.
type Trouble interface {
	error
	Happened() string
}

// FileError says what is wrong with a file and what to do. Kind is the sentinel
// it answers to: ErrDamaged, ErrReadOnlyFile, ErrMissing or ErrNoFile.
type FileError struct {
	Path, What, Do string
	Kind           error
}

func (e *FileError) Error() string { return words.Trouble(e.Path, e.What, e.Do) }

// Happened is the message without what to do.
func (e *FileError) Happened() string { return e.Path + " " + e.What }

// Unwrap gives the sentinel.
func (e *FileError) Unwrap() error { return e.Kind }

// Damaged is the error for a file that is not a whole book.
func Damaged(path, what string) error {
	return &FileError{Path: path, What: what, Do: words.FileDamagedDo, Kind: ErrDamaged}
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

// GoneError says that a path leads no longer to the file that is open: what is
// written to it would not be found again.
type GoneError struct{ Path, Why string }

func (e *GoneError) Error() string { return e.Happened() + words.GoneDo }

// Happened is the message without what to do.
func (e *GoneError) Happened() string { return words.FileGone(e.Path, e.Why) }

// Both is two errors in one line; either may be nil.
func Both(a, b error) error {
	if a == nil || b == nil {
		return cmp.Or(a, b)
	}
	return fmt.Errorf("%w; and %w", a, b)
}
