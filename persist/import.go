package persist

import (
	"errors"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// maxSlice bounds, in bytes, what of an import goes into one transaction: so long
// an entry that is keyed meanwhile waits.
const maxSlice = 256 << 10

// ImportJSON puts a journal in under its own name, byte for byte. It is in the
// book and flushed on return, or not at all: a *PresentError when the smelt is
// there already, a *RefusedError or the disk's error else. Entries that are keyed
// meanwhile do not wait for it.
func (b *Book) ImportJSON(j Journal) error {
	return b.bring(j.Stream, j.Lines, 0, func(w *writer) error { return w.present(j.Stream, j.Lines) })
}

// Import puts entries in as a new stream, all or none. On return they are in the
// book and flushed, numbered from 1. References by local id are resolved among
// them. Errors are those of ImportJSON; an event out of bounds is refused too.
func (b *Book) Import(stream string, entries []entry.Entry) (kept []entry.Entry, err error) {
	if len(entries) == 0 {
		return nil, errors.New(words.NothingToImport(stream))
	}
	lines, numbered, err := b.numbered(stream, entries)
	if err == nil {
		err = b.bring(stream, lines, len(lines), func(w *writer) error { return w.present(stream, lines) })
	}
	if err != nil {
		return nil, err
	}
	return numbered, nil
}

// numbered makes the lines of a new stream.
func (b *Book) numbered(name string, entries []entry.Entry) (lines [][]byte, numbered []entry.Entry, err error) {
	s := &stream{}
	now := b.opt.Clock()
	for i, e := range entries {
		e.Stream = name
		if err := entry.Check(e.Event); err != nil {
			return nil, nil, &RefusedError{Entry: e, Why: words.OutOfBounds(err)}
		}
		n, _, err := s.number(e, now)
		if err != nil {
			return nil, nil, &RefusedError{Entry: e, Why: err.Error()}
		}
		numbered = append(numbered, n)
		b.opt.Progress(i+1, 2*len(entries))
	}
	return s.lines, numbered, nil
}

// Take takes lines of a stream in, as they were found somewhere, as a stream of its
// own: nothing is merged by guess. What is missing among them is a gap. Lines that
// the book has already all of are a *PresentError.
func (b *Book) Take(stream string, lines [][]byte) (name string, r Reading, err error) {
	pool := twin.Pool{}
	pool.Add(stream, lines...)
	r.Union = pool.Join(nil)
	if len(r.Lines) == 0 {
		return "", r, errors.New(words.NothingToImport(stream))
	}
	names, err := b.store.streams()
	if err != nil {
		return "", r, err
	}
	for _, n := range names {
		had, _ := b.store.read(n)
		if twin.OfStream(n, stream) && holds(had.Lines, r.Lines) {
			return "", r, &PresentError{Stream: stream, As: []string{n}, By: words.ByEntries}
		}
	}
	name = stream
	if slices.Contains(names, stream) {
		name = secondName(stream, names)
	}
	err = b.bring(name, r.Lines, 0, func(w *writer) error {
		if names, err := w.b.store.streams(); err != nil || slices.Contains(names, name) {
			return disk.Both(err, &PresentError{Stream: stream, As: []string{name}, By: "id"})
		}
		return nil
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

// bring writes a whole new stream. Its lines, its summary and its twin are made
// beside the writer. The lines go into the book in slices, between which the writer
// keeps what is keyed, where nobody reads them; one last transaction makes them a
// stream. Right before that the twin gets its name. So there is all of it after a
// crash, which the next opening brings into the book from the twin, or nothing. absent
// is an error when it is there already; made is how much of the work was done before,
// for the progress.
func (b *Book) bring(name string, lines [][]byte, made int, absent func(*writer) error) error {
	b.importing.Lock()
	defer b.importing.Unlock()
	if err := b.onWriter(absent); err != nil {
		return err
	}
	if err := twin.ValidStream(name); err != nil {
		return &RefusedError{Entry: entry.Entry{Stream: name}, Why: err.Error()}
	}
	n, why, gaps := twin.WholeChain(name, lines)
	if why != "" {
		return &twin.LineError{Stream: name, Seq: uint64(n + 1), What: why}
	}
	rec := boltfile.RecordOf(lines, gaps)
	sum := b.opt.Summarise.of(name, lines, rec)
	text, err := twin.NewDraft(b.store.folder, name, lines)
	if err != nil {
		return err
	}
	defer text.Drop()
	var into *boltfile.File
	at, tried, whole := 0, false, false // tried: a book that could not be flushed may have it
	slice := func(w *writer) error {
		book := w.b.store.book()
		if into != book { // the first, or another took over
			into, at = book, 0
		}
		if err := book.There(); err != nil {
			return err
		}
		if at < len(lines) {
			end := sliceFrom(lines, at)
			err := book.Update(func(tx boltfile.Tx) error { return tx.PutComing(name, lines[at:end], at == 0) })
			if err == nil {
				at = end
			}
			return err
		}
		if err := absent(w); err != nil && !(tried && w.has(name, lines)) {
			return err
		}
		tried = true
		if err := text.Place(true); err != nil {
			return err
		}
		if err := book.Update(func(tx boltfile.Tx) error { return tx.TakeIn(name, rec) }); err != nil {
			text.TakeBack()
			return err
		}
		whole = true
		delete(w.streams, name) // it had no line; the next entry for it reads where it stands
		w.b.store.noteSummary(name, rec, sum)
		return nil
	}
	for !whole {
		if err := b.onWriter(func(w *writer) error { return w.overcome(func() error { return slice(w) }) }); err != nil {
			return err
		}
		b.opt.Progress(made+at, made+len(lines))
	}
	return nil
}

// sliceFrom gives the end of the next slice of lines.
func sliceFrom(lines [][]byte, at int) (end int) {
	end, size := at, 0
	for end < len(lines) && (end == at || size+len(lines[end]) <= maxSlice) {
		size += len(lines[end])
		end++
	}
	return end
}

// has tells whether a stream is there with just these lines.
func (w *writer) has(name string, lines [][]byte) bool {
	had, _ := w.b.store.read(name)
	return len(had.Lines) == len(lines) && twin.SamePrefix(had.Lines, lines) == len(lines)
}

// present is a *PresentError when a smelt is in the book already, under one name
// or more.
func (w *writer) present(name string, lines [][]byte) error {
	recs, sizes, err := w.b.store.listed()
	if err != nil {
		return err
	}
	for _, n := range named(recs, sizes) {
		if _, counted := recs[n]; !counted { // only its twin can be read
			if r, err := w.b.store.read(n); err == nil || n == name {
				recs[n] = boltfile.RecordOf(r.Lines, r.Gaps)
			}
		}
	}
	uid, source := twin.Identity(lines)
	own, here := recs[name]
	if here = here || slices.ContainsFunc(w.held, func(h held) bool { return h.e.Stream == name }); here {
		recs[name] = own
	}
	p := &PresentError{Stream: name}
	for _, p.By = range []string{"id", "uid", "source"} {
		for _, as := range sortedKeys(recs) {
			r := recs[as]
			if p.By == "id" && (as == name || here && twin.OfStream(as, name) && r.UID == own.UID) ||
				p.By == "uid" && uid != "" && r.UID == uid || p.By == "source" && source != "" && r.Source == source {
				p.As = append(p.As, as)
			}
		}
		if len(p.As) > 0 {
			return p
		}
	}
	return nil
}
