package persist

import (
	"errors"
	"maps"
	"slices"
	"sync/atomic"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// store is an open book and the folder of its twins: the two places of every
// line.
type store struct {
	path, folder string
	book         *boltfile.File                 // nil where it cannot be had: then the twins are read
	over         *atomic.Pointer[boltfile.File] // the small book that took over, if one did; nil where nothing is written
	openTwin     func(path string) (twin.File, error)

	// While the book is made anew there is none to read:
	fresh *boltfile.File // the new one
	names []string       // of all streams that go into it
}

// writing is the book that is written to.
func (s store) writing() *boltfile.File {
	if s.over != nil {
		if small := s.over.Load(); small != nil {
			return small
		}
	}
	if s.fresh != nil {
		return s.fresh
	}
	return s.book
}

// at is the book in which a stream stands.
func (s store) at(stream string) *boltfile.File {
	small := s.writing()
	if small == s.book {
		return s.book
	}
	here, err := small.Has(stream)
	if err == nil && !here && !s.unreadable() {
		return s.book
	}
	return small
}

// Reading is what was read of a stream.
type Reading struct {
	Lines [][]byte
	Gaps  []twin.Gap
	Fault error  // what was found to be wrong with one of its copies; nil when it is whole
	file  string // empty for the book
}

// Entries reads the entries from the lines.
func (r Reading) Entries(stream string) ([]entry.Entry, error) {
	return twin.DecodeAll(stream, r.file, r.Lines)
}

// read gives the lines of a stream as they were kept: chain and head are held
// against each other, and where the book's are not whole the twin's are taken, or
// what both have together.
func (s store) read(stream string) (r Reading, err error) {
	var c copies
	if s.book != nil {
		c.record, c.book, err = s.at(stream).Stream(stream)
		if err == nil && len(c.book) > 0 && !s.behind(stream, c.record) {
			if r.Gaps, r.Fault = c.whole(stream); r.Fault == nil {
				r.Lines = c.book
				return r, nil
			}
		}
	}
	c.text = twin.Read(s.folder, stream)
	return judged(stream, c, err)
}

// behind tells whether the twin has more than the book, where somebody else may
// be writing.
func (s store) behind(stream string, rec boltfile.Record) bool {
	if s.over != nil {
		return false
	}
	sizes, _ := twin.Sizes(s.folder) // what cannot be listed has no more
	return sizes[stream] > rec.Bytes
}

// judged is what both copies give, when the book's alone does not do; broken is
// why the book cannot be read.
func judged(stream string, c copies, broken error) (r Reading, err error) {
	lines, gaps, fault := c.text.Verified(stream)
	absent := new(NoStreamError)
	switch {
	case len(c.book) == 0 && errors.As(fault, &absent):
		if broken == nil {
			broken = fault
		}
		return r, broken
	case len(c.book) == 0: // the twin alone
		r.file = twin.TextFile("", stream)
		r.Fault = broken
		if fault == nil {
			r.Lines, r.Gaps = lines, gaps
			return r, nil
		}
	default:
		_, r.Fault = c.whole(stream)
	}
	u := c.join(stream)
	r.Lines, r.Gaps = u.Lines(), u.Gaps
	if r.Fault == nil {
		r.Fault = fault
	}
	if len(r.Lines) == 0 {
		return r, r.Fault
	}
	return r, nil
}

// lines gives those of a stream.
func (s store) lines(stream string) ([][]byte, error) {
	r, err := s.read(stream)
	return r.Lines, err
}

// unreadable tells whether the book that all streams were in cannot be read.
func (s store) unreadable() bool { return s.book == nil || s.book.Broken() }

// records copies the records that the books have.
func (s store) records() (all map[string]boltfile.Record, err error) {
	all = map[string]boltfile.Record{}
	small := s.writing()
	if s.book != nil && !(s.unreadable() && small != s.book) {
		all, err = s.book.Records()
	}
	if err != nil || small == s.book {
		return all, err
	}
	newer, err := small.Records()
	maps.Copy(all, newer)
	return all, err
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// streams lists the streams that hold entries, in book or twins.
func (s store) streams() ([]string, error) {
	recs, err := s.records()
	sizes, unlisted := twin.Sizes(s.folder)
	if s.book == nil {
		err = unlisted // else what cannot be listed is in the book
	}
	names := slices.AppendSeq(sortedKeys(recs), maps.Keys(sizes))
	slices.Sort(names)
	return slices.Compact(names), err
}

// said is what is said of a stream with which something was found to be wrong.
func (r Reading) said(stream string) string {
	return words.OfStream(stream, words.ReadOtherwise(r.Fault))
}
