package persist

import (
	"cmp"
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"chargehand/model/words"
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
	Stream  string     `json:"stream"`
	Entries int        `json:"entries"`
	Book    int        `json:"from_book_alone"` // of them, that no twin had
	Twin    int        `json:"from_twin_alone"` // of them, that could not be read in the book
	Loose   int        `json:"loose"`           // entries found that fit nowhere, which stand only in the files set aside
	Gaps    []twin.Gap `json:"gaps,omitempty"`  // entries that are nowhere
	Mended  []string   `json:"mended,omitempty"`
}

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
	files := append([]string{file}, boltfile.TakeOvers(file)...)
	if !disk.Exists(file) && !disk.Exists(twin.Find(file, "")) && len(files) == 1 {
		return r, disk.AccessError(file, os.ErrNotExist)
	}
	old := sources{found: salvaged{map[string][][]byte{}, map[string]uint64{}}}
	defer old.close()
	for i, f := range files {
		release, err := keepWritersOut(f, opt.LockWait)
		if err != nil {
			return r, err
		}
		defer release()
		trouble, err := old.open(f, opt)
		if err != nil {
			return r, err
		}
		if i == 0 {
			r.Trouble = trouble
		}
	}
	if old.meta.UID == "" {
		old.meta.UID = twin.UID(twin.Find(file, ""))
	}
	folder, release, _, err := twin.Claim(file, old.meta.UID, func(stream string) [][]byte { return old.of(stream).book }, boltfile.IsBook)
	if err != nil {
		return r, disk.AccessError(folder, err)
	}
	defer release()
	made, err := old.rebuild(store{path: file, folder: folder, openTwin: opt.openTwin}, opt, &r)
	if made != "" {
		defer os.Remove(made)
	}
	if err != nil {
		return r, disk.AccessError(file, err)
	}
	return r, r.replace(files, made)
}

