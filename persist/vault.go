package persist

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"time"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"
)

// schema is the version of the layout of the buckets below.
const schema = 1

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

// vault is what this package asks of an open bbolt file. Tests put faults in
// between.
type vault interface {
	Update(func(*bolt.Tx) error) error
	View(func(*bolt.Tx) error) error
	Pages() *pageWalk
	There() error // a *GoneError when the path leads to it no longer
	Close() error
	Abandon() error // let go of the file and its lock without closing properly
}

// boltVault is an open bbolt file.
type boltVault struct {
	*bolt.DB
	file  *os.File
	pages *pageWalk
	place watched
}

// Pages is the walk through its pages.
func (v boltVault) Pages() *pageWalk { return v.pages }

// There follows the path.
func (v boltVault) There() error { return v.place.there() }

func (v boltVault) Abandon() error { return abandon(v.file) }

// record is what the summary bucket holds of a stream.
type record struct {
	Length  uint64          `json:"length"` // entries
	Bytes   int64           `json:"bytes"`  // of its lines in the twin
	Head    string          `json:"head"`   // hash of the last line
	UID     string          `json:"uid,omitempty"`
	Source  string          `json:"source_hash,omitempty"`
	Rule    int             `json:"rule,omitempty"`    // what made the summary
	Summary json.RawMessage `json:"summary,omitempty"` // left out when entries came since
}

// fresh tells whether the record's summary stands for all of its entries.
func (r record) fresh() bool { return r.Rule == summaryRule && len(r.Summary) > 0 }

// openVault opens the bbolt file. A file that is held, damaged or closed to us
// is a typed error, and is not touched.
func openVault(path string, readOnly bool, wait time.Duration, openFile openFunc) (vault, error) {
	if err := preflight(path); err != nil {
		return nil, err
	}
	var file *os.File // kept, to let go of its lock when bbolt panics on a bad page
	opt := &bolt.Options{ReadOnly: readOnly, Timeout: wait, NoStatistics: true,
		OpenFile: func(name string, flag int, mode os.FileMode) (f *os.File, err error) {
			f, err = openFile(name, flag&^os.O_CREATE, mode)
			file = f
			return f, err
		}}
	var db *bolt.DB
	err := guarded(path, func() (err error) {
		db, err = bolt.Open(path, 0o600, opt)
		return err
	})
	switch {
	case err == nil:
		v := boltVault{DB: db, file: file, place: watch(file)}
		if v.pages, err = walkAtOpening(file); err != nil { // only now: with the lock, nobody changes it
			return nil, both(err, v.Close())
		}
		return v, nil
	case errors.Is(err, bolterrors.ErrTimeout):
		return nil, &HeldError{Path: path}
	case errors.Is(err, errFault):
		if file != nil {
			_ = abandon(file) // the bad page is what to tell
		}
		var bad *FileError
		errors.As(err, &bad)
		return nil, bad
	case errors.Is(err, bolterrors.ErrInvalid), errors.Is(err, bolterrors.ErrChecksum), errors.Is(err, bolterrors.ErrVersionMismatch):
		return nil, damaged(path, "is damaged ("+err.Error()+")")
	default:
		return nil, accessError(path, err)
	}
}

type openFunc func(name string, flag int, mode os.FileMode) (*os.File, error)

// isShortWrite tells whether a failed commit left the book as it was, so that
// it may be tried again: the file could not be grown or written. After any
// other failure it is not known what the disk holds.
func isShortWrite(err error) bool {
	var path *fs.PathError
	return errors.As(err, &path) && path.Op == "write" ||
		errors.Is(err, bolterrors.ErrMaxSizeReached) ||
		strings.HasPrefix(err.Error(), "file resize error") // bbolt wraps the cause of this one in words only
}

func seqKey(seq uint64) []byte { return binary.BigEndian.AppendUint64(nil, seq) }

// top gives a top-level bucket, or an error where the file has none: then it is
// some other program's.
func top(tx *bolt.Tx, name []byte) (*bolt.Bucket, error) {
	if b := tx.Bucket(name); b != nil {
		return b, nil
	}
	return nil, fmt.Errorf("bucket %q is missing", name)
}

// linesIn copies the lines of a stream; nil for an unknown stream.
func linesIn(tx *bolt.Tx, stream string) ([][]byte, error) {
	streams, err := top(tx, bucketStreams)
	if err != nil {
		return nil, err
	}
	b := streams.Bucket([]byte(stream))
	if b == nil {
		return nil, nil
	}
	var lines [][]byte
	c := b.Cursor()
	for k, v := c.First(); k != nil; k, v = c.Next() {
		if want := uint64(len(lines) + 1); len(k) != 8 || binary.BigEndian.Uint64(k) != want {
			return lines, &LineError{Stream: stream, Seq: want, What: "the entry is missing from the book"}
		}
		lines = append(lines, append([]byte(nil), v...))
	}
	return lines, nil
}

// recordIn reads a stream's record; the zero record for an unknown stream.
func recordIn(tx *bolt.Tx, stream string) (r record, err error) {
	b, err := top(tx, bucketSummary)
	if err != nil {
		return r, err
	}
	if v := b.Get([]byte(stream)); v != nil {
		err = json.Unmarshal(v, &r)
	}
	return r, err
}

// recordsIn reads the records of all streams.
func recordsIn(tx *bolt.Tx) (map[string]record, error) {
	b, err := top(tx, bucketSummary)
	if err != nil {
		return nil, err
	}
	all := map[string]record{}
	err = b.ForEach(func(k, v []byte) error {
		var r record
		if err := json.Unmarshal(v, &r); err != nil {
			return fmt.Errorf("record of %s: %w", k, err)
		}
		all[string(k)] = r
		return nil
	})
	return all, err
}

// putRecord writes a stream's record.
func putRecord(tx *bolt.Tx, stream string, r record) error {
	b, err := top(tx, bucketSummary)
	if err != nil {
		return err
	}
	v, err := json.Marshal(r)
	if err != nil {
		return err
	}
	return b.Put([]byte(stream), v)
}

// putLines appends lines to a stream, the first of them as sequence first, and
// writes its record.
func putLines(tx *bolt.Tx, stream string, first uint64, lines [][]byte, r record) error {
	streams, err := top(tx, bucketStreams)
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
	return putRecord(tx, stream, r)
}
