package persist

import (
	"bytes"
	"errors"
	"io"
	"os"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/repair"
	"chargehand/persist/twin"
)

// Journal is one stream outside a book: its name and its stored lines.
type Journal struct {
	Stream string
	Lines  [][]byte
}

// Entries reads the entries of a journal.
func (j Journal) Entries() ([]entry.Entry, error) { return twin.DecodeAll(j.Stream, "", j.Lines) }

// ExportJSON writes the stored lines of a stream, one JSON object a line. This
// is the form of the twins, and exact: ImportJSON gives back the same bytes.
func ExportJSON(w io.Writer, lines [][]byte) error {
	_, err := w.Write(twin.Joined(lines))
	return err
}

// ReadJSON reads what ExportJSON wrote, and checks name, sequence and chain. A
// *LineError names the first bad line.
func ReadJSON(r io.Reader) (Journal, error) {
	name := "the file"
	if n, ok := r.(interface{ Name() string }); ok {
		name = n.Name()
	}
	lines, torn, err := twin.ReadLines(r)
	if err != nil && !errors.Is(err, twin.ErrLong) {
		return Journal{}, err
	}
	bad := func(line int, what string) (Journal, error) {
		return Journal{}, &LineError{File: name, Line: line, Seq: uint64(line), What: what}
	}
	switch {
	case err != nil:
		return bad(len(lines)+1, err.Error())
	case len(torn) > 0:
		return bad(len(lines)+1, words.LineCut)
	case len(lines) == 0:
		return bad(1, words.LinesNone)
	}
	for i, l := range lines { // an editor may have changed the ends of the lines
		lines[i] = bytes.TrimSuffix(l, []byte("\r"))
	}
	first, ok := twin.LinkOf(lines[0])
	if !ok {
		return bad(1, words.LineNoEntry)
	}
	if isHouse(first.Stream) {
		return bad(1, words.LineOfHouse)
	}
	if n, why, _ := twin.WholeChain(first.Stream, lines); why != "" {
		return bad(n+1, why)
	}
	for i, line := range lines { // what could never be read again is not taken in
		e, err := entry.Decode(line)
		if err == nil && e.Event != nil {
			err = entry.Check(e.Event)
		}
		if err != nil {
			return bad(i+1, err.Error())
		}
	}
	return Journal{Stream: first.Stream, Lines: lines}, nil
}

// ImportJSON puts a journal in under its own name, byte for byte. It is in the
// book and flushed on return, or not at all: a *PresentError when the smelt is
// there already, a *RefusedError or the disk's error else.
func (b *Book) ImportJSON(j Journal) error {
	return b.onWriter(func(w *writer) error { return w.overcome(func() error { return w.bring(j.Stream, j.Lines) }) })
}

// Import puts entries in as a new stream, all or none. On return they are in the
// book and flushed, numbered from 1. References by local id are resolved among
// them. Errors are those of ImportJSON; an event out of bounds is refused too.
func (b *Book) Import(stream string, entries []entry.Entry) (kept []entry.Entry, err error) {
	if len(entries) == 0 {
		return nil, errors.New(words.NothingToImport(stream))
	}
	err = b.onWriter(func(w *writer) error {
		lines, numbered, err := w.numbered(stream, entries)
		if err == nil {
			err = w.overcome(func() error { return w.bring(stream, lines) })
		}
		if err == nil {
			kept = numbered
		}
		return err
	})
	return kept, err
}

// numbered makes the lines of a new stream.
func (w *writer) numbered(name string, entries []entry.Entry) (lines [][]byte, numbered []entry.Entry, err error) {
	s := &stream{locals: map[string]uint64{}}
	now := w.b.opt.Clock()
	for _, e := range entries {
		e.Stream = name
		if err := entry.Check(e.Event); err != nil {
			return nil, nil, &RefusedError{Entry: e, Why: words.OutOfBounds(err)}
		}
		n, line, err := s.number(e, now, func(local string) (uint64, bool) { seq, ok := s.locals[local]; return seq, ok })
		if err == nil {
			n, err = entry.Decode(line)
		}
		if err != nil {
			return nil, nil, &RefusedError{Entry: e, Why: err.Error()}
		}
		lines, numbered = append(lines, line), append(numbered, n)
	}
	return lines, numbered, nil
}

