package persist

import (
	"errors"
	"slices"
	"time"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// What the writer does when a file does not take what is written, is damaged, or is
// not found any more where it was: a twin is written anew, and a new book takes the
// place of the book at once. It holds the streams in use, whole as far as they were
// called kept, so that it and the twins are again two copies of them; the others come
// into it in pauses, from their twins and the book that gave way.

// overcome runs f, which writes to the book. When the book cannot be written any
// more, a new one takes over at once and f runs again.
func (w *writer) overcome(f func() error) error { return w.afterwards(f(), f) }

// afterwards is the second half of overcome: err is what f has said.
func (w *writer) afterwards(err error, f func() error) error {
	if !errors.Is(err, disk.ErrPoisoned) {
		return err
	}
	if failed := w.renew(err); failed != nil {
		return disk.Both(err, words.NoTakeOver(failed))
	}
	return f()
}

// renew puts a new book in the place of one that cannot be written any more.
func (w *writer) renew(why error) error {
	s, old := w.b.store, w.b.store.book()
	if err := w.free(); err != nil {
		return err
	}
	gone := !old.Found()
	book, err := w.newBook()
	if err == nil {
		var aside string
		if aside, err = book.Replace(s.path); err == nil {
			w.say(words.TookOver(happened(why), s.path, aside))
		}
	}
	if err != nil {
		if book != nil {
			book.Discard()
		}
		return err
	}
	s.replace(book)
	w.compareAll(gone)
	return nil
}

// compareAll has all streams compared, after a file went before the end.
func (w *writer) compareAll(gone bool) {
	w.rest, _ = w.b.store.streams() // what cannot be listed is compared at the next opening
	w.astray = w.astray || gone
}

// free is an error when a file that is not this book came to stand at its path:
// nothing of ours may be mixed with what belongs to it. A copy of this book gives way
// like the book itself.
func (w *writer) free() error {
	s := w.b.store
	if slices.ContainsFunc(s.books(), (*boltfile.File).Found) {
		return nil
	}
	if yes, err := disk.IsThere(s.path); !yes {
		return err
	}
	b, err := w.b.opt.open(s.path, true, sample)
	if err != nil {
		return stranger(s.path, err.Error())
	}
	if b.Meta.UID != w.b.uid {
		err = stranger(s.path, words.AnotherBook)
	}
	return disk.Both(err, b.Close())
}

// stranger is the error for a file at the book's path that is not the book.
func stranger(path, why string) error {
	return &disk.FileError{Path: path, What: words.Stranger(why), Do: words.StrangerDo}
}

// happened is what happened to a file, without what to do.
func happened(err error) string {
	if known := new(disk.FileError); errors.As(err, &known) {
		return known.Happened()
	}
	return err.Error()
}

// newBook makes a book, in a folder made anew if need be, that has not its name yet and
// holds the streams with entries on their way. The writer forgets all others, and
// reads where they stand when they are next written to.
func (w *writer) newBook() (*boltfile.File, error) {
	book, err := w.b.opt.begin(w.b.store.path, w.b.uid, false)
	if err != nil {
		return nil, err
	}
	return book, book.Update(func(tx boltfile.Tx) error {
		for _, name := range sortedKeys(w.streams) {
			st := w.streams[name]
			if !slices.ContainsFunc(w.held, func(h held) bool { return h.refused == nil && h.e.Stream == name }) {
				st.twin.Close()
				delete(w.streams, name)
				continue
			}
			if lines := twin.UpTo(st.lines, st.booked); len(lines) > 0 {
				if err := tx.PutLines(name, lines, boltfile.RecordOf(lines, st.rec.Gaps)); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// withTwins is afterwards for the twins: those that are lost are written anew, as far
// as they were called kept. err is what writing to them has said, told that it is
// said already that all of the book's files went.
func (w *writer) withTwins(err error, told bool) error {
	lost := slices.DeleteFunc(sortedKeys(w.streams), func(name string) bool { return w.streams[name].twin.Lost == nil })
	if len(lost) == 0 {
		return err
	}
	for _, name := range lost {
		if failed := w.remakeTwin(name, told); failed != nil {
			return disk.Both(err, words.TwinNotRemade(name, failed))
		}
	}
	w.compareAll(true) // the twins of others may be gone as well
	return w.writeTwins()
}

// remakeTwin writes a lost twin anew. What came to stand in its place is set aside.
func (w *writer) remakeTwin(name string, told bool) error {
	s := w.streams[name]
	t, lost := s.twin, s.twin.Lost
	err := w.free()
	if err == nil {
		err = t.Remake(twin.UpTo(s.lines, t.Seq))
	}
	if err == nil && !told {
		w.say(words.OfStream(name, words.TwinMade(happened(lost))))
	}
	return err
}

// compareNext compares the next of the streams that were not looked at yet, and tells
// after what time it goes on.
func (w *writer) compareNext() time.Duration {
	name := w.rest[0]
	w.rest = w.rest[1:]
	if err := w.compare(name); err != nil && w.astray {
		w.rest = append(w.rest, name)
		return w.b.opt.retryEvery
	}
	return comparePause // keeping in it tries again
}

// bringAll compares them all after a file went, before the open one is let go of: it
// may hold what no path leads to. While nothing was keyed, its going may not have been
// noticed.
func (w *writer) bringAll() error {
	err := w.overcome(func() error { return w.b.store.book().There() })
	for err == nil && w.astray && len(w.rest) > 0 {
		if err = w.compare(w.rest[0]); err == nil {
			w.rest = w.rest[1:]
		}
	}
	if err != nil {
		return words.OnlyThere(err, w.b.store.path)
	}
	return nil
}

// compare makes the copies of a stream say the same that need not be written to next.
func (w *writer) compare(name string) error {
	known := w.streams[name] != nil
	err := w.overcome(func() error { return w.reload(name) })
	if s := w.streams[name]; s != nil && !known {
		s.twin.Close()
		delete(w.streams, name)
	}
	return err
}
