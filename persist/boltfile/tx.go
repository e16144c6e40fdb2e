package boltfile

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
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
	bucketComing  = []byte("coming")  // as streams, of an import that is not whole
	keySchema     = []byte("schema")
	keyUID        = []byte("uid")
	keyCreated    = []byte("created")
	keyLast       = []byte("last") // the smelt written last
	keySum        = []byte("sum")  // of schema and uid; books of before have none
)

// fill is how full a page is packed. Sequences only grow, so that a page is
// never opened again once it is full.
const fill = 0.9

// Tx is one transaction. What it gives is copied.
type Tx struct{ tx *bolt.Tx }

// top gives a top-level bucket, or an error where the file has none: then it is
// some other program's.
func (tx Tx) top(name []byte) (*bolt.Bucket, error) {
	if b := tx.tx.Bucket(name); b != nil {
		return b, nil
	}
	return nil, errors.New(words.NoBucket(name))
}

// within gives the bucket of a stream in a top-level one; nil for an unknown stream.
func (tx Tx) within(top []byte, stream string) (*bolt.Bucket, error) {
	b, err := tx.top(top)
	if err != nil {
		return nil, err
	}
	return b.Bucket([]byte(stream)), nil
}

// Record reads a stream's record; the zero record for an unknown stream, and for
// one that was changed: it can be made anew.
func (tx Tx) Record(stream string) (r Record, err error) {
	b, err := tx.top(bucketSummary)
	if err == nil {
		r, _ = ReadRecord(b.Get([]byte(stream)))
	}
	return r, err
}

// PutRecord writes a stream's record.
func (tx Tx) PutRecord(stream string, r Record) error {
	b, err := tx.top(bucketSummary)
	if err != nil {
		return err
	}
	v, err := r.Marshal()
	if err != nil {
		return err
	}
	return b.Put([]byte(stream), v)
}

// PutLines appends lines to a stream and writes its record.
func (tx Tx) PutLines(stream string, lines [][]byte, r Record) error {
	streams, err := tx.top(bucketStreams)
	if err != nil {
		return err
	}
	return cmp.Or(put(streams, stream, lines), tx.PutRecord(stream, r))
}

// put puts lines under their sequences.
func put(in *bolt.Bucket, stream string, lines [][]byte) error {
	b, err := in.CreateBucketIfNotExists([]byte(stream))
	if err != nil {
		return err
	}
	b.FillPercent = fill
	for _, line := range lines {
		l, _ := twin.LinkOf(line)
		if err := b.Put(binary.BigEndian.AppendUint64(nil, l.Seq), line); err != nil {
			return err
		}
	}
	return nil
}

// PutComing adds lines to what is to be a stream once it is whole. first says that
// they begin it: what an earlier one left there, that was killed or failed, is dropped.
func (tx Tx) PutComing(stream string, lines [][]byte, first bool) error {
	if first && tx.tx.Bucket(bucketComing) != nil {
		if err := tx.tx.DeleteBucket(bucketComing); err != nil {
			return err
		}
	}
	coming, err := tx.tx.CreateBucketIfNotExists(bucketComing)
	if err != nil {
		return err
	}
	return put(coming, stream, lines)
}

// TakeIn makes what PutComing brought a stream, with its record, in the place of
// one that holds nothing.
func (tx Tx) TakeIn(stream string, r Record) error {
	coming, err := tx.top(bucketComing)
	if err != nil {
		return err
	}
	streams, err := tx.top(bucketStreams)
	if err == nil && streams.Bucket([]byte(stream)) != nil {
		err = streams.DeleteBucket([]byte(stream))
	}
	if err == nil {
		err = coming.MoveBucket([]byte(stream), streams)
	}
	return cmp.Or(err, tx.tx.DeleteBucket(bucketComing), tx.PutRecord(stream, r))
}

// Replace puts lines in the place of all that a stream has.
func (tx Tx) Replace(stream string, lines [][]byte, r Record) error {
	streams, err := tx.top(bucketStreams)
	if err == nil && streams.Bucket([]byte(stream)) != nil {
		err = streams.DeleteBucket([]byte(stream))
	}
	return cmp.Or(err, tx.PutLines(stream, lines, r))
}

// Meta is what the book says of itself.
type Meta struct {
	Schema int
	UID    string
	Last   string // the smelt written last
}

// metaSum is what stands for the sum of schema and uid.
func metaSum(schema, uid []byte) []byte {
	return fmt.Appendf(nil, "%08x", crc32.ChecksumIEEE(bytes.Join([][]byte{schema, uid}, []byte(" "))))
}

// PutMeta notes UID and Last, where they are given.
func (tx Tx) PutMeta(m Meta) error {
	b, err := tx.top(bucketMeta)
	if err == nil && m.UID != "" {
		err = cmp.Or(b.Put(keyUID, []byte(m.UID)), b.Put(keySum, metaSum(b.Get(keySchema), []byte(m.UID))))
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
	if sum := b.Get(keySum); sum != nil && !bytes.Equal(sum, metaSum(b.Get(keySchema), b.Get(keyUID))) {
		return m, errors.New(words.BadSum)
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

// Newer is the error for a book that a newer version made.
func (m Meta) Newer(path string) error {
	return &disk.FileError{Path: path, What: words.FileNewer(m.Schema, Schema), Do: words.FileNewerDo, Kind: disk.ErrNewer}
}