// Take takes lines of a stream in, as they were found somewhere, as a stream of its
// own: nothing is merged by guess. What is missing among them is a gap. Lines that
// the book has already all of are a *PresentError.
func (b *Book) Take(stream string, lines [][]byte) (name string, r Reading, err error) {
	pool := twin.Pool{}
	pool.Add(stream, twin.InTwin, lines...)
	u := pool.Join(nil)
	r = Reading{Lines: u.Lines(), Gaps: u.Gaps}
	if len(r.Lines) == 0 {
		return "", r, errors.New(words.NothingToImport(stream))
	}
	err = b.onWriter(func(w *writer) error {
		names, err := w.b.store.streams()
		if err != nil {
			return err
		}
		for _, n := range names {
			had, _ := w.b.store.lines(n)
			if twin.OfStream(n, stream) && holds(had, r.Lines) {
				return &PresentError{Stream: stream, As: n, By: words.ByEntries}
			}
		}
		name = stream
		if slices.Contains(names, stream) {
			name = repair.SecondName(stream, func(n string) bool { return slices.Contains(names, n) })
		}
		return w.overcome(func() error { return w.putNew(name, r.Lines) })
	})
	return name, r, err
}

// holds tells whether all lines are among those had.
func holds(had, lines [][]byte) bool {
	have := map[string]bool{}
	for _, l := range had {
		have[string(l)] = true
	}
	return !slices.ContainsFunc(lines, func(l []byte) bool { return !have[string(l)] })
}

// bring writes a whole new stream. The twin goes first and appears under its
// name only when it is whole, so that after a crash there is all of it (the
// next opening brings it into the book) or nothing.
func (w *writer) bring(name string, lines [][]byte) error {
	if err := twin.ValidStream(name); err != nil {
		return &RefusedError{Entry: entry.Entry{Stream: name}, Why: err.Error()}
	}
	if err := w.present(name, lines); err != nil {
		return err
	}
	return w.putNew(name, lines)
}

// putNew is bring for a stream of which it is known that it is new.
func (w *writer) putNew(name string, lines [][]byte) error {
	n, why, gaps := twin.WholeChain(name, lines)
	if why != "" {
		return &LineError{Stream: name, Seq: uint64(n + 1), What: why}
	}
	if err := w.b.store.writing().There(); err != nil {
		return err
	}
	if err := twin.Write(w.b.store.folder, name, lines); err != nil {
		return err
	}
	if err := w.b.store.putTail(name, lines, boltfile.RecordOf(lines, gaps)); err != nil {
		_ = os.Remove(twin.SegmentFile(w.b.store.folder, name, 1))
		return err
	}
	delete(w.streams, name) // it had no line; the next entry for it reads where it stands
	w.markStale(name)
	return nil
}

// present is a *PresentError when a smelt is in the book already.
func (w *writer) present(name string, lines [][]byte) error {
	_, err := w.b.store.lines(name)
	var absent *NoStreamError
	if err != nil && !errors.As(err, &absent) {
		return err
	}
	if err == nil || slices.ContainsFunc(w.held, func(h held) bool { return h.e.Stream == name }) {
		return &PresentError{Stream: name, As: name, By: "id"}
	}
	uid, source := twin.Identity(lines)
	for _, by := range []struct{ word, uid, source string }{{"uid", uid, ""}, {"source", "", source}} {
		as, found, err := w.b.Find(by.uid, by.source)
		if err != nil {
			return err
		}
		if found {
			return &PresentError{Stream: name, As: as, By: by.word}
		}
	}
	return nil
}
