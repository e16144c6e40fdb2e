package persist

import (
	"errors"
	"fmt"
	"runtime/debug"
	"sync/atomic"

	bolt "go.etcd.io/bbolt"
)

// safeVault turns the panics of a broken file into errors, and lets nothing be
// written any more once it is not known what the disk holds.
type safeVault struct {
	path   string
	vault  vault
	poison atomic.Pointer[PoisonedError]
	broken atomic.Bool // a panic left bbolt's locks in an unknown state
}

// View reads in one transaction. What f wants to keep it copies.
func (s *safeVault) View(f func(*bolt.Tx) error) error {
	return guarded(s.path, func() error { return s.vault.View(f) })
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
	case err == nil || isShortWrite(err):
		return err
	case errors.Is(err, errFault):
		s.broken.Store(true)
	case own != nil:
		return err
	}
	p := &PoisonedError{Path: s.path, Cause: err}
	s.poison.Store(p)
	return p
}

// Close closes the book. One that a panic has left with bbolt's locks taken is
// abandoned, for closing would wait for ever.
func (s *safeVault) Close() error {
	if s.broken.Load() {
		return s.vault.Abandon()
	}
	return s.vault.Close()
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
