package persist

import (
	"fmt"
	"os"
	"time"
)

// smallFile bounds, in bytes, the books whose pages are all walked when they are
// opened: up to here it takes a few milliseconds. Of larger ones what the streams
// hold is walked when it is wanted first, and else in the background.
const smallFile = 8 << 20

// How the rest of a large book is walked: not while the first picture is made,
// and leaving most of a processor to the keys.
const (
	walkAfter = 2 * time.Second
	walkPause = time.Millisecond // after each stream
)

// walkAtOpening walks the pages that bbolt will follow next. The lock is held,
// so that nobody changes them.
func walkAtOpening(f *os.File) (*pageWalk, error) {
	w, err := startWalk(f)
	if err != nil || int64(w.highWater*w.pageSize) > smallFile {
		return w, err
	}
	return w, damagedPages(f.Name(), w.rest(allAtOnce))
}

// follow makes sure that bbolt can follow the pages of a stream.
func (s *safeVault) follow(stream string) error {
	return s.judged(s.vault.Pages().stream(stream))
}

// judged spoils the book when a page of it cannot be followed.
func (s *safeVault) judged(bad error) error {
	if bad == nil {
		return nil
	}
	return s.spoil(fmt.Errorf("%w: %w", errFault, damagedPages(s.path, bad)))
}

// walkRest walks what opening has left for later. When a page is bad, a small
// book takes over at once, and what the damaged one held is read from the twins.
func (b *Book) walkRest() {
	defer close(b.walked)
	after := b.opt.walkAfter
	goOn := func() bool {
		defer func() { after = walkPause }()
		select {
		case <-time.After(after):
			return true
		case <-b.leaving:
			return false
		}
	}
	vault := b.store.vault
	bad := vault.judged(vault.vault.Pages().rest(goOn))
	if bad == nil {
		return
	}
	select {
	case b.jobs <- func(w *writer) { w.giveUp(vault, bad) }:
	case <-b.leaving:
	}
}

// giveUp takes over from a book that is found to be damaged, unless one has.
func (w *writer) giveUp(damaged *safeVault, why error) {
	if w.b.store.writing() != damaged {
		return
	}
	if err := w.overcome(func() error {
		if w.b.store.writing() == damaged {
			return why
		}
		return nil
	}); err != nil {
		w.say(err.Error())
	}
}
