package repair

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
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

// rescueBatch is how many bytes of lines go into one transaction.
const rescueBatch = 16 << 20

// rescue is one rescue under way.
type rescue struct {
	opt    Options
	folder string
	books  []*boltfile.File // whose pages are whole
	found  salvaged         // in files whose pages are not
	meta   boltfile.Meta
	taken  map[string]bool // names of streams
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
	smalls := boltfile.TakeOvers(file)
	if !disk.Exists(file) && !disk.Exists(twin.Find(file, "")) && len(smalls) == 0 {
		return r, disk.AccessError(file, os.ErrNotExist)
	}
	for _, f := range append([]string{file}, smalls...) {
		release, err := keepWritersOut(f, opt.LockWait)
		if err != nil {
			return r, err
		}
		defer release()
	}
	s := &rescue{opt: opt, found: salvaged{map[string][][]byte{}, map[string]uint64{}}, taken: map[string]bool{}}
	defer s.close()
	for i, f := range append([]string{file}, smalls...) {
		trouble, err := s.open(f)
		if err != nil {
			return r, err
		}
		if i == 0 {
			r.Trouble = trouble
		}
	}
	if s.meta.UID == "" {
		s.meta.UID = twin.UID(twin.Find(file, ""))
	}
	ours := func(stream string) (lines [][]byte) {
		for _, b := range s.books {
			_, more, _ := b.Stream(stream)
			lines = append(lines, more...)
		}
		return lines
	}
	folder, release, _, err := twin.Claim(file, s.meta.UID, ours, boltfile.IsBook)
	if err != nil {
		return r, disk.AccessError(folder, err)
	}
	defer release()
	s.folder = folder
	made, err := boltfile.Unfinished(file)
	if err != nil {
		return r, disk.AccessError(file, err)
	}
	defer os.Remove(made)
	if err := s.rebuild(made, &r); err != nil {
		return r, disk.AccessError(file, err)
	}
	return r, r.replace(file, made, smalls)
}

