package persist

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Reader reads a book without holding it: each call opens the book for a
// moment, or, when another program has it or it is damaged, reads the twins.
// What it gives is held against chain and head; what was found to be wrong is in
// Faults. The last line of a twin may be one that is not yet called kept.
type Reader struct {
	path    string
	opt     Options
	trouble error // why the book itself could not be read at the last call, unless it was only in use
	faults  []string
}

// sample is how long a reader waits for the lock: it asks once.
const sample = time.Millisecond

// OpenReader makes a reader of the book that a path means. It fails when
// neither book nor twins are there.
func OpenReader(path string, opt Options) (*Reader, error) {
	r := &Reader{path: boltfile.BookFile(path), opt: opt.filled()}
	if err := disk.Regular(r.path); err != nil && !(errors.Is(err, os.ErrNotExist) && disk.Exists(twin.Find(r.path, ""))) {
		return nil, disk.AccessError(r.path, err)
	}
	return r, nil
}

// Path is the book's file.
func (r *Reader) Path() string { return r.path }

// UID is the book's, as its twins have it; "" where there are none.
func (r *Reader) UID() string { return twin.UID(twin.Find(r.path, "")) }

// Faults says what was found to be wrong while reading, one sentence each, and
// how it was got round.
func (r *Reader) Faults() []string { return r.faults }

func (r *Reader) fault(all ...string) {
	for _, said := range all {
		if !slices.Contains(r.faults, said) {
			r.faults = append(r.faults, said)
		}
	}
}

// look runs f on the book and its twins.
func (r *Reader) look(f func(store) error) error {
	r.trouble = nil
	s, uid := storeOf(r.path), ""
	switch book, err := r.opt.open(r.path, true, sample); {
	case err == nil:
		defer book.Close()
		uid = book.Meta.UID
		s.replace(book)
	case !errors.Is(err, disk.ErrHeld):
		r.trouble = err
		r.fault(words.OnlyTwins(err))
	}
	s.folder = twin.Find(r.path, uid)
	return f(s)
}

// Streams lists the streams that hold entries, the house included, sorted.
func (r *Reader) Streams() (names []string, err error) {
	err = r.look(func(s store) error {
		names, err = s.streams()
		return r.listed(s, len(names), err)
	})
	return names, err
}

// listed is the error of a listing that found n streams.
func (r *Reader) listed(s store, n int, err error) error {
	if err != nil && s.book() != nil {
		r.trouble, err = err, nil
		r.fault(words.OnlyTwins(r.trouble))
	}
	if n == 0 && r.trouble != nil {
		return r.trouble
	}
	return err
}

// Read gives a stream as it was kept, with its gaps.
func (r *Reader) Read(stream string) (reading Reading, err error) {
	if twin.ValidStream(stream) != nil {
		return reading, &twin.NoStreamError{Stream: stream}
	}
	err = r.look(func(s store) error {
		if reading, err = s.read(stream); err != nil && r.trouble != nil && errors.As(err, new(*twin.NoStreamError)) {
			return r.trouble
		}
		return err
	})
	r.fault(reading.said(stream)...)
	return reading, err
}

// Entries gives all entries of a stream in their order.
func (r *Reader) Entries(stream string) ([]entry.Entry, error) {
	reading, err := r.Read(stream)
	if err != nil {
		return nil, err
	}
	return reading.Entries(stream)
}

// Summaries gives the shelf's line of every smelt, sorted by id. Those that are
// out of date are made anew from the entries. Of a stream with a bad line the shelf
// shows what can be read.
func (r *Reader) Summaries() (all []Summary, err error) {
	err = r.look(func(s store) error {
		var said []string
		all, said, _, err = s.summaries(r.opt.Summarise)
		r.fault(said...)
		return r.listed(s, len(all), err)
	})
	return all, err
}

// isHouse tells whether a stream is the house's, or a second one of it.
func isHouse(stream string) bool { return twin.OfStream(stream, entry.House) }

// Owns tells whether a file belongs to the book that a path means: the book, what
// was set aside, or anything in a folder of its twins.
func Owns(book, path string) bool {
	book = boltfile.BookFile(book)
	same := func(a, b string) bool {
		x, err := os.Stat(a)
		y, err2 := os.Stat(b)
		return err == nil && err2 == nil && os.SameFile(x, y)
	}
	dir := filepath.Dir(path)
	switch {
	case same(book, path), same(twin.Find(book, ""), dir), same(twin.Folder(book), dir):
		return true
	}
	// Also what is not there yet: a file that takes the name of one of ours.
	ending, beside := strings.CutPrefix(filepath.Base(path), filepath.Base(book))
	return beside && same(filepath.Dir(book), dir) && (strings.HasPrefix(ending, disk.AsideExt) || strings.HasPrefix(ending, disk.UnfinishedExt) || strings.HasPrefix(ending, ".twins"))
}
