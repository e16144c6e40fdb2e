package persist

import (
	"errors"
	"fmt"
	"runtime/debug"
	"sync/atomic"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"
)

// safeVault turns the panics of a broken file into errors, and lets nothing be
// written any more once it is not known what the disk holds.
type safeVault struct {
	path   string
	vault  vault
	poison atomic.Pointer[PoisonedError]
	broken atomic.Bool // bbolt cannot read it either; set after poison
}

// View reads in one transaction. What f wants to keep it copies. A page that
// cannot be read poisons the book, and nothing more is read of it.
func (s *safeVault) View(f func(*bolt.Tx) error) error {
	if s.broken.Load() {
		return s.poison.Load()
	}
	err := guarded(s.path, func() error { return s.vault.View(f) })
	if isBroken(err) {
		return s.spoil(err)
	}
	return err
}

// Update writes in one transaction. An error of f itself, or of a write that
// did not fit, leaves the book as it was; any other poisons it.
func (s *safeVault) Update(f func(*bolt.Tx) error) error {
	if p := s.poison.Load(); p != nil {
		return p
	}
	var own error
	err := guarded(s.path, func() error {
		return s.vault.Update(func(tx *bolt.Tx) error { own = f(tx); return own })
	})
	switch {
	case err == nil || isShortWrite(err) || own != nil && !isBroken(err):
		return err
	}
	return s.spoil(err)
}

// There is a *PoisonedError when the path leads to the book no longer.
func (s *safeVault) There() error {
	if err := s.vault.There(); err != nil {
		return s.spoil(err)
	}
	return nil
}

// isBroken tells whether bbolt cannot go on after an error: it panicked, or lost
// its map of the file.
func isBroken(err error) bool {
	return errors.Is(err, errFault) || errors.Is(err, bolterrors.ErrInvalidMapping)
}

// spoil lets nothing be written any more. The first cause is what is told.
func (s *safeVault) spoil(cause error) error {
	s.poison.CompareAndSwap(nil, &PoisonedError{Path: s.path, Cause: cause})
	if isBroken(cause) {
		s.broken.Store(true)
	}
	return s.poison.Load()
}

// Close closes the book. One that a panic has left with bbolt's locks taken is
// abandoned, for closing would wait for ever.
func (s *safeVault) Close() error {
	closing := s.vault.Close
	if s.broken.Load() {
		closing = s.vault.Abandon
	}
	if err := closing(); err != nil {
		return fmt.Errorf("%s could not be closed properly (%w); what was called kept is in it: look after the disk", s.path, err)
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
			err = fmt.Errorf("%w: %w", errFault, damaged(path, fmt.Sprintf("is damaged (%v)", r)))
		}
	}()
	return f()
}
