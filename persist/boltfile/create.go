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

// Create makes an empty book under another name, flushes it, and only then
// gives it its own, so that a book is whole or not there. A book that another
// program has made meanwhile stays. uid is the book's, empty for a new one.
func Create(file string, now time.Time, uid string) error {
	folder := filepath.Dir(file)
	if err := disk.MakeFolder(folder); err != nil {
		return err
	}
	made, err := CreateUnnamed(file, now, uid)
	if made != "" {
		defer os.Remove(made)
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
	return disk.FlushFolder(folder)
}

// CreateUnnamed makes an empty book that has not got its own name yet, and gives the
// one that it has; also with an error, where it was begun.
func CreateUnnamed(file string, now time.Time, uid string) (made string, err error) {
	f, err := disk.Unfinished(file)
	if err != nil {
		return "", err
	}
	if err := f.Close(); err != nil {
		return f.Name(), err
	}
	db, err := bolt.Open(f.Name(), 0o600, &bolt.Options{Timeout: time.Second})
	if err != nil {
		return f.Name(), err
	}
	err = db.Update(func(tx *bolt.Tx) error { return firstBuckets(tx, now, uid) })
	return f.Name(), cmp.Or(err, db.Close())
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
	m, form, name := tx.Bucket(bucketMeta), []byte(strconv.Itoa(Schema)), []byte(uid)
	return cmp.Or(
		m.Put(keySchema, form), m.Put(keyUID, name), m.Put(keySum, metaSum(form, name)),
		m.Put(keyCreated, []byte(entry.Wall(now).Format(time.RFC3339Nano))))
}
