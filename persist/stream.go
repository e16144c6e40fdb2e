package persist

import (
	"bytes"
	"cmp"
	"errors"
	"slices"

	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// stream is where the writer stands in one stream.
type stream struct {
	rec    boltfile.Record // as far as numbered, held lines included
	booked uint64          // the last sequence in the book
	twin   *twin.Twin
	lines  [][]byte // all of it, held lines included, so that it can be written again
}

// load makes the writer ready for a stream: book and twin are compared once, before
// the first line. Names that are none are left to prepare.
func (w *writer) load(name string) error {
	if w.streams[name] == nil && twin.ValidStream(name) == nil {
		return w.reload(name)
	}
	return nil
}

// reload compares book and twin of a stream and takes up from there. It leaves
// a stream alone that has entries on their way.
func (w *writer) reload(name string) error {
	if slices.ContainsFunc(w.held, func(h held) bool { return h.e.Stream == name }) {
		return nil
	}
	if s := w.streams[name]; s != nil {
		s.twin.Close()
		delete(w.streams, name)
	}
	// What came to stand at the path may be another book's, with streams of the
	// same names.
	if err := w.b.store.book().There(); err != nil {
		return err
	}
	a, err := w.b.store.reconcile(name)
	w.say(a.told(name)...)
	if err != nil {
		return err
	}
	if _, ok := w.b.store.stored(name, a.rec, 0); !ok && len(a.Lines) > 0 {
		w.markStale(name)
	}
	w.streams[name] = &stream{rec: a.rec, booked: a.rec.Length, twin: a.twin, lines: a.Lines}
	return nil
}

// prepare numbers an entry and makes its line, or says why it is refused.
func (w *writer) prepare(e entry.Entry) held {
	h, why := held{e: e}, twin.ValidStream(e.Stream)
	if why == nil {
		h.e, h.line, why = w.streams[e.Stream].number(e, w.b.opt.stamp(e))
	}
	if why != nil {
		h.e, h.refused = e, &RefusedError{Entry: e, Why: why.Error()}
	}
	return h
}

// number makes an entry the next of the stream. It is given as it will be read, so
// that what is acknowledged is the same live and replayed; what could not be read is
// not written.
func (s *stream) number(e entry.Entry, now entry.Stamp) (numbered entry.Entry, line []byte, err error) {
	numbered, missing := e.Resolve(s.sequence)
	if missing != "" {
		return e, nil, errors.New(words.NeverKept(missing))
	}
	numbered.Version = entry.Version
	numbered.Seq, numbered.Prev = s.rec.Length+1, cmp.Or(s.rec.Head, s.rec.Lost)
	numbered.Kept = entry.Wall(now.Wall)
	if numbered.Boot != "" && now.Boot != "" {
		numbered.Boot, numbered.Mono = now.Boot, now.Mono
	}
	if line, err = entry.Encode(numbered); err != nil {
		return e, nil, err
	}
	line = twin.Sealed(line)
	if numbered, err = entry.Decode(line); err != nil {
		return e, nil, err
	}
	rec := boltfile.Record{Length: numbered.Seq, Bytes: s.rec.Bytes + int64(len(line)) + 1, Head: twin.HashOf(line), UID: s.rec.UID, Source: s.rec.Source, Gaps: s.rec.Gaps}
	if l, ok := numbered.Event.(entry.Light); ok && rec.UID == "" && rec.Source == "" {
		rec.UID, rec.Source = l.UID, l.SourceHash
	}
	s.rec, s.lines = rec, append(s.lines, line)
	return numbered, line, nil
}

// sequence finds the entry with a local id: the last, if there were more.
func (s *stream) sequence(local string) (uint64, bool) {
	for _, line := range slices.Backward(s.lines) {
		if !bytes.Contains(line, []byte(local)) {
			continue
		}
		if e, err := entry.Decode(line); err == nil && e.Local == local {
			return e.Seq, true
		}
	}
	return 0, false
}

// markStale puts a smelt among those whose summary is to be renewed.
func (w *writer) markStale(name string) {
	if !isHouse(name) && !slices.Contains(w.stale, name) {
		w.stale = append(w.stale, name)
	}
}
