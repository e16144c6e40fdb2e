package persist

import (
	"errors"
	"maps"
	"slices"

	"chargehand/model/words"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// What the writer does when a path leads no longer to the file that it holds: a
// twin is made anew from the book, a book is taken over from, and what only the
// open file still holds is written again where it can be found.

// remakeTwins writes the twins that are lost anew, as far as they were called
// kept. What came to stand in their place is set aside. It may be told already
// that all of the book's files went.
func (w *writer) remakeTwins(told bool) error {
	for _, name := range sortedKeys(w.streams) {
		t := w.streams[name].twin
		if t.Lost == nil {
			continue
		}
		why, bad := words.TwinGone, new(disk.FileError)
		if errors.As(t.Lost, &bad) {
			why = bad.What
		}
		r, err := w.kept(name, t.Seq)
		if err == nil {
			err = w.ours()
		}
		if err == nil {
			err = disk.MakeFolder(t.Folder)
		}
		if err == nil {
			err = t.Remake(r.Lines)
		}
		if err != nil {
			return words.TwinNotRemade(name, err)
		}
		w.strand() // the twins of others may be gone as well
		if told {
			continue
		}
		w.say(words.OfStream(name, words.TwinMade(t.File(), why)))
	}
	return nil
}

// withTwins is afterwards for the twins: err is what writing to them has said,
// told that a book has taken over.
func (w *writer) withTwins(err error, told bool) error {
	if !slices.ContainsFunc(slices.Collect(maps.Values(w.streams)), func(s *stream) bool { return s.twin.Lost != nil }) {
		return err
	}
	if failed := w.remakeTwins(told); failed != nil {
		return disk.Both(err, failed)
	}
	return w.writeTwins()
}

// strand lists the streams whose twin is not whole, after a file went: the only
// whole copy may be in one that no path leads to.
func (w *writer) strand() {
	recs, err := w.b.store.records()
	if err != nil {
		return // nothing of the file can be read: there is nothing to bring over
	}
	sizes, _ := twin.Sizes(w.b.store.folder) // what cannot be listed is compared
	for _, name := range sortedKeys(recs) {
		held := slices.ContainsFunc(w.held, func(h held) bool { return h.e.Stream == name })
		if !held && sizes[name] != recs[name].Bytes && !slices.Contains(w.stranded, name) {
			w.stranded = append(w.stranded, name)
		}
	}
}

// bringNext brings the next of them over.
func (w *writer) bringNext() error {
	name := w.stranded[0]
	if err := w.compare(name); err != nil {
		return err
	}
	w.stranded = w.stranded[1:]
	return nil
}

// bringAll brings over what is left, before the open file is let go of. While
// nothing was keyed, its going may not have been noticed.
func (w *writer) bringAll() error {
	err := w.overcome(func() error { return w.b.store.writing().There() })
	if err != nil {
		w.strand()
	}
	for err == nil && len(w.stranded) > 0 {
		err = w.bringNext()
	}
	if n := len(w.stranded); n > 0 {
		return words.OnlyThere(err, n, w.b.store.path)
	}
	return err
}
