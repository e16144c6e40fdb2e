package persist

import (
	"time"

	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// How the streams that opening has not compared are compared: not while the first
// picture is made, and leaving most of a processor to the keys.
const (
	compareAfter = 2 * time.Second
	comparePause = time.Millisecond // after each stream
)

// compareRest compares, in the background, book and twins of the streams that
// opening has not looked at. Where they differ the writer puts it right. When a
// page is bad, a small book takes over at once, and what the damaged one held is
// read from the twins.
func (b *Book) compareRest(streams []string) {
	defer close(b.walked)
	after := b.opt.compareAfter
	for _, stream := range streams {
		select {
		case <-time.After(after):
		case <-b.leaving:
			return
		}
		after = comparePause
		book := b.store.book
		rec, lines, err := book.Stream(stream)
		job := func(w *writer) { _ = w.compare(stream) } // keeping in it tries again
		switch {
		case book.Broken():
			job = func(w *writer) { w.giveUp(book, err) }
		case err == nil && agree(stream, copies{record: rec, book: lines, text: twin.Read(b.store.folder, stream)}):
			continue
		}
		select {
		case b.jobs <- job:
		case <-b.leaving:
			return
		}
		if book.Broken() {
			return
		}
	}
}

// agree tells whether the book's lines are whole and the twin has the same.
func agree(stream string, c copies) bool {
	_, fault := c.whole(stream)
	return fault == nil && c.alike()
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
