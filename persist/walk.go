package persist

import (
	"time"

	"chargehand/persist/boltfile"
)

// How the rest of a large book is walked: not while the first picture is made,
// and leaving most of a processor to the keys.
const (
	walkAfter = 2 * time.Second
	walkPause = time.Millisecond // after each stream
)

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
	book := b.store.book
	bad := book.WalkRest(goOn)
	if bad == nil {
		return
	}
	select {
	case b.jobs <- func(w *writer) { w.giveUp(book, bad) }:
	case <-b.leaving:
	}
}

// giveUp takes over from a book that is found to be damaged, unless one has.
func (w *writer) giveUp(damaged *boltfile.File, why error) {
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