// keepWritersOut takes the lock of readers on a file. A file that is not there
// needs none.
func keepWritersOut(file string, wait time.Duration) (release func(), err error) {
	f, err := disk.Open(file)
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

// sources are the files of a book that is made anew.
type sources struct {
	books []*boltfile.File // whose pages are whole
	found salvaged         // in files whose pages are not
	meta  boltfile.Meta
}

func (s *sources) close() {
	for _, b := range s.books {
		_ = b.Close() // nothing was written to it
	}
}

// open makes a book readable for the rescue, whole or in pieces, and tells what
// is wrong with it.
func (s *sources) open(file string, opt Options) (trouble string, err error) {
	book, wrong := opt.openSound(file)
	var bad *disk.FileError
	switch {
	case wrong == nil && book.Meta.Schema > boltfile.Schema:
		return "", disk.Both(&boltfile.NewerBookError{Path: file, Schema: book.Meta.Schema}, book.Close())
	case wrong == nil:
		s.books = append(s.books, book)
		s.meta = boltfile.Meta{UID: cmp.Or(s.meta.UID, book.Meta.UID), Last: cmp.Or(book.Meta.Last, s.meta.Last)}
		return "", nil
	case errors.Is(wrong, disk.ErrMissing):
		return words.FileMissing, nil
	case errors.Is(wrong, disk.ErrDamaged) && errors.As(wrong, &bad):
		return bad.What, s.found.search(file)
	}
	return "", wrong
}

// names lists the streams that anything was found of.
func (s *sources) names(folder string) ([]string, error) {
	sizes, err := twin.Sizes(folder)
	names := slices.AppendSeq(slices.Collect(maps.Keys(sizes)), maps.Keys(s.found.lines))
	for _, b := range s.books {
		recs, _ := b.Records() // what cannot be listed is searched for in the twins
		names = slices.AppendSeq(names, maps.Keys(recs))
	}
	slices.Sort(names)
	return slices.Compact(names), err
}

// of is what was found of one stream.
func (s *sources) of(stream string) copies {
	c := copies{more: s.found.lines[stream], heads: maps.Clone(s.found.heads)}
	for _, b := range s.books {
		rec, lines, _ := b.Stream(stream) // what cannot be read is searched for in the twin
		c.book = append(c.book, lines...)
		if rec.Head != "" {
			c.heads[rec.Head] = rec.Length
		}
		if rec.Length >= c.record.Length {
			c.record = rec
		}
	}
	return c
}

// rebuild writes a new book of everything found, and puts the twins right. It
// gives the file's name, also of one that is not whole.
func (s *sources) rebuild(into store, opt Options, r *Rescued) (made string, err error) {
	if into.names, err = s.names(into.folder); err != nil {
		return "", err
	}
	if made, err = boltfile.CreateUnnamed(into.path, opt.Clock().Wall, s.meta.UID); err != nil {
		return made, err
	}
	// Nobody knows the file yet, so that it is flushed once, at the end.
	book, err := boltfile.Open(made, boltfile.Options{Wait: opt.LockWait, NoSync: true, Wrap: opt.wrapCommit})
	if err != nil {
		return made, err
	}
	into.fresh = book
	searched := int64(0)
	for _, lines := range s.found.lines {
		searched += twin.ByteCount(lines)
	}
	g := opt.gauge(into.folder, searched)
	defer g.end()
	for _, name := range into.names {
		told, err := s.bring(into, name, g)
		if err != nil {
			return made, disk.Both(err, book.Close())
		}
		if told.Entries > 0 || told.Loose > 0 {
			r.Streams = append(r.Streams, told)
		}
		r.Entries += uint64(told.Entries)
	}
	err = book.Update(func(tx boltfile.Tx) error { return tx.PutMeta(boltfile.Meta{Last: s.meta.Last}) })
	return made, disk.Both(err, book.Close())
}

// bring brings one stream into the new book.
func (s *sources) bring(into store, name string, g *gauge) (RescuedStream, error) {
	a, err := into.reconcile(name, s.of(name))
	if err != nil {
		return RescuedStream{}, err
	}
	a.twin.Close()
	g.add(a.lines)
	told := RescuedStream{Stream: name, Entries: len(a.lines), Loose: a.union.Loose, Gaps: a.union.Gaps, Mended: a.said}
	for _, f := range a.union.Main {
		switch f.In {
		case twin.InBook:
			told.Book++
		case twin.InTwin:
			told.Twin++
		}
	}
	return told, nil
}

// replace puts the new book in the place of the old, which is set aside first,
// so that at every moment there is a book, and then the small ones that had taken
// over.
func (r *Rescued) replace(files []string, made string) error {
	for i, file := range files {
		there, err := disk.IsThere(file)
		if err != nil {
			return disk.AccessError(file, err)
		}
		if there {
			aside, err := disk.FreeName(file)
			if err == nil && (i > 0 || os.Link(file, aside) != nil) { // or a file system without hard links
				err = os.Rename(file, aside)
			}
			if err != nil {
				return disk.AccessError(file, err)
			}
			r.Aside = append(r.Aside, aside)
		}
		if i > 0 {
			continue
		}
		if err := os.Rename(made, file); err != nil {
			return disk.AccessError(file, err)
		}
	}
	return disk.FlushFolder(filepath.Dir(files[0]))
}

// gauge tells how far a check or a rescue is: which part of as much text as the
// twins have is done.
type gauge struct {
	done, of int64 // bytes
	tell     func(done, of int)
}

func (o Options) gauge(folder string, atLeast int64) *gauge {
	g := &gauge{tell: o.Progress}
	sizes, _ := twin.Sizes(folder) // what cannot be listed is not foreseen
	for _, s := range sizes {
		g.of += s
	}
	g.of = max(g.of, atLeast)
	return g
}

func (g *gauge) add(lines [][]byte) {
	g.done = min(g.done+twin.ByteCount(lines), g.of)
	g.tell(int(g.done>>10), int(g.of>>10))
}

func (g *gauge) end() { g.tell(int(g.of>>10), int(g.of>>10)) }
