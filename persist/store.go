package persist

import (
	"maps"
	"slices"
	"sync/atomic"

	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// store is an open book and the folder of its twins: the two places of every
// line.
type store struct {
	path, folder string
	book         *boltfile.File
	over         *atomic.Pointer[boltfile.File] // the small book that took over, if one did; nil where nothing is written
	openTwin     func(path string) (twin.File, error)
}

// writing is the book that is written to.
func (s store) writing() *boltfile.File {
	if s.over != nil {
		if small := s.over.Load(); small != nil {
			return small
		}
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

// putTail adds the lines beyond the first n to a stream of the book.
func (s store) putTail(stream string, n int, lines [][]byte) error {
	return s.writing().Update(func(tx boltfile.Tx) error {
		return tx.PutLines(stream, uint64(n+1), lines[n:], boltfile.RecordOf(lines))
	})
}

// replaceStream sets what the book has of a stream aside, in the book, and puts
// the lines in its place.
func (s store) replaceStream(stream string, lines [][]byte) error {
	return s.writing().Update(func(tx boltfile.Tx) error {
		if err := tx.SetAside(stream); err != nil {
			return err
		}
		return tx.PutLines(stream, 1, lines, boltfile.RecordOf(lines))
	})
}

// lines copies the lines of a stream out of the book, or out of its twin where
// the book cannot be read any more.
func (s store) lines(stream string) ([][]byte, error) {
	lines, err := s.at(stream).Lines(stream)
	if len(lines) == 0 && s.unreadable() {
		return twin.Lines(s.folder, stream)
	}
	if err == nil && len(lines) == 0 {
		err = &NoStreamError{Stream: stream}
	}
	return lines, err
}

// unreadable tells whether the book that all streams were in cannot be read.
func (s store) unreadable() bool { return s.book.Broken() }

// records copies the records of all streams.
func (s store) records() (all map[string]boltfile.Record, err error) {
	all, err = s.book.Records()
	small := s.writing()
	if s.unreadable() && small != s.book {
		all, err = twinRecords(s.folder)
	}
	if err != nil || small == s.book {
		return all, err
	}
	newer, err := small.Records()
	maps.Copy(all, newer)
	return all, err
}

// twinRecords makes the records of all streams from their twins.
func twinRecords(folder string) (map[string]boltfile.Record, error) {
	sizes, err := twin.Sizes(folder)
	all := map[string]boltfile.Record{}
	for name := range sizes {
		if lines, _ := twin.Lines(folder, name); len(lines) > 0 { // of a bad twin what stands before the bad line
			all[name] = boltfile.RecordOf(lines)
		}
	}
	return all, err
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// streams lists the streams that hold entries.
func (s store) streams() ([]string, error) {
	recs, err := s.records()
	return sortedKeys(recs), err
}
