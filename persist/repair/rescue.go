package repair

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Rescued says what a rescue has brought back, and from where.
type Rescued struct {
	Path    string          `json:"path"`
	Trouble string          `json:"trouble"`   // what was wrong with the book's file; empty when its pages were whole
	Aside   []string        `json:"set_aside"` // the files that gave way, under their new names
	Entries uint64          `json:"entries"`
	Streams []RescuedStream `json:"streams"`
}

// RescuedStream is what was brought back of one stream.
type RescuedStream struct {
	Stream  string   `json:"stream"`
	Entries int      `json:"entries"`
	Book    int      `json:"from_book_alone"` // of them, that no twin had
	Twin    int      `json:"from_twin_alone"` // of them, that could not be read in the book
	Loose   int      `json:"loose"`           // entries found beyond a missing one, which stand only in the files set aside
	Mended  []string `json:"mended,omitempty"`
}

// rescueBatch is how many bytes of lines go into one transaction.
const rescueBatch = 16 << 20

// Rescue rebuilds a book from its twins and whatever can be read of its file,
// into a new file; the old one is set aside. It works as well where the file is
// gone, cut, empty or some other program's, and on a whole book. The twins are
// put right too. It fails with ErrHeld while a program has the book, with
// ErrNewer for the book of a newer version, and with ErrMissing where there is
// nothing at all; the old file is then where it was.
func Rescue(path string, opt Options) (Rescued, error) {
	opt = opt.filled()
	file := boltfile.BookFile(path)
	r := Rescued{Path: file}
	smalls := boltfile.TakeOvers(file)
	if !disk.Exists(file) && !disk.Exists(twin.Folder(file)) && len(smalls) == 0 {
		return r, disk.AccessError(file, os.ErrNotExist)
	}
	for _, f := range append([]string{file}, smalls...) {
		release, err := keepWritersOut(f, opt.LockWait)
		if err != nil {
			return r, err
		}
		defer release()
	}
	s := &rescue{found: pools{}, heads: map[string]bool{}, records: map[string]boltfile.Record{}, folder: twin.Folder(file)}
	defer s.close()
	trouble, err := s.open(file, opt)
	if err != nil {
		return r, err
	}
	r.Trouble = trouble
	for _, small := range smalls {
		if _, err := s.open(small, opt); err != nil {
			return r, err
		}
	}
	made := boltfile.Unfinished(file)
	defer os.Remove(made)
	if err := s.rebuild(made, opt, &r); err != nil {
		return r, disk.AccessError(file, err)
	}
	return r, r.replace(file, made, smalls)
}

// keepWritersOut takes the lock of readers on a file. A file that is not there
// needs none.
func keepWritersOut(file string, wait time.Duration) (release func(), err error) {
	f, err := os.Open(file)
	if errors.Is(err, os.ErrNotExist) {
		return func() {}, nil
	}
	if err != nil {
		return nil, disk.AccessError(file, err)
	}
	for end := time.Now().Add(wait); !disk.ShareLock(f); time.Sleep(wait / 50) {
		if !time.Now().Before(end) {
			f.Close()
			return nil, &disk.HeldError{Path: file}
		}
	}
	return func() { f.Close() }, nil
}

// rebuild writes a new book of everything found, and puts the twins right.
func (s *rescue) rebuild(made string, opt Options, r *Rescued) error {
	names, err := s.names()
	if err != nil {
		return err
	}
	if err := boltfile.Create(made, opt.Clock().Wall); err != nil {
		return err
	}
	book, err := boltfile.Open(made, boltfile.Options{Wait: opt.LockWait, Wrap: opt.Wrap})
	if err != nil {
		return err
	}
	err = s.fill(book, names, opt, r)
	return disk.Both(err, book.Close())
}

func (s *rescue) fill(book *boltfile.File, names []string, opt Options, r *Rescued) error {
	batch, size := map[string][][]byte{}, int64(0)
	put := func() error {
		return book.Update(func(tx boltfile.Tx) error {
			for _, stream := range slices.Sorted(maps.Keys(batch)) {
				lines := batch[stream]
				rec := boltfile.RecordOf(lines)
				if old := s.records[stream]; old.Head == rec.Head && old.Length == rec.Length {
					rec.Rule, rec.Summary = old.Rule, old.Summary
				}
				if err := tx.PutLines(stream, 1, lines, rec); err != nil {
					return err
				}
			}
			return tx.PutMeta(boltfile.Meta{UID: s.meta.UID, Last: s.meta.Last})
		})
	}
	for _, stream := range names {
		lines, told, err := s.stream(stream, opt)
		if err != nil {
			return err
		}
		if len(lines) == 0 && told.Loose == 0 {
			continue
		}
		r.Streams, r.Entries = append(r.Streams, told), r.Entries+uint64(len(lines))
		if len(lines) == 0 {
			continue
		}
		batch[stream] = lines
		if size += twin.ByteCount(lines); size > rescueBatch {
			if err := put(); err != nil {
				return err
			}
			batch, size = map[string][][]byte{}, 0
		}
	}
	return put()
}

// replace puts the new book in the place of the old, which is set aside first,
// so that at every moment there is a book.
func (r *Rescued) replace(file, made string, smalls []string) error {
	old, err := disk.IsThere(file)
	if err != nil {
		return disk.AccessError(file, err)
	}
	if old {
		aside, err := disk.FreeName(file)
		if err != nil {
			return disk.AccessError(file, err)
		}
		if err := os.Link(file, aside); err != nil { // a file system without hard links
			if err := os.Rename(file, aside); err != nil {
				return disk.AccessError(file, err)
			}
		}
		r.Aside = append(r.Aside, aside)
	}
	if err := os.Rename(made, file); err != nil {
		return disk.AccessError(file, err)
	}
	for _, small := range smalls {
		aside, err := disk.FreeName(small)
		if err == nil {
			err = os.Rename(small, aside)
		}
		if err != nil {
			return disk.AccessError(small, err)
		}
		r.Aside = append(r.Aside, aside)
	}
	return disk.FlushFolder(filepath.Dir(file))
}
