package boltfile

import (
	"errors"
	"io/fs"
	"os"
	"strings"
	"time"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// Vault is what this package asks of an open bbolt file. Tests put faults in
// between.
type Vault interface {
	Update(func(*bolt.Tx) error) error
	View(func(*bolt.Tx) error) error
	Pages() *Pages
	There() error // a *disk.GoneError when the path leads to it no longer
	Close() error
	Abandon() error // let go of the file and its lock without closing properly
}

// boltVault is an open bbolt file.
type boltVault struct {
	*bolt.DB
	file  *os.File
	pages *Pages
	place disk.Watched
}

// Pages is the walk through its pages.
func (v boltVault) Pages() *Pages { return v.pages }

// There follows the path.
func (v boltVault) There() error { return v.place.There() }

func (v boltVault) Abandon() error { return disk.Abandon(v.file) }

// Options is how a file is opened.
type Options struct {
	ReadOnly bool
	Wait     time.Duration // for another program to let go of it
	OpenFile OpenFunc      // nil is the system's
	Wrap     func(Vault) Vault
}

// OpenFunc opens a file as os.OpenFile does.
type OpenFunc func(name string, flag int, mode os.FileMode) (*os.File, error)

// Open opens a bbolt file. One that is held, damaged or closed to us is a typed
// error, and is not touched.
func Open(path string, opt Options) (*File, error) {
	oneHead, err := preflight(path)
	if err != nil {
		return nil, err
	}
	v, err := openVault(path, opt)
	if err != nil {
		return nil, err
	}
	if opt.Wrap != nil {
		v = opt.Wrap(v)
	}
	return &File{Path: path, OneHead: oneHead, vault: v}, nil
}

func openVault(path string, opt Options) (Vault, error) {
	openFile := opt.OpenFile
	if openFile == nil {
		openFile = os.OpenFile
	}
	var file *os.File // kept, to let go of its lock when bbolt panics on a bad page
	how := &bolt.Options{ReadOnly: opt.ReadOnly, Timeout: opt.Wait, NoStatistics: true,
		OpenFile: func(name string, flag int, mode os.FileMode) (f *os.File, err error) {
			f, err = openFile(name, flag&^os.O_CREATE, mode)
			file = f
			return f, err
		}}
	var db *bolt.DB
	err := guarded(path, func() (err error) {
		db, err = bolt.Open(path, 0o600, how)
		return err
	})
	switch {
	case err == nil:
		v := boltVault{DB: db, file: file, place: disk.Watch(file)}
		if v.pages, err = walkAtOpening(file); err != nil { // only now: with the lock, nobody changes it
			return nil, disk.Both(err, v.Close())
		}
		return v, nil
	case errors.Is(err, bolterrors.ErrTimeout):
		return nil, &disk.HeldError{Path: path}
	case errors.Is(err, errFault):
		if file != nil {
			_ = disk.Abandon(file) // the bad page is what to tell
		}
		var bad *disk.FileError
		errors.As(err, &bad)
		return nil, bad
	case errors.Is(err, bolterrors.ErrInvalid), errors.Is(err, bolterrors.ErrChecksum), errors.Is(err, bolterrors.ErrVersionMismatch):
		return nil, disk.Damaged(path, words.FileDamaged(err))
	default:
		return nil, disk.AccessError(path, err)
	}
}

// isShortWrite tells whether a failed commit left the book as it was, so that
// it may be tried again: the file could not be grown or written. After any
// other failure it is not known what the disk holds.
func isShortWrite(err error) bool {
	var path *fs.PathError
	return errors.As(err, &path) && path.Op == "write" ||
		errors.Is(err, bolterrors.ErrMaxSizeReached) ||
		strings.HasPrefix(err.Error(), "file resize error") // bbolt wraps the cause of this one in words only
}
