package persist

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	bolt "go.etcd.io/bbolt"
)

// takeOverFile is the name of the small book that takes over from one that
// could not be flushed; number counts from 1.
func takeOverFile(path string, number int) string { return path + takeOverExt + strconv.Itoa(number) }

// takeOvers lists the small books beside a book, in the order of their making.
// Those already set aside are not among them.
func takeOvers(path string) []string {
	files, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return nil // whoever opens the book next says why
	}
	var numbers []int
	for _, f := range files {
		digits, ok := strings.CutPrefix(f.Name(), filepath.Base(path)+takeOverExt)
		if n, err := strconv.Atoi(digits); ok && err == nil && n > 0 {
			numbers = append(numbers, n)
		}
	}
	slices.Sort(numbers)
	names := make([]string, len(numbers))
	for i, n := range numbers {
		names[i] = takeOverFile(path, n)
	}
	return names
}

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
		return both(err, failed)
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
		return fmt.Errorf("no new book could be begun either: %w", err)
	}
	small, err := w.smallBook(file)
	if err != nil {
		_ = os.Remove(file) // nothing was called kept for its sake
		return fmt.Errorf("no new book could be begun either: %w", err)
	}
	away := s.writing().vault.There() != nil
	w.replaced = append(w.replaced, s.writing())
	s.over.Store(small)
	w.last = "" // so that the new one notes it
	if away {
		w.strand()
	}
	w.say(fmt.Sprintf("a small book took over, and entries are kept: %s; they are in %s until the next opening merges all: look after the disk", why.what(), file))
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
		file = takeOverFile(s.path, number)
		if taken, err := there(file); err != nil {
			return "", err
		} else if !taken {
			break
		}
	}
	return file, create(file, w.b.opt.Clock().Wall)
}

// ours is an error when a file that is not this book came to stand at its path:
// nothing of ours may be mixed with what belongs to it. A copy of this book will
// do.
func (w *writer) ours() error {
	s := w.b.store
	if s.vault.vault.There() == nil {
		return nil
	}
	if yes, err := there(s.path); !yes {
		return err
	}
	v, err := openVault(s.path, true, glance, w.b.opt.openBook)
	if err != nil {
		return &StrangerError{Path: s.path, Why: err.Error()}
	}
	defer v.Close()
	meta, err := readMetaBucket(s.path, v)
	switch {
	case err != nil:
		return &StrangerError{Path: s.path, Why: err.Error()}
	case meta.uid != w.b.uid:
		return &StrangerError{Path: s.path, Why: "another book"}
	}
	return nil
}

// smallBook opens the file and fills it with the streams in use.
func (w *writer) smallBook(file string) (*safeVault, error) {
	v, err := openVault(file, false, w.b.opt.LockWait, w.b.opt.openBook)
	if err != nil {
		return nil, err
	}
	small := &safeVault{path: file, vault: w.b.opt.wrapVault(v)}
	inUse := w.inUse()
	err = small.Update(func(tx *bolt.Tx) error {
		for _, name := range sortedKeys(inUse) {
			lines, err := w.kept(name, inUse[name])
			if err != nil {
				return err
			}
			if len(lines) > 0 {
				if err := putLines(tx, name, 1, lines, recordOf(lines)); err != nil {
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
		_ = over.View(func(tx *bolt.Tx) error { // what cannot be read comes from the twin when it is next wanted
			recs, err := recordsIn(tx)
			for name, r := range recs {
				streams[name] = r.Length
			}
			return err
		})
	}
	for name, s := range w.streams {
		if slices.ContainsFunc(w.held, func(h held) bool { return h.refused == nil && h.e.Stream == name }) {
			streams[name] = s.booked
			continue
		}
		s.twin.close()
		delete(w.streams, name)
	}
	return streams
}

// kept gives the first lines of a stream: as the writer remembers them, from the
// book, or else from its twin.
func (w *writer) kept(name string, upTo uint64) ([][]byte, error) {
	if s := w.streams[name]; s != nil && uint64(len(s.lines)) >= upTo {
		return s.lines[:upTo], nil
	}
	lines, err := w.b.store.lines(name)
	if n, _ := wholeChain(name, lines); uint64(n) < upTo {
		var text twinText
		text, err = readTwin(w.b.store.folder, name)
		lines = text.lines
	}
	if n, _ := wholeChain(name, lines); uint64(n) < upTo {
		return nil, both(fmt.Errorf("%s could be read only up to entry %d of %d", name, n, upTo), err)
	}
	return lines[:upTo], nil
}

// adopt copies a stream that the book taking over does not have into it.
func (s store) adopt(stream string) error {
	over := s.writing()
	if over == s.vault || s.at(stream) == over {
		return nil
	}
	lines, _ := s.lines(stream) // what cannot be read comes from the twin
	n, _ := wholeChain(stream, lines)
	if n == 0 {
		return nil
	}
	return over.Update(func(tx *bolt.Tx) error { return putLines(tx, stream, 1, lines[:n], recordOf(lines[:n])) })
}

// merge brings what small books hold that took over back into the book: all of
// it is written anew, for nobody knows what the disk holds of a book that could
// not be flushed.
func merge(file string, opt Options) ([]string, error) {
	if len(takeOvers(file)) == 0 {
		return nil, nil
	}
	r, err := Rescue(file, opt)
	if newer := new(NewerBookError); errors.As(err, &newer) {
		return nil, nil // it opens for reading, and its twins have all
	}
	if err != nil {
		return nil, err
	}
	said := []string{fmt.Sprintf("%s could not be written to the end when it was last open; it was written anew with the %s of it, its twins and the small book that took over, which were set aside as %s", file, entriesOf(int(r.Entries)), strings.Join(r.Aside, ", "))}
	return said, nil
}
