package persist

import (
	"cmp"
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
)

// Open opens the book that a path means for writing, or makes it. A book of a
// newer version opens for reading only (see Book.ReadOnly). Errors are
// *HeldError, *FileError, or the system's own with the path in it.
func Open(path string, opt Options) (*Book, error) {
	opt = opt.filled()
	file := BookFile(path)
	merged, err := merge(file, opt)
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(file); errors.Is(err, os.ErrNotExist) {
		if err := create(file, opt.Clock().Wall); err != nil {
			return nil, accessError(file, err)
		}
	}
	v, err := openVault(file, false, opt.LockWait, opt.openBook)
	if err != nil {
		return nil, err
	}
	meta, err := readMetaBucket(file, v)
	if err == nil && meta.schema > schema {
		v.Close()
		if v, err = openVault(file, true, opt.LockWait, opt.openBook); err == nil {
			return readOnlyBook(file, v, meta, opt), nil
		}
		return nil, err
	}
	if err != nil {
		v.Close()
		return nil, err
	}
	b := newBook(file, v, meta, opt)
	b.mended = merged
	if err := makeFolder(b.store.folder); err != nil {
		b.store.vault.Close()
		return nil, accessError(b.store.folder, err)
	}
	stale, err := b.compareAtOpening(meta.last)
	if err != nil {
		b.store.vault.Close()
		return nil, err
	}
	b.start(stale)
	return b, nil
}

// create makes an empty book under another name, flushes it, and only then
// gives it its own, so that a book is whole or not there. A book that another
// program has made meanwhile stays.
func create(file string, now time.Time) error {
	folder := filepath.Dir(file)
	if err := makeFolder(folder); err != nil {
		return err
	}
	made := file + unfinishedExt + strconv.Itoa(os.Getpid())
	defer os.Remove(made)
	db, err := bolt.Open(made, 0o600, &bolt.Options{Timeout: time.Second})
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bolt.Tx) error { return firstBuckets(tx, now) })
	if cerr := db.Close(); err == nil {
		err = cerr
	}
	if err != nil {
		return err
	}
	switch err := os.Link(made, file); {
	case errors.Is(err, os.ErrExist):
		return nil
	case err != nil: // a file system without hard links
		if err := os.Rename(made, file); err != nil {
			return err
		}
	}
	return flushFolder(folder)
}

func firstBuckets(tx *bolt.Tx, now time.Time) error {
	for _, name := range [][]byte{bucketMeta, bucketStreams, bucketSummary} {
		if _, err := tx.CreateBucketIfNotExists(name); err != nil {
			return err
		}
	}
	var uid [8]byte
	rand.Read(uid[:]) // never fails (crypto/rand)
	m := tx.Bucket(bucketMeta)
	return cmp.Or(
		m.Put(keySchema, []byte(strconv.Itoa(schema))),
		m.Put(keyUID, []byte(hex.EncodeToString(uid[:]))),
		m.Put(keyCreated, []byte(entry.Wall(now).Format(time.RFC3339Nano))))
}

// metaBucket is what the book says of itself.
type metaBucket struct {
	schema    int
	uid, last string
}

func readMetaBucket(path string, v vault) (m metaBucket, err error) {
	err = guarded(path, func() error {
		return v.View(func(tx *bolt.Tx) error {
			b := tx.Bucket(bucketMeta)
			if b == nil {
				return errors.New("there is no schema in it")
			}
			m.schema, err = strconv.Atoi(string(b.Get(keySchema)))
			if err != nil || m.schema < 1 {
				return fmt.Errorf("its schema is %q", b.Get(keySchema))
			}
			m.uid, m.last = string(b.Get(keyUID)), string(b.Get(keyLast))
			if m.schema > schema {
				return nil
			}
			if _, err := top(tx, bucketStreams); err != nil {
				return err
			}
			_, err = top(tx, bucketSummary)
			return err
		})
	})
	var bad *FileError
	switch {
	case errors.As(err, &bad):
		return m, bad
	case err != nil:
		return m, damaged(path, "is not a book of this program ("+err.Error()+")")
	}
	return m, nil
}

// compareAtOpening compares the length of every twin with what the book says of
// it, and line by line those that differ, those asked for, and the smelt
// written last. It gives the streams whose summary is to be made anew.
func (b *Book) compareAtOpening(last string) (stale []string, err error) {
	recs, err := b.store.records()
	if err != nil {
		return nil, damaged(b.store.path, "is damaged ("+err.Error()+")")
	}
	sizes, err := twinSizes(b.store.folder)
	if err != nil {
		return nil, accessError(b.store.folder, err)
	}
	asked := map[string]bool{last: true}
	if b.opt.Compare != nil {
		clear(asked)
		for _, s := range b.opt.Compare {
			asked[s] = true
		}
	}
	all := map[string]bool{}
	for s := range recs {
		all[s] = true
	}
	for s := range sizes {
		all[s] = true
	}
	for _, stream := range sortedKeys(all) {
		rec := recs[stream]
		if !rec.fresh() && stream != entry.House {
			stale = append(stale, stream)
		}
		if sizes[stream].bytes == rec.Bytes && !asked[stream] {
			continue
		}
		t, _, _, said, err := reconcile(b.store, stream)
		if err != nil {
			// The stream can be looked at as it is; keeping in it tries again.
			b.noteMended(append(said, fmt.Sprintf("%s: book and twin could not be compared: %v", stream, err)))
			continue
		}
		b.noteMended(said)
		t.close()
		if len(said) > 0 && rec.fresh() && stream != entry.House {
			stale = append(stale, stream)
		}
	}
	return stale, nil
}
