package persist

import (
	"bytes"
	"maps"
	"slices"
	"strconv"
	"sync/atomic"

	bolt "go.etcd.io/bbolt"
)

// store is an open book and the folder of its twins: the two places of every
// line.
type store struct {
	path, folder string
	vault        *safeVault
	over         *atomic.Pointer[safeVault] // the small book that took over, if one did; nil where nothing is written
	openTwin     func(path string) (file, error)
}

// writing is the book that is written to.
func (s store) writing() *safeVault {
	if s.over != nil {
		if small := s.over.Load(); small != nil {
			return small
		}
	}
	return s.vault
}

// at is the book in which a stream stands.
func (s store) at(stream string) *safeVault {
	small := s.writing()
	if small == s.vault {
		return s.vault
	}
	here := false
	err := small.View(func(tx *bolt.Tx) error {
		streams, err := top(tx, bucketStreams)
		here = err == nil && streams.Bucket([]byte(stream)) != nil
		return err
	})
	if err == nil && !here && !s.unreadable() {
		return s.vault
	}
	return small
}

// recordOf is the record of a stream that holds exactly the lines.
func recordOf(lines [][]byte) record {
	r := record{Length: uint64(len(lines)), Bytes: byteCount(lines), Head: headOf(lines)}
	r.UID, r.Source = identity(lines)
	return r
}

// putTail adds the lines beyond the first n to a stream of the book.
func (s store) putTail(stream string, n int, lines [][]byte) error {
	return s.writing().Update(func(tx *bolt.Tx) error {
		return putLines(tx, stream, uint64(n+1), lines[n:], recordOf(lines))
	})
}

// replaceStream sets what the book has of a stream aside, in the book, and puts
// the lines in its place.
func (s store) replaceStream(stream string, lines [][]byte) error {
	return s.writing().Update(func(tx *bolt.Tx) error {
		streams, err := top(tx, bucketStreams)
		if err != nil {
			return err
		}
		aside, err := tx.CreateBucketIfNotExists(bucketAside)
		if err != nil {
			return err
		}
		old, err := freeBucket(aside, stream)
		if err != nil {
			return err
		}
		c := streams.Bucket([]byte(stream)).Cursor()
		for k, v := c.First(); k != nil; k, v = c.Next() {
			if err := old.Put(bytes.Clone(k), bytes.Clone(v)); err != nil {
				return err
			}
		}
		if err := streams.DeleteBucket([]byte(stream)); err != nil {
			return err
		}
		return putLines(tx, stream, 1, lines, recordOf(lines))
	})
}

// freeBucket makes a bucket for what is set aside of a stream.
func freeBucket(aside *bolt.Bucket, stream string) (*bolt.Bucket, error) {
	for i := 1; ; i++ {
		name := []byte(stream + asideExt + strconv.Itoa(i))
		if aside.Bucket(name) == nil {
			return aside.CreateBucket(name)
		}
	}
}

// lines copies the lines of a stream out of the book, or out of its twin where
// the book cannot be read any more.
func (s store) lines(stream string) (lines [][]byte, err error) {
	at := s.at(stream)
	if err = at.follow(stream); err == nil {
		err = at.View(func(tx *bolt.Tx) error {
			lines, err = linesIn(tx, stream)
			return err
		})
	}
	if len(lines) == 0 && s.unreadable() {
		return twinLines(s.folder, stream)
	}
	if err == nil && len(lines) == 0 {
		err = &NoStreamError{Stream: stream}
	}
	return lines, err
}

// unreadable tells whether the book that all streams were in cannot be read.
func (s store) unreadable() bool { return s.vault.broken.Load() }

// records copies the records of all streams.
func (s store) records() (all map[string]record, err error) {
	err = s.vault.View(func(tx *bolt.Tx) error {
		all, err = recordsIn(tx)
		return err
	})
	small := s.writing()
	if s.unreadable() && small != s.vault {
		all, err = twinRecords(s.folder)
	}
	if err != nil || small == s.vault {
		return all, err
	}
	err = small.View(func(tx *bolt.Tx) error {
		newer, err := recordsIn(tx)
		maps.Copy(all, newer)
		return err
	})
	return all, err
}

// twinRecords makes the records of all streams from their twins.
func twinRecords(folder string) (map[string]record, error) {
	sizes, err := twinSizes(folder)
	all := map[string]record{}
	for name := range sizes {
		if lines, _ := twinLines(folder, name); len(lines) > 0 { // of a bad twin what stands before the bad line
			all[name] = recordOf(lines)
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
