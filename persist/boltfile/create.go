package boltfile

import (
	"cmp"
	"crypto/rand"
	"encoding/hex"
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/disk"
)

// New makes an empty book for what is to be called path, under another name and open,
// so that a book is whole or not there. uid is the book's, empty for a new one.
func New(path, uid string, now time.Time, opt Options) (f *File, err error) {
	if err := disk.MakeFolder(filepath.Dir(path)); err != nil {
		return nil, err
	}
	made, err := disk.Unfinished(path)
	if err != nil {
		return nil, err
	}
	err = made.Close()
	if err == nil {
		var db *bolt.DB
		if db, err = bolt.Open(made.Name(), 0o600, &bolt.Options{Timeout: time.Second}); err == nil {
			err = db.Update(func(tx *bolt.Tx) error { return firstBuckets(tx, now, uid) })
			err = cmp.Or(err, db.Close())
		}
	}
	if err == nil {
		f, err = Open(made.Name(), opt)
	}
	if err != nil {
		_ = os.Remove(made.Name())
	}
	return f, err
}

func firstBuckets(tx *bolt.Tx, now time.Time, uid string) error {
	for _, name := range [][]byte{bucketMeta, bucketStreams, bucketSummary} {
		if _, err := tx.CreateBucketIfNotExists(name); err != nil {
			return err
		}
	}
	if uid == "" {
		var random [8]byte
		rand.Read(random[:]) // never fails (crypto/rand)
		uid = hex.EncodeToString(random[:])
	}
	m, form := tx.Bucket(bucketMeta), strconv.Itoa(Schema)
	return cmp.Or(
		m.Put(keySchema, []byte(form)), m.Put(keyUID, []byte(uid)), m.Put(keySum, []byte(metaSum(form, uid))),
		m.Put(keyCreated, []byte(entry.Wall(now).Format(time.RFC3339Nano))))
}

// Place gives a book that was made under another name its own, unless another program
// has made one meanwhile, which stays, and closes it.
func (f *File) Place(path string) error {
	defer f.Discard()
	switch err := os.Link(f.Path, path); {
	case errors.Is(err, os.ErrExist):
		return nil
	case err != nil: // a file system without hard links
		if err := os.Rename(f.Path, path); err != nil {
			return err
		}
	}
	return disk.FlushFolder(filepath.Dir(path))
}

// Replace gives a book that was made under another name that of a book, and goes on
// with it. What stands there is set aside first, so that at every moment there is one.
func (f *File) Replace(path string) (aside string, err error) {
	there, err := disk.IsThere(path)
	if there {
		if aside, err = disk.FreeName(path); err == nil && os.Link(path, aside) != nil { // a file system without hard links
			err = os.Rename(path, aside)
		}
	}
	if err == nil {
		err = os.Rename(f.Path, path)
	}
	if err != nil {
		return aside, err
	}
	f.Path, f.place = path, disk.Watch(f.file, path)
	return aside, disk.FlushFolder(filepath.Dir(path))
}

// Discard closes and removes a book that was made under another name.
func (f *File) Discard() {
	_ = f.Close() // nothing was called kept for its sake
	_ = os.Remove(f.Path)
}
