package persist

import (
	"errors"
	"os"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Rescued says what a rescue has brought back, and from where.
type Rescued struct {
	Path    string          `json:"path"`
	Trouble string          `json:"trouble"`   // what was wrong with the book's file; empty when its pages were whole
	Aside   []string        `json:"set_aside"` // what the file that gave way is called now
	Entries uint64          `json:"entries"`
	Streams []RescuedStream `json:"streams"`
}

// RescuedStream is what was brought back of one stream.
type RescuedStream struct {
	Stream  string     `json:"stream"`
	Entries int        `json:"entries"`
	Loose   int        `json:"loose"`          // entries found that fit nowhere, which stand only in the files set aside
	Gaps    []twin.Gap `json:"gaps,omitempty"` // entries that are nowhere
	Mended  []string   `json:"mended,omitempty"`
}

// Rescue makes a book anew from its twins and whatever can be read of its file; the
// old one is set aside. It works as well where the file is gone, cut, empty or some
// other program's, and on a whole book. The twins are put right too. It fails with
// disk.ErrHeld while a program has the book, with disk.ErrNewer for the book of a newer
// version, and with disk.ErrMissing where there is nothing at all; the old file is then
// where it was.
func Rescue(path string, opt Options) (r Rescued, err error) {
	opt = opt.filled()
	file := boltfile.BookFile(path)
	r.Path = file
	if !disk.Exists(file) && !disk.Exists(twin.Find(file, "")) {
		return r, disk.AccessError(file, os.ErrNotExist)
	}
	s := storeOf(file)
	s.openTwin, s.found = opt.openTwin, map[string][][]byte{}
	uid := ""
	var bad *disk.FileError
	switch old, err := opt.openSound(file); {
	case err == nil && old.Meta.Schema > boltfile.Schema:
		return r, disk.Both(old.Meta.Newer(file), old.Close())
	case err == nil:
		defer old.Close()
		uid = old.Meta.UID
		s.replace(old)
	case errors.Is(err, disk.ErrMissing):
		r.Trouble = words.FileMissing
	case errors.Is(err, disk.ErrDamaged) && errors.As(err, &bad):
		r.Trouble = bad.What
		if s.found, err = twin.Salvage(file); err != nil {
			return r, err
		}
	default:
		return r, err
	}
	ours := s.ours
	if r.Trouble != "" {
		uid, ours = twin.UID(twin.Find(file, "")), nil
	}
	claimed, release, _, err := twin.Claim(file, uid, ours)
	if err != nil {
		return r, disk.AccessError(claimed, err)
	}
	defer release()
	s.folder = claimed
	book, err := opt.begin(file, uid, true)
	if err != nil {
		return r, disk.AccessError(file, err)
	}
	s.replace(book)
	err = s.bringAll(&r, opt)
	if err == nil {
		err = book.Close()
	}
	if err != nil {
		book.Discard()
		return r, disk.AccessError(file, err)
	}
	aside, err := book.Replace(file)
	if aside != "" {
		r.Aside = append(r.Aside, aside)
	}
	if err != nil {
		return r, disk.AccessError(file, err)
	}
	return r, nil
}

// ours gives what the book has of a stream.
func (s store) ours(stream string) [][]byte {
	c, _ := s.gather(stream) // what cannot be read is not there
	return c.book
}

// bringAll brings all that was found into the new book, and puts the twins right.
func (s store) bringAll(r *Rescued, opt Options) error {
	names, err := s.streams()
	if err != nil {
		return err
	}
	done := opt.gauge(s.folder)
	defer done(nil)
	for _, name := range names {
		a, err := s.reconcile(name)
		if err != nil {
			return err
		}
		a.twin.Close()
		done(a.Lines)
		if len(a.Lines)+a.Loose > 0 {
			r.Streams = append(r.Streams, RescuedStream{Stream: name, Entries: len(a.Lines), Loose: a.Loose, Gaps: a.Gaps, Mended: a.said})
		}
		r.Entries += uint64(len(a.Lines))
	}
	return nil
}

// gauge tells how far a check or a rescue is, given the lines that are done: which part
// of as much text as the twins have. Nothing given is the end.
func (o Options) gauge(folder string) func(lines [][]byte) {
	of, done := int64(0), int64(0)
	sizes, _ := twin.Sizes(folder) // what cannot be listed is not foreseen
	for _, size := range sizes {
		of += size
	}
	return func(lines [][]byte) {
		if done = min(done+twin.ByteCount(lines), of); lines == nil {
			done = of
		}
		o.Progress(int(done>>10), int(of>>10))
	}
}
