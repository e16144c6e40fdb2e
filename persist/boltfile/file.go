package boltfile

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"runtime/debug"
	"strings"
	"sync/atomic"
	"time"

	bolt "go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// File is an open bbolt file. It turns the panics of a broken one into errors, and
// lets nothing be written any more once it is not known what the disk holds.
type File struct {
	Path   string
	Meta   Meta // as it was opened
	db     *bolt.DB
	commit Commit
	file   *os.File // to let go of its lock when bbolt panics on a bad page
	place  disk.Watched
	poison atomic.Pointer[error]
	broken atomic.Bool // bbolt cannot read it either; set after poison
}

// Commit is one transaction that writes.
type Commit func(func(*bolt.Tx) error) error

// Options is how a file is opened.
type Options struct {
	ReadOnly bool
	Wait     time.Duration // for another program to let go of it
	Whole    bool          // all its pages are followed at once, also those of a large book
	NoSync   bool          // nothing is flushed but by Close: for a file that nobody knows yet
	OpenFile OpenFunc      // nil is the system's
	Wrap     func(Commit) Commit
}

// OpenFunc opens a file as os.OpenFile does.
type OpenFunc func(name string, flag int, mode os.FileMode) (*os.File, error)

// smallFile bounds, in bytes, the books whose pages are all followed when they are
// opened: up to here it takes a few milliseconds. Of larger ones what the streams
// hold is followed when it is wanted first.
const smallFile = 8 << 20

// Open opens a bbolt file. One that is held, damaged or closed to us is a typed
// error, and is not touched.
func Open(path string, opt Options) (*File, error) {
	if _, err := newestHead(path, false); err != nil {
		return nil, err
	}
	f := &File{Path: path}
	how := &bolt.Options{ReadOnly: opt.ReadOnly, Timeout: opt.Wait, NoStatistics: true, NoSync: opt.NoSync,
		OpenFile: func(name string, flag int, mode os.FileMode) (file *os.File, err error) {
			open := opt.OpenFile
			if open == nil {
				open = os.OpenFile
			}
			f.file, err = open(name, flag&^os.O_CREATE, mode)
			return f.file, err
		}}
	err := guarded(path, func() (err error) {
		f.db, err = bolt.Open(path, 0o600, how)
		return err
	})
	switch {
	case errors.Is(err, bolterrors.ErrTimeout):
		return nil, disk.Held(path)
	case errors.Is(err, errFault):
		if f.file != nil {
			_ = disk.Abandon(f.file) // the bad page is what to tell
		}
		return nil, err
	case errors.Is(err, bolterrors.ErrInvalid), errors.Is(err, bolterrors.ErrChecksum), errors.Is(err, bolterrors.ErrVersionMismatch):
		return nil, disk.Damaged(path, words.FileDamaged(err))
	case err != nil:
		return nil, disk.AccessError(path, err)
	}
	f.place, f.commit = disk.Watch(f.file, path), f.db.Update
	if opt.Wrap != nil {
		f.commit = opt.Wrap(f.commit)
	}
	h, err := newestHead(path, true) // with the lock: nobody changes it now
	if err == nil {
		w := walk{file: f.file, root: h.root, size: h.size, pages: h.pages}
		said, bad := w.sound(h.freelist, opt.Whole || h.pages*h.size <= smallFile)
		if bad != nil {
			err = disk.Damaged(path, words.FileDamaged(bad))
		} else if f.Meta, bad = metaOf(said); bad != nil {
			err = disk.Damaged(path, words.FileForeignFor(bad))
		}
	}
	if err != nil {
		return nil, disk.Both(err, f.Close())
	}
	return f, nil
}

// follow reads one state of the book by following its pages: bbolt would follow a bad
// one to the end of the program, and a fault of memory for each page of its map takes
// longer than reading it. bbolt's transaction only sees to it that they stay as they
// are. A book with a bad one is not written to any more.
func (f *File) follow(do func(*walk) error) error {
	if f.broken.Load() {
		return *f.poison.Load()
	}
	var bad error
	err := guarded(f.Path, func() error {
		return f.db.View(func(tx *bolt.Tx) error {
			size := uint64(f.db.Info().PageSize)
			bad = do(&walk{file: f.file, root: uint64(tx.Cursor().Bucket().Root()), size: size, pages: uint64(tx.Size()) / size})
			return nil
		})
	})
	switch {
	case bad != nil:
		return f.spoil(disk.Damaged(f.Path, words.FileDamaged(bad)))
	case isBroken(err):
		return f.spoil(err)
	}
	return err
}

