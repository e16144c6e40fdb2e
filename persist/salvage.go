package persist

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	bolt "go.etcd.io/bbolt"
)

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
