package repair

import (
	"errors"
	"maps"
	"os"
	"slices"

	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// rescue is what one rescue has found so far.
type rescue struct {
	folder  string
	books   []*boltfile.File // whose pages are whole
	found   pools            // lines of files whose pages are not
	heads   map[string]bool
	records map[string]boltfile.Record
	meta    boltfile.Meta
}

func (s *rescue) close() {
	for _, b := range s.books {
		_ = b.Close() // nothing was written to it
	}
}

// open makes a book readable for the rescue, whole or in pieces, and tells what
// is wrong with it.
func (s *rescue) open(file string, opt Options) (trouble string, err error) {
	var meta boltfile.Meta
	var recs map[string]boltfile.Record
	var book *boltfile.File
	wrong := boltfile.Sound(file)
	if wrong == nil {
		book, wrong = boltfile.Open(file, opt.toRead())
	}
	if wrong == nil {
		s.books = append(s.books, book)
		if meta, wrong = book.Meta(); wrong == nil && meta.Schema > boltfile.Schema {
			return "", &boltfile.NewerBookError{Path: file, Schema: meta.Schema}
		}
		if wrong == nil {
			recs, wrong = book.Records()
		}
	}
	if wrong == nil {
		for stream, rec := range recs {
			s.heads[rec.Head] = true
			s.records[stream] = rec
		}
		if s.meta.UID == "" {
			s.meta.UID = meta.UID
		}
		if meta.Last != "" {
			s.meta.Last = meta.Last
		}
		return "", nil
	}
	if errors.Is(wrong, disk.ErrMissing) {
		return wrong.(*disk.FileError).What, nil
	}
	if !errors.Is(wrong, disk.ErrDamaged) {
		return "", wrong
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return "", disk.AccessError(file, err)
	}
	s.found.scan(text, ofBook)
	headsIn(text, s.heads)
	var bad *disk.FileError
	errors.As(wrong, &bad)
	return bad.What, nil
}

// names lists the streams that anything was found of.
func (s *rescue) names() ([]string, error) {
	sizes, err := twin.Sizes(s.folder)
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
	for _, b := range s.books {
		names, _ := b.Streams() // what cannot be listed is searched for in the twins
		for _, name := range names {
			all[name] = true
		}
	}
	return slices.Sorted(maps.Keys(all)), nil
}

// stream puts together what was found of one stream, and puts its twin right.
func (s *rescue) stream(name string, opt Options) (lines [][]byte, told RescuedStream, err error) {
	told.Stream = name
	text, err := twin.Read(s.folder, name)
	if err != nil {
		return nil, told, err
	}
	if lines = s.agreed(name, text); lines == nil {
		lines = s.joined(name, text, &told)
	}
	told.Entries = len(lines)
	say := func(said string) { told.Mended = append(told.Mended, said) }
	t, err := twin.Mend(s.folder, name, text, lines, opt.OpenTwin, say)
	if err != nil {
		return nil, told, err
	}
	t.Close()
	return lines, told, nil
}

// agreed gives the lines of a stream that book and twin have alike and whole, as
// nearly all do; else nil.
func (s *rescue) agreed(name string, text twin.Text) [][]byte {
	if len(s.books) != 1 || s.found[name] != nil || text.Fault != "" {
		return nil
	}
	book := inBook(s.books[0], name)
	if len(book) != len(text.Lines) || twin.SamePrefix(book, text.Lines) < len(book) || s.records[name].Head != twin.HeadOf(book) {
		return nil
	}
	if n, _ := twin.WholeChain(name, book); n < len(book) {
		return nil
	}
	return book
}

// inBook gives all lines of a stream in a book, also beyond a missing one.
func inBook(b *boltfile.File, name string) (lines [][]byte) {
	_ = b.View(func(tx boltfile.Tx) error { // what could be read until then is what there is
		return tx.EachLine(name, func(line []byte) { lines = append(lines, line) })
	})
	return lines
}

// joined puts the lines of all places together by their links.
func (s *rescue) joined(name string, text twin.Text, told *RescuedStream) [][]byte {
	for _, b := range s.books {
		for _, line := range inBook(b, name) {
			s.found.add(line, ofBook)
		}
	}
	for i := range text.Segments {
		b, err := os.ReadFile(twin.SegmentFile(s.folder, name, i+1))
		if err == nil { // the twin was read a moment ago
			s.found.addText(b, ofTwin)
		}
	}
	if b, err := os.ReadFile(twin.SummaryFile(s.folder, name)); err == nil {
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
		case ofBook:
			told.Book++
		case ofTwin:
			told.Twin++
		}
	}
	delete(s.found, name)
	return lines
}
