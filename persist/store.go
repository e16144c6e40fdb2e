package persist

import (
	"cmp"
	"maps"
	"slices"
	"sync/atomic"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// store is the places of every line: an open book, those that gave way to it, and
// the folder of the twins.
type store struct {
	path, folder string
	all          *atomic.Pointer[[]*boltfile.File] // the book first; those behind it are only read
	openTwin     func(path string) (twin.File, error)
	found        map[string][][]byte // by stream, what a rescue has found in a file that is no book any more
}

func storeOf(path string, books ...*boltfile.File) store {
	s := store{path: path, all: new(atomic.Pointer[[]*boltfile.File]), openTwin: twin.OpenFile}
	s.all.Store(&books)
	return s
}

func (s store) books() []*boltfile.File { return *s.all.Load() }

// book is the one that is written to; nil where none can be had: then the twins are
// read.
func (s store) book() *boltfile.File {
	if books := s.books(); len(books) > 0 {
		return books[0]
	}
	return nil
}

// replace puts a book before all others.
func (s store) replace(book *boltfile.File) {
	books := append([]*boltfile.File{book}, s.books()...)
	s.all.Store(&books)
}

// Reading is what the copies of a stream come to together.
type Reading struct {
	twin.Union
	Fault error  // what was found to be wrong with one of them, so that the other is shown; nil when it is whole
	alone error  // nothing vouches for the last line
	file  string // of the twin, where the book has nothing of it
}

// Entries reads the entries from the lines.
func (r Reading) Entries(stream string) ([]entry.Entry, error) {
	return twin.DecodeAll(stream, r.file, r.Lines)
}

// said is what is said of a stream with which something is wrong, if there is.
func (r Reading) said(stream string) (all []string) {
	if r.Fault != nil && len(r.Lines) > 0 { // else nothing of it is shown, and whoever reads it is told that
		all = append(all, words.OfStream(stream, words.ReadOtherwise(r.Fault)))
	}
	if r.alone != nil {
		all = append(all, words.OfStream(stream, r.alone.Error()))
	}
	return all
}

// read gives the lines of a stream as they were kept: chain and head are held
// against each other, and what one copy lacks comes from the other.
func (s store) read(stream string) (r Reading, err error) {
	c, broken := s.gather(stream)
	r = c.judge(stream)
	r.Fault = cmp.Or(broken, r.Fault)
	switch {
	case len(r.Lines) > 0:
		return r, nil
	case r.Fault == nil:
		return r, &twin.NoStreamError{Stream: stream}
	}
	return r, r.Fault
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// listed gives the records of the books and the lengths of the twins.
func (s store) listed() (recs map[string]boltfile.Record, sizes map[string]int64, err error) {
	recs = map[string]boltfile.Record{}
	for stream := range s.found {
		recs[stream] = boltfile.Record{}
	}
	for _, b := range slices.Backward(s.books()) {
		var all map[string]boltfile.Record
		all, err = b.Records() // only the newest has to be read
		maps.Copy(recs, all)
	}
	sizes, unlisted := twin.Sizes(s.folder)
	if s.book() == nil {
		err = unlisted // else what cannot be listed is in the book
	}
	return recs, sizes, err
}

// named gives the streams that are in book or twins, sorted.
func named(recs map[string]boltfile.Record, sizes map[string]int64) []string {
	names := slices.AppendSeq(sortedKeys(recs), maps.Keys(sizes))
	slices.Sort(names)
	return slices.Compact(names)
}

// streams lists the streams that hold entries, in book or twins.
func (s store) streams() ([]string, error) {
	recs, sizes, err := s.listed()
	return named(recs, sizes), err
}
