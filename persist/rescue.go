package persist

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"time"

	bolt "go.etcd.io/bbolt"
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
	file := BookFile(path)
	r := Rescued{Path: file}
	smalls := takeOvers(file)
	if !exists(file) && !exists(TwinFolder(file)) && len(smalls) == 0 {
		return r, accessError(file, os.ErrNotExist)
	}
	for _, f := range append([]string{file}, smalls...) {
		release, err := keepWritersOut(f, opt.LockWait)
		if err != nil {
			return r, err
		}
		defer release()
	}
	s := &rescue{found: pools{}, heads: map[string]bool{}, records: map[string]record{}, folder: TwinFolder(file)}
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
	made := file + unfinishedExt + strconv.Itoa(os.Getpid())
	defer os.Remove(made)
	if err := s.rebuild(made, opt, &r); err != nil {
		return r, accessError(file, err)
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
		return nil, accessError(file, err)
	}
	for end := time.Now().Add(wait); !shareLock(f); time.Sleep(wait / 50) {
		if !time.Now().Before(end) {
			f.Close()
			return nil, &HeldError{Path: file}
		}
	}
	return func() { f.Close() }, nil
}

// rescue is what one rescue has found so far.
type rescue struct {
	folder  string
	vaults  []*safeVault // books whose pages are whole
	found   pools        // lines of files whose pages are not
	heads   map[string]bool
	records map[string]record
	meta    metaBucket
}

func (s *rescue) close() {
	for _, v := range s.vaults {
		_ = v.Close() // nothing was written to it
	}
}

// open makes a book readable for the rescue, whole or in pieces, and tells what
// is wrong with it.
func (s *rescue) open(file string, opt Options) (trouble string, err error) {
	var meta metaBucket
	var recs map[string]record
	var v vault
	wrong := soundPages(file)
	if wrong == nil {
		v, wrong = openVault(file, true, opt.LockWait, opt.openBook)
	}
	if wrong == nil {
		safe := &safeVault{path: file, vault: v}
		s.vaults = append(s.vaults, safe)
		if meta, wrong = readMetaBucket(file, v); wrong == nil && meta.schema > schema {
			return "", &NewerBookError{Path: file, Schema: meta.schema}
		}
		if wrong == nil {
			recs, wrong = store{path: file, vault: safe}.records()
		}
	}
	if wrong == nil {
		for stream, rec := range recs {
			s.heads[rec.Head] = true
			s.records[stream] = rec
		}
		if s.meta.uid == "" {
			s.meta.uid = meta.uid
		}
		if meta.last != "" {
			s.meta.last = meta.last
		}
		return "", nil
	}
	if errors.Is(wrong, ErrMissing) {
		return wrong.(*FileError).What, nil
	}
	if !errors.Is(wrong, ErrDamaged) {
		return "", wrong
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return "", accessError(file, err)
	}
	s.found.scan(text, inBook)
	headsIn(text, s.heads)
	var bad *FileError
	errors.As(wrong, &bad)
	return bad.What, nil
}

// names lists the streams that anything was found of.
func (s *rescue) names() ([]string, error) {
	sizes, err := twinSizes(s.folder)
	if err != nil {
		return nil, err
	}
	all := map[string]bool{}
	for name := range sizes {
		all[name] = true
	}
	for name := range s.found {
		all[name] = true
	}
	for _, v := range s.vaults {
		_ = v.View(func(tx *bolt.Tx) error { // what cannot be listed is searched for in the twins
			streams, err := top(tx, bucketStreams)
			if err != nil {
				return err
			}
			return streams.ForEachBucket(func(k []byte) error { all[string(k)] = true; return nil })
		})
	}
	return sortedKeys(all), nil
}

// rebuild writes a new book of everything found, and puts the twins right.
func (s *rescue) rebuild(made string, opt Options, r *Rescued) error {
	names, err := s.names()
	if err != nil {
		return err
	}
	if err := create(made, opt.Clock().Wall); err != nil {
		return err
	}
	v, err := openVault(made, false, opt.LockWait, os.OpenFile)
	if err != nil {
		return err
	}
	book := opt.wrapVault(v)
	err = s.fill(book, names, opt, r)
	return both(err, book.Close())
}

