package boltfile

import (
	"cmp"
	"encoding/binary"
	"encoding/json"
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
	bucketSummary = []byte("summary") // stream -> record, sealed
	bucketComing  = []byte("coming")  // as streams, of an import that is not whole
	keySchema     = []byte("schema")
	keyUID        = []byte("uid")
	keyCreated    = []byte("created")
	keySum        = []byte("sum") // of schema and uid; books of before have none
)

// fill is how full a page is packed. Sequences only grow, so that a page is
// never opened again once it is full.
const fill = 0.9

// Tx is one transaction that writes.
type Tx struct{ tx *bolt.Tx }

// top gives a top-level bucket, or an error where the file has none: then it is
// some other program's.
func (tx Tx) top(name []byte) (*bolt.Bucket, error) {
	if b := tx.tx.Bucket(name); b != nil {
		return b, nil
	}
	return nil, errors.New(words.NoBucket(name))
}

// putRecord writes a stream's record: sealed, since nothing else tells whether it was
// changed.
func (tx Tx) putRecord(stream string, r Record) error {
	b, err := tx.top(bucketSummary)
	if err != nil {
		return err
	}
	v, err := json.Marshal(r)
	if err != nil {
		return err
	}
	return b.Put([]byte(stream), twin.Sealed(v))
}

// PutLines appends lines to a stream and writes its record.
func (tx Tx) PutLines(stream string, lines [][]byte, r Record) error {
	streams, err := tx.top(bucketStreams)
	if err != nil {
		return err
	}
	return cmp.Or(put(streams, stream, lines), tx.putRecord(stream, r))
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
	return cmp.Or(err, tx.tx.DeleteBucket(bucketComing), tx.putRecord(stream, r))
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
}

// metaSum is what stands for the sum of schema and uid.
func metaSum(schema, uid string) string {
	return fmt.Sprintf("%08x", crc32.ChecksumIEEE([]byte(schema+" "+uid)))
}

// metaOf reads it from what stands in the bucket, and sees that the others are there.
func metaOf(said map[string]string) (m Meta, err error) {
	schema, ok := said[string(keySchema)]
	if !ok {
		return m, errors.New(words.NoSchema)
	}
	m.UID = said[string(keyUID)]
	if sum, ok := said[string(keySum)]; ok && sum != metaSum(schema, m.UID) {
		return m, errors.New(words.BadSum)
	}
	if m.Schema, err = strconv.Atoi(schema); err != nil || m.Schema < 1 {
		return m, errors.New(words.BadSchema(schema))
	}
	for _, name := range [][]byte{bucketStreams, bucketSummary} {
		if _, ok := said[string(name)]; !ok && m.Schema <= Schema {
			return m, errors.New(words.NoBucket(name))
		}
	}
	return m, nil
}

// Newer is the error for a book that a newer version made.
func (m Meta) Newer(path string) error {
	return &disk.FileError{Path: path, What: words.FileNewer(m.Schema, Schema), Do: words.FileNewerDo, Kind: disk.ErrNewer}
}
