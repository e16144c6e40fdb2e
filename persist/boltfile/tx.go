package boltfile

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/words"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Schema is the version of the layout of the buckets below.
const Schema = 1

// The buckets of a book, and the keys of meta.
var (
	bucketMeta    = []byte("meta")
	bucketStreams = []byte("streams") // stream -> sequence, 8 bytes big-endian -> line
	bucketSummary = []byte("summary") // stream -> record
	bucketAside   = []byte("aside")   // streams that gave way to their twins, under a numbered name
	keySchema     = []byte("schema")
	keyUID        = []byte("uid")
	keyCreated    = []byte("created")
	keyLast       = []byte("last") // the smelt written last
)

// fill is how full a page is packed. Sequences only grow, so that a page is
// never opened again once it is full.
const fill = 0.9

// Tx is one transaction. What it gives is copied.
type Tx struct{ tx *bolt.Tx }

func seqKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

// top gives a top-level bucket, or an error where the file has none: then it is
// some other program's.
func (tx Tx) top(name []byte) (*bolt.Bucket, error) {
	if b := tx.tx.Bucket(name); b != nil {
		return b, nil
	}
	return nil, errors.New(words.NoBucket(name))
}

// stream gives a stream's bucket; nil for an unknown one.
func (tx Tx) stream(name string) (*bolt.Bucket, error) {
	streams, err := tx.top(bucketStreams)
	if err != nil {
		return nil, err
	}
	return streams.Bucket([]byte(name)), nil
}

// Has tells whether the book has a stream.
func (tx Tx) Has(stream string) (bool, error) {
	b, err := tx.stream(stream)
	return b != nil, err
}

// Streams lists those that have a bucket.
func (tx Tx) Streams() (names []string, err error) {
	streams, err := tx.top(bucketStreams)
	if err != nil {
		return nil, err
	}
	err = streams.ForEachBucket(func(k []byte) error { names = append(names, string(k)); return nil })
	return names, err
}

// Lines gives the lines of a stream; nil for an unknown one. A *twin.LineError
// names the first that is missing.
func (tx Tx) Lines(stream string) ([][]byte, error) {
	b, err := tx.stream(stream)
	if b == nil || err != nil {
		return nil, err
	}
	var lines [][]byte
	c := b.Cursor()
	for k, v := c.First(); k != nil; k, v = c.Next() {
		if want := uint64(len(lines) + 1); len(k) != 8 || binary.BigEndian.Uint64(k) != want {
			return lines, &twin.LineError{Stream: stream, Seq: want, What: words.LineMissing}
		}
		lines = append(lines, append([]byte(nil), v...))
	}
	return lines, nil
}

// EachLine gives the lines of a stream to f, also those beyond a missing one.
func (tx Tx) EachLine(stream string, f func(line []byte)) error {
	b, err := tx.stream(stream)
	if b == nil || err != nil {
		return err
	}
	return b.ForEach(func(_, line []byte) error { f(bytes.Clone(line)); return nil })
}

// Record reads a stream's record; the zero record for an unknown stream.
func (tx Tx) Record(stream string) (r Record, err error) {
	b, err := tx.top(bucketSummary)
	if err != nil {
		return r, err
	}
	if v := b.Get([]byte(stream)); v != nil {
		err = json.Unmarshal(v, &r)
	}
	return r, err
}

// Records reads the records of all streams.
func (tx Tx) Records() (map[string]Record, error) {
	b, err := tx.top(bucketSummary)
	if err != nil {
		return nil, err
	}
	all := map[string]Record{}
	err = b.ForEach(func(k, v []byte) error {
		var r Record
		if err := json.Unmarshal(v, &r); err != nil {
			return fmt.Errorf("record of %s: %w", k, err)
		}
		all[string(k)] = r
		return nil
	})
	return all, err
}

// Check is bbolt's own check of the pages; f is given each thing that is wrong.
func (tx Tx) Check(f func(error)) {
	for err := range tx.tx.Check() {
		f(err)
	}
}

// PutRecord writes a stream's record.
func (tx Tx) PutRecord(stream string, r Record) error {
	b, err := tx.top(bucketSummary)
	if err != nil {
		return err
	}
	v, err := json.Marshal(r)
	if err != nil {
		return err
	}
	return b.Put([]byte(stream), v)
}

// PutLines appends lines to a stream, the first of them as sequence first, and
// writes its record.
func (tx Tx) PutLines(stream string, first uint64, lines [][]byte, r Record) error {
	streams, err := tx.top(bucketStreams)
	if err != nil {
		return err
	}
	b, err := streams.CreateBucketIfNotExists([]byte(stream))
	if err != nil {
		return err
	}
	b.FillPercent = fill
	for i, line := range lines {
		if err := b.Put(seqKey(first+uint64(i)), line); err != nil {
			return err
		}
	}
	return tx.PutRecord(stream, r)
}

// SetAside moves what the book has of a stream to a bucket of its own.
func (tx Tx) SetAside(stream string) error {
	b, err := tx.stream(stream)
	if err != nil {
		return err
	}
	aside, err := tx.tx.CreateBucketIfNotExists(bucketAside)
	if err != nil {
		return err
	}
	old, err := freeBucket(aside, stream)
	if err != nil {
		return err
	}
	c := b.Cursor()
	for k, v := c.First(); k != nil; k, v = c.Next() {
		if err := old.Put(bytes.Clone(k), bytes.Clone(v)); err != nil {
			return err
		}
	}
	return tx.tx.Bucket(bucketStreams).DeleteBucket([]byte(stream))
}

// freeBucket makes a bucket for what is set aside of a stream.
func freeBucket(aside *bolt.Bucket, stream string) (*bolt.Bucket, error) {
	for i := 1; ; i++ {
		name := []byte(stream + disk.AsideExt + strconv.Itoa(i))
		if aside.Bucket(name) == nil {
			return aside.CreateBucket(name)
		}
	}
}

// Meta is what the book says of itself.
type Meta struct {
	Schema int
	UID    string
	Last   string // the smelt written last
}

// PutMeta notes UID and Last, where they are given.
func (tx Tx) PutMeta(m Meta) error {
	b, err := tx.top(bucketMeta)
	if err == nil && m.UID != "" {
		err = b.Put(keyUID, []byte(m.UID))
	}
	if err == nil && m.Last != "" {
		err = b.Put(keyLast, []byte(m.Last))
	}
	return err
}

// meta reads what the book says of itself, and sees that its buckets are there.
func (tx Tx) meta() (m Meta, err error) {
	b := tx.tx.Bucket(bucketMeta)
	if b == nil {
		return m, errors.New(words.NoSchema)
	}
	m.Schema, err = strconv.Atoi(string(b.Get(keySchema)))
	if err != nil || m.Schema < 1 {
		return m, errors.New(words.BadSchema(b.Get(keySchema)))
	}
	m.UID, m.Last = string(b.Get(keyUID)), string(b.Get(keyLast))
	if m.Schema > Schema {
		return m, nil
	}
	if _, err = tx.top(bucketStreams); err == nil {
		_, err = tx.top(bucketSummary)
	}
	return m, err
}