func (s *rescue) fill(book vault, names []string, opt Options, r *Rescued) error {
	batch, size := map[string][][]byte{}, int64(0)
	put := func() error {
		return book.Update(func(tx *bolt.Tx) error {
			for _, stream := range sortedKeys(batch) {
				lines := batch[stream]
				rec := recordOf(lines)
				if old := s.records[stream]; old.Head == rec.Head && old.Length == rec.Length {
					rec.Rule, rec.Summary = old.Rule, old.Summary
				}
				if err := putLines(tx, stream, 1, lines, rec); err != nil {
					return err
				}
			}
			return s.putMeta(tx)
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
		if size += byteCount(lines); size > rescueBatch {
			if err := put(); err != nil {
				return err
			}
			batch, size = map[string][][]byte{}, 0
		}
	}
	return put()
}

// putMeta carries on what the old book said of itself.
func (s *rescue) putMeta(tx *bolt.Tx) error {
	m, err := top(tx, bucketMeta)
	if err != nil {
		return err
	}
	if s.meta.uid != "" {
		if err := m.Put(keyUID, []byte(s.meta.uid)); err != nil {
			return err
		}
	}
	if s.meta.last != "" {
		return m.Put(keyLast, []byte(s.meta.last))
	}
	return nil
}

// stream puts together what was found of one stream, and puts its twin right.
func (s *rescue) stream(name string, opt Options) (lines [][]byte, told RescuedStream, err error) {
	told.Stream = name
	text, err := readTwin(s.folder, name)
	if err != nil {
		return nil, told, err
	}
	if lines = s.agreed(name, text); lines == nil {
		lines = s.joined(name, text, &told)
	}
	told.Entries = len(lines)
	say := func(format string, a ...any) { told.Mended = append(told.Mended, fmt.Sprintf(format, a...)) }
	t, err := store{folder: s.folder, openTwin: opt.openTwin}.mendTwin(name, text, lines, say)
	if err != nil {
		return nil, told, err
	}
	t.close()
	return lines, told, nil
}

// agreed gives the lines of a stream that book and twin have alike and whole, as
// nearly all do; else nil.
func (s *rescue) agreed(name string, text twinText) [][]byte {
	if len(s.vaults) != 1 || s.found[name] != nil || text.fault != "" {
		return nil
	}
	book := s.inBook(s.vaults[0], name)
	if len(book) != len(text.lines) || samePrefix(book, text.lines) < len(book) || s.records[name].Head != headOf(book) {
		return nil
	}
	if n, _ := wholeChain(name, book); n < len(book) {
		return nil
	}
	return book
}

// inBook gives all lines of a stream in a book, also beyond a missing one.
func (s *rescue) inBook(v *safeVault, name string) (lines [][]byte) {
	_ = v.View(func(tx *bolt.Tx) error { // what could be read until then is what there is
		streams, err := top(tx, bucketStreams)
		if err != nil || streams.Bucket([]byte(name)) == nil {
			return err
		}
		return streams.Bucket([]byte(name)).ForEach(func(_, line []byte) error {
			lines = append(lines, bytes.Clone(line))
			return nil
		})
	})
	return lines
}

// joined puts the lines of all places together by their links.
func (s *rescue) joined(name string, text twinText, told *RescuedStream) [][]byte {
	for _, v := range s.vaults {
		for _, line := range s.inBook(v, name) {
			s.found.add(line, inBook)
		}
	}
	for i := range text.segments {
		b, err := os.ReadFile(segmentFile(s.folder, name, i+1))
		if err == nil { // the twin was read a moment ago
			s.found.addText(b, inTwin)
		}
	}
	if b, err := os.ReadFile(filepath.Join(s.folder, name+summaryExt)); err == nil {
		headsIn(b, s.heads)
	}
	whole := s.found[name].chain(s.heads)
	beyond := map[uint64]bool{}
	for _, f := range s.found[name] {
		if f.seq > uint64(len(whole)) {
			beyond[f.seq] = true
		}
	}
	told.Loose = len(beyond)
	lines := make([][]byte, len(whole))
	for i, f := range whole {
		lines[i] = f.line
		switch f.in {
		case inBook:
			told.Book++
		case inTwin:
			told.Twin++
		}
	}
	delete(s.found, name)
	return lines
}

// replace puts the new book in the place of the old, which is set aside first,
// so that at every moment there is a book.
func (r *Rescued) replace(file, made string, smalls []string) error {
	old, err := there(file)
	if err != nil {
		return accessError(file, err)
	}
	if old {
		aside, err := freeName(file)
		if err != nil {
			return accessError(file, err)
		}
		if err := os.Link(file, aside); err != nil { // a file system without hard links
			if err := os.Rename(file, aside); err != nil {
				return accessError(file, err)
			}
		}
		r.Aside = append(r.Aside, aside)
	}
	if err := os.Rename(made, file); err != nil {
		return accessError(file, err)
	}
	for _, small := range smalls {
		aside, err := freeName(small)
		if err == nil {
			err = os.Rename(small, aside)
		}
		if err != nil {
			return accessError(small, err)
		}
		r.Aside = append(r.Aside, aside)
	}
	return flushFolder(filepath.Dir(file))
}
