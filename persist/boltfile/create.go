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
// program has made meanwhile stays.
func Create(file string, now time.Time) error {
	folder := filepath.Dir(file)
	if err := disk.MakeFolder(folder); err != nil {
		return err
	}
	made := Unfinished(file)
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
	return disk.FlushFolder(folder)
}

// Unfinished is what a book is called while it is made.
func Unfinished(file string) string { return file + disk.UnfinishedExt + strconv.Itoa(os.Getpid()) }

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
		m.Put(keySchema, []byte(strconv.Itoa(Schema))),
		m.Put(keyUID, []byte(hex.EncodeToString(uid[:]))),
		m.Put(keyCreated, []byte(entry.Wall(now).Format(time.RFC3339Nano))))
}
