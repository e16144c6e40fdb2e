package boltfile

import (
	"errors"
	"fmt"
	"runtime/debug"
	"sync/atomic"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// File is an open bbolt file. It turns the panics of a broken one into errors, and
// lets nothing be written any more once it is not known what the disk holds.
type File struct {
	Path    string
	OneHead bool // when it was opened one of its two heads was damaged: the last commit may be missing
	vault   Vault
	poison  atomic.Pointer[PoisonedError]
	broken  atomic.Bool // bbolt cannot read it either; set after poison
}

// View reads in one transaction. What do wants to keep it copies. A page that
// cannot be read poisons the book, and nothing more is read of it.
func (f *File) View(do func(Tx) error) error {
	if f.broken.Load() {
		return f.poison.Load()
	}
	err := guarded(f.Path, func() error { return f.vault.View(func(tx *bolt.Tx) error { return do(Tx{tx}) }) })
	if isBroken(err) {
		return f.spoil(err)
	}
	return err
}

// Update writes in one transaction. An error of do itself, or of a write that
// did not fit, leaves the book as it was; any other poisons it.
func (f *File) Update(do func(Tx) error) error {
	if p := f.poison.Load(); p != nil {
		return p
	}
	var own error
	err := guarded(f.Path, func() error {
		return f.vault.Update(func(tx *bolt.Tx) error { own = do(Tx{tx}); return own })
	})
	switch {
	case err == nil || isShortWrite(err) || own != nil && !isBroken(err):
		return err
	}
	return f.spoil(err)
}

// There is a *PoisonedError when the path leads to the book no longer.
func (f *File) There() error {
	if err := f.vault.There(); err != nil {
		return f.spoil(err)
	}
	return nil
}

// isBroken tells whether bbolt cannot go on after an error: it panicked, or lost
// its map of the file.
func isBroken(err error) bool {
	return errors.Is(err, errFault) || errors.Is(err, bolterrors.ErrInvalidMapping)
}

// spoil lets nothing be written any more. The first cause is what is told.
func (f *File) spoil(cause error) error {
	f.poison.CompareAndSwap(nil, &PoisonedError{Path: f.Path, Cause: cause})
	if isBroken(cause) {
		f.broken.Store(true)
	}
	return f.poison.Load()
}

// Close closes the book. One that a panic has left with bbolt's locks taken is
// abandoned, for closing would wait for ever.
func (f *File) Close() error {
	closing := f.vault.Close
	if f.broken.Load() {
		closing = f.vault.Abandon
	}
	if err := closing(); err != nil {
		return words.FileNotClosed(f.Path, err)
	}
	return nil
}

// errFault marks the error that was made of a panic.
var errFault = errors.New("a page of the file is bad")

// guarded runs f so that a bad page, or one that the file no longer reaches to,
// is an error and not the end of the program. bbolt panics on both.
func guarded(path string, f func() error) (err error) {
	old := debug.SetPanicOnFault(true)
	defer debug.SetPanicOnFault(old)
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%w: %w", errFault, disk.Damaged(path, words.FileDamaged(r)))
		}
	}()
	return f()
}

// Broken tells whether nothing of the file can be read any more.
func (f *File) Broken() bool { return f.broken.Load() }

// Poisoned tells whether nothing may be written to it any more.
func (f *File) Poisoned() bool { return f.poison.Load() != nil }

// Found tells whether the path still leads to the file, without poisoning it.
func (f *File) Found() bool { return f.vault.There() == nil }

// Meta is what the book says of itself. A file that is no book of this program
// is an ErrDamaged.
func (f *File) Meta() (m Meta, err error) {
	err = guarded(f.Path, func() error {
		return f.vault.View(func(tx *bolt.Tx) error { m, err = Tx{tx}.meta(); return err })
	})
	var bad *disk.FileError
	switch {
	case errors.As(err, &bad):
		return m, bad
	case err != nil:
		return m, disk.Damaged(f.Path, words.FileForeignFor(err))
	}
	return m, nil
}

// Records reads the records of all streams.
func (f *File) Records() (all map[string]Record, err error) {
	err = f.View(func(tx Tx) error { all, err = tx.Records(); return err })
	return all, err
}

// Stream gives what the book has of a stream, once its pages were walked.
func (f *File) Stream(name string) (r Record, lines [][]byte, err error) {
	if err := f.Follow(name); err != nil {
		return r, nil, err
	}
	err = f.View(func(tx Tx) (err error) {
		if r, err = tx.Record(name); err == nil {
			lines, err = tx.Lines(name)
		}
		return err
	})
	return r, lines, err
}

// Has tells whether the book has a stream.
func (f *File) Has(stream string) (has bool, err error) {
	err = f.View(func(tx Tx) error { has, err = tx.Has(stream); return err })
	return has, err
}

// Unfinished tells whether a killed import left lines that never became a stream.
func (f *File) Unfinished() (left bool) {
	_ = f.View(func(tx Tx) error { left = tx.tx.Bucket(bucketComing) != nil; return nil })
	return left
}

// Follow makes sure that bbolt can follow the pages of a stream.
func (f *File) Follow(stream string) error { return f.judged(f.vault.Pages().stream(stream)) }

// judged breaks the file when a page of it cannot be followed.
func (f *File) judged(bad error) error {
	if bad == nil {
		return nil
	}
	return f.spoil(fmt.Errorf("%w: %w", errFault, damagedPages(f.Path, bad)))
}