// Update writes in one transaction. An error of do itself, or of a write that
// did not fit, leaves the book as it was; any other poisons it.
func (f *File) Update(do func(Tx) error) error {
	if p := f.poison.Load(); p != nil {
		return *p
	}
	var own error
	err := guarded(f.Path, func() error {
		return f.commit(func(tx *bolt.Tx) error { own = do(Tx{tx}); return own })
	})
	if err == nil || isShortWrite(err) || own != nil && !isBroken(err) {
		return err
	}
	return f.spoil(err)
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

// There is a disk.ErrPoisoned when the path leads to the book no longer.
func (f *File) There() error {
	if err := f.place.There(); err != nil {
		return f.spoil(err)
	}
	return nil
}

// isBroken tells whether bbolt cannot go on after an error: it panicked, or lost
// its map of the file.
func isBroken(err error) bool {
	return errors.Is(err, errFault) || errors.Is(err, bolterrors.ErrInvalidMapping)
}

// spoil lets nothing be written any more. The first cause is what is told.
func (f *File) spoil(cause error) error {
	err := disk.Poisoned(f.Path, cause)
	f.poison.CompareAndSwap(nil, &err)
	if isBroken(cause) {
		f.broken.Store(true)
	}
	return *f.poison.Load()
}

// Close closes the book. One that a panic has left with bbolt's locks taken is
// abandoned, for closing would wait for ever.
func (f *File) Close() (err error) {
	if f.broken.Load() {
		err = disk.Abandon(f.file)
	} else {
		if f.db.NoSync {
			err = f.db.Sync()
		}
		err = disk.Both(err, f.db.Close())
	}
	if err != nil {
		return words.FileNotClosed(f.Path, err)
	}
	return nil
}

// errFault marks the error that was made of a panic.
var errFault = errors.New("a page of the file is bad")

// guarded runs f so that a bad page, or one that the file no longer reaches to,
// is an error and not the end of the program. bbolt panics on both.
func guarded(path string, f func() error) (err error) {
	old := debug.SetPanicOnFault(true)
	defer debug.SetPanicOnFault(old)
	defer func() {
		if r := recover(); r != nil {
			err = &disk.FileError{Path: path, What: words.FileDamaged(r), Do: words.FileDamagedDo, Kind: disk.ErrDamaged, Cause: errFault}
		}
	}()
	return f()
}

// Poisoned tells whether nothing may be written to it any more.
func (f *File) Poisoned() bool { return f.poison.Load() != nil }

// Found tells whether the path still leads to the file, without poisoning it.
func (f *File) Found() bool { return f.place.There() == nil }

// Records reads the records of all streams. That of one whose record was changed is
// zero: it can be made anew.
func (f *File) Records() (map[string]Record, error) {
	all := map[string]Record{}
	err := f.follow(func(w *walk) error {
		return cmp.Or(
			w.in(bucketStreams, func(name, _ []byte, _ bool) error {
				all[string(name)] = Record{}
				return nil
			}),
			w.in(bucketSummary, func(name, record []byte, _ bool) error {
				if _, known := all[string(name)]; known {
					all[string(name)], _ = ReadRecord(record)
				}
				return nil
			}))
	})
	return all, err
}

// Stream gives what the book has of a stream, whatever it is; nothing for an unknown
// one.
func (f *File) Stream(name string) (r Record, lines [][]byte, err error) {
	err = f.follow(func(w *walk) error {
		return cmp.Or(
			w.in(bucketSummary, func(stream, record []byte, _ bool) error {
				if string(stream) == name {
					r, _ = ReadRecord(record)
				}
				return nil
			}),
			w.in(bucketStreams, func(stream, value []byte, _ bool) error {
				if string(stream) != name {
					return nil
				}
				return w.bucket(value, func(_, line []byte, _ bool) error {
					lines = append(lines, line)
					return nil
				})
			}))
	})
	if err != nil {
		lines = nil
	}
	return r, lines, err
}