func (s *rescue) close() {
	for _, b := range s.books {
		_ = b.Close() // nothing was written to it
	}
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

// open makes a book readable for the rescue, whole or in pieces, and tells what
// is wrong with it.
func (s *rescue) open(file string) (trouble string, err error) {
	var meta boltfile.Meta
	var book *boltfile.File
	wrong := boltfile.Sound(file)
	if wrong == nil {
		book, wrong = boltfile.Open(file, s.opt.toRead())
	}
	if wrong == nil {
		s.books = append(s.books, book)
		meta, wrong = book.Meta()
	}
	switch {
	case wrong == nil && meta.Schema > boltfile.Schema:
		return "", &boltfile.NewerBookError{Path: file, Schema: meta.Schema}
	case wrong == nil:
		if s.meta.UID == "" {
			s.meta.UID = meta.UID
		}
		if meta.Last != "" {
			s.meta.Last = meta.Last
		}
		return "", nil
	case errors.Is(wrong, disk.ErrMissing):
		return words.FileMissing, nil
	case !errors.Is(wrong, disk.ErrDamaged):
		return "", wrong
	}
	var bad *disk.FileError
	errors.As(wrong, &bad)
	return bad.What, s.found.search(file)
}

// names lists the streams that anything was found of.
func (s *rescue) names() ([]string, error) {
	sizes, err := twin.Sizes(s.folder)
	names := slices.AppendSeq(slices.Collect(maps.Keys(sizes)), maps.Keys(s.found.lines))
	for _, b := range s.books {
		_ = b.View(func(tx boltfile.Tx) error { // what cannot be listed is searched for in the twins
			more, err := tx.Streams()
			names = append(names, more...)
			return err
		})
	}
	slices.Sort(names)
	names = slices.Compact(names)
	for _, n := range names {
		s.taken[n] = true
	}
	return names, err
}

// rebuild writes a new book of everything found, and puts the twins right.
func (s *rescue) rebuild(made string, r *Rescued) error {
	names, err := s.names()
	if err != nil {
		return err
	}
	if err := os.Remove(made); err != nil { // its name is ours; Create takes none that is there
		return err
	}
	if err := boltfile.Create(made, s.opt.Clock().Wall, s.meta.UID); err != nil {
		return err
	}
	book, err := boltfile.Open(made, boltfile.Options{Wait: s.opt.LockWait, Wrap: s.opt.Wrap})
	if err != nil {
		return err
	}
	err = s.fill(book, names, r)
	return disk.Both(err, book.Close())
}

// part is one stream as it goes into the new book.
type part struct {
	name  string
	lines [][]byte
	rec   boltfile.Record
}

func (s *rescue) fill(book *boltfile.File, names []string, r *Rescued) error {
	var batch []part
	size := int64(0)
	put := func() error {
		err := book.Update(func(tx boltfile.Tx) error {
			for _, p := range batch {
				if err := tx.PutLines(p.name, p.lines, p.rec); err != nil {
					return err
				}
			}
			return tx.PutMeta(boltfile.Meta{UID: s.meta.UID, Last: s.meta.Last})
		})
		batch, size = nil, 0
		return err
	}
	searched := int64(0)
	for _, lines := range s.found.lines {
		searched += twin.ByteCount(lines)
	}
	g := s.opt.gauge(s.folder, searched)
	defer g.end()
	for _, name := range names {
		parts, told, err := s.stream(name)
		if err != nil {
			return err
		}
		if len(parts) > 0 || told.Loose > 0 {
			r.Streams = append(r.Streams, told)
		}
		batch = append(batch, parts...)
		for _, p := range parts {
			r.Entries += uint64(len(p.lines))
			size += twin.ByteCount(p.lines)
			g.add(p.lines)
		}
		if size > rescueBatch {
			if err := put(); err != nil {
				return err
			}
		}
	}
	return put()
}

// stream puts together what was found of one stream, and puts its twin right. A
// chain that parts from it becomes a stream of its own.
func (s *rescue) stream(name string) (parts []part, told RescuedStream, err error) {
	told.Stream = name
	c := Copies{Text: twin.Read(s.folder, name)}
	heads := maps.Clone(s.found.heads)
	whole := len(s.books) == 1
	for _, b := range s.books {
		rec, lines, err := b.Stream(name)
		whole = whole && err == nil
		c.Book = append(c.Book, lines...)
		if rec.Head != "" {
			heads[rec.Head] = rec.Length
		}
		if rec.Length >= c.Record.Length {
			c.Record = rec
		}
	}
	if b, err := os.ReadFile(twin.SummaryFile(s.folder, name)); err == nil {
		if rec, ok := boltfile.ReadRecord(b); ok && rec.Head != "" {
			heads[rec.Head] = rec.Length
		}
	}
	if whole && len(c.Book) == len(c.Text.Lines) && twin.SamePrefix(c.Book, c.Text.Lines) == len(c.Book) && c.Text.Fault == "" && c.Text.Unread == nil {
		if _, fault := c.Whole(name); fault == nil { // as nearly all are
			told.Entries = len(c.Book)
			if len(c.Book) == 0 {
				return nil, told, nil
			}
			return []part{{name, c.Book, c.Record}}, told, s.mend(name, c.Text, c.Book, &told)
		}
	}
	more := s.found.lines[name]
	if c.Text.Fault != "" { // beyond there may be lines yet
		beyond := salvaged{map[string][][]byte{}, heads}
		for i := range c.Text.Segments {
			if err := beyond.search(twin.SegmentFile(s.folder, name, i+1)); err != nil && !errors.Is(err, disk.ErrNoFile) {
				return nil, told, err
			}
		}
		c.Text.Lines = append(slices.Clip(c.Text.Lines), beyond.lines[name]...)
	}
	u := c.Join(name, heads, more...)
	told.Entries, told.Loose, told.Gaps = len(u.Main), u.Loose, u.Gaps
	for _, f := range u.Main {
		switch f.In {
		case twin.InBook:
			told.Book++
		case twin.InTwin:
			told.Twin++
		}
	}
	if len(u.Main) == 1 && u.Main[0].Seq > 1 && len(c.Book)+len(c.Text.Lines) == 0 {
		told.Loose = 1 // one stray line that names a stream of which there is nothing else
		return nil, told, nil
	}
	lines := u.Lines()
	rec := boltfile.RecordOf(lines, u.Gaps)
	if rec.Head == c.Record.Head && rec.Length == c.Record.Length {
		rec.Rule, rec.Summary = c.Record.Rule, c.Record.Summary
	}
	if len(lines) > 0 {
		parts = append(parts, part{name, lines, rec})
	}
	c.Text = twin.Read(s.folder, name)
	if err := s.mend(name, c.Text, lines, &told); err != nil {
		return nil, told, err
	}
	for _, other := range u.OtherLines() {
		second := SecondName(name, func(n string) bool { return s.taken[n] })
		s.taken[second] = true
		if err := twin.Write(s.folder, second, other); err != nil {
			return nil, told, err
		}
		told.Mended = append(told.Mended, words.MendedSecond(second, len(other)))
		parts = append(parts, part{second, other, boltfile.RecordOf(other, nil)})
	}
	return parts, told, nil
}

// mend makes the twin say the same.
func (s *rescue) mend(name string, text twin.Text, lines [][]byte, told *RescuedStream) error {
	t, err := twin.Mend(s.folder, name, text, lines, s.opt.OpenTwin, func(said string) { told.Mended = append(told.Mended, said) })
	if err == nil {
		t.Close()
	}
	return err
}

// SecondName is what a second chain of a stream is called.
func SecondName(name string, taken func(string) bool) string {
	for n := 2; ; n++ {
		if second := name + "-" + strconv.Itoa(n); !taken(second) {
			return second
		}
	}
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
