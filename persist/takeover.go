package persist

import (
	"errors"
	"os"
	"slices"
	"strings"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// overcome runs f, which writes to the book. When the book cannot be written any
// more, a small new one takes over at once and f runs again.
func (w *writer) overcome(f func() error) error { return w.afterwards(f(), f) }

// afterwards is the second half of overcome: err is what f has said.
func (w *writer) afterwards(err error, f func() error) error {
	poisoned := new(PoisonedError)
	if !errors.As(err, &poisoned) {
		return err
	}
	if failed := w.takeOver(poisoned); failed != nil {
		return disk.Both(err, failed)
	}
	return f()
}

// takeOver puts a small new book in the place of one that cannot be written any
// more. It holds the streams in use, whole as far as they were called kept, so
// that it and the twins are again two copies of them. Streams that are not in
// use stay in the old book, which is only read from now on; those that nothing
// at its path holds any more are brought over in pauses. The next opening merges
// all of it.
func (w *writer) takeOver(why *PoisonedError) error {
	s := w.b.store
	file, err := w.beginSmall()
	if err != nil {
		return words.NoTakeOver(err)
	}
	small, err := w.smallBook(file)
	if err != nil {
		_ = os.Remove(file) // nothing was called kept for its sake
		return words.NoTakeOver(err)
	}
	away := !s.writing().Found()
	w.replaced = append(w.replaced, s.writing())
	s.over.Store(small)
	w.last = "" // so that the new one notes it
	if away {
		w.strand()
	}
	w.say(words.TookOver(why.What(), file))
	return nil
}

// beginSmall makes the file of a book that takes over, in a folder made anew if
// need be.
func (w *writer) beginSmall() (file string, err error) {
	s := w.b.store
	if err := w.ours(); err != nil {
		return "", err
	}
	for number := 1; ; number++ {
		file = boltfile.TakeOverFile(s.path, number)
		if taken, err := disk.IsThere(file); err != nil {
			return "", err
		} else if !taken {
			break
		}
	}
	return file, boltfile.Create(file, w.b.opt.Clock().Wall, w.b.uid)
}

// ours is an error when a file that is not this book came to stand at its path:
// nothing of ours may be mixed with what belongs to it. A copy of this book will
// do.
func (w *writer) ours() error {
	s := w.b.store
	if s.book.Found() {
		return nil
	}
	if yes, err := disk.IsThere(s.path); !yes {
		return err
	}
	b, err := w.b.opt.open(s.path, true, sample)
	if err != nil {
		return &StrangerError{Path: s.path, Why: err.Error()}
	}
	defer b.Close()
	if b.Meta.UID != w.b.uid {
		return &StrangerError{Path: s.path, Why: words.AnotherBook}
	}
	return nil
}

// smallBook opens the file and fills it with the streams in use.
func (w *writer) smallBook(file string) (*boltfile.File, error) {
	small, err := w.b.opt.open(file, false, w.b.opt.LockWait)
	if err != nil {
		return nil, err
	}
	inUse := w.inUse()
	err = small.Update(func(tx boltfile.Tx) error {
		for _, name := range sortedKeys(inUse) {
			r, err := w.kept(name, inUse[name])
			if err != nil {
				return err
			}
			if len(r.Lines) > 0 {
				if err := tx.PutLines(name, r.Lines, boltfile.RecordOf(r.Lines, r.Gaps)); err != nil {
					return err
				}
			}
		}
		return nil
	})
	if err != nil {
		_ = small.Close()
		return nil, err
	}
	return small, nil
}

// inUse names the streams that a book taking over must hold, with the last
// sequence that is in the present one: those with entries on their way, and
// those of a book that took over before. The writer forgets all others, and
// reads where they stand when they are next written to.
func (w *writer) inUse() map[string]uint64 {
	streams := map[string]uint64{}
	if over := w.b.store.over.Load(); over != nil {
		recs, _ := over.Records() // what cannot be read comes from the twin when it is next wanted
		for name, r := range recs {
			streams[name] = r.Length
		}
	}
	for name, s := range w.streams {
		if slices.ContainsFunc(w.held, func(h held) bool { return h.refused == nil && h.e.Stream == name }) {
			streams[name] = s.booked
			continue
		}
		s.twin.Close()
		delete(w.streams, name)
	}
	return streams
}

// kept gives the lines of a stream up to a sequence: as the writer remembers them,
// or as book and twin have them.
func (w *writer) kept(name string, upTo uint64) (Reading, error) {
	if s := w.streams[name]; s != nil && s.rec.Length >= upTo {
		return Reading{Lines: twin.UpTo(s.lines, upTo), Gaps: s.rec.Gaps}, nil
	}
	r, err := w.b.store.read(name)
	r.Lines = twin.UpTo(r.Lines, upTo)
	if rec := boltfile.RecordOf(r.Lines, r.Gaps); rec.Length < upTo {
		return r, disk.Both(errors.New(words.ReadUpTo(name, int(rec.Length), upTo)), err)
	}
	return r, nil
}

// adopt copies a stream that the book taking over does not have into it.
func (s store) adopt(stream string) error {
	over := s.writing()
	if over == s.book || s.at(stream) == over {
		return nil
	}
	r, err := s.read(stream)
	if isAbsent(err) || len(r.Lines) == 0 {
		return nil // what cannot be read comes from the twin
	}
	return s.put(stream, r.Lines, boltfile.RecordOf(r.Lines, r.Gaps), false)
}

// merge brings what small books hold that took over back into the book: all of
// it is written anew, for nobody knows what the disk holds of a book that could
// not be flushed.
func merge(file string, opt Options) ([]string, error) {
	if len(boltfile.TakeOvers(file)) == 0 {
		return nil, nil
	}
	r, err := Rescue(file, opt.quiet())
	if newer := new(NewerBookError); errors.As(err, &newer) {
		return nil, nil // it opens for reading, and its twins have all
	}
	if err != nil {
		return nil, err
	}
	said := []string{words.Merged(file, int(r.Entries), strings.Join(r.Aside, ", "))}
	return said, nil
}
