package persist

import (
	"cmp"
	"errors"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// agreed is what the copies of a stream come to, once they say the same.
type agreed struct {
	twin  *twin.Twin // ready for appending
	rec   boltfile.Record
	lines [][]byte
	union twin.Union // where the copies had to be joined
	said  []string   // what was put right, one sentence each
}

// told is what was put right, with the stream named.
func (a agreed) told(stream string) (all []string) {
	for _, said := range a.said {
		all = append(all, words.OfStream(stream, said))
	}
	return all
}

// reconcile makes the book and the twin of a stream say the same: what their lines
// come to together, and those that a rescue has found besides. What has to give way
// is set aside beside the twin, and a whole chain that parts from the stream becomes
// one of its own.
func (s store) reconcile(stream string, c copies) (a agreed, err error) {
	var rec boltfile.Record
	var book [][]byte
	if s.fresh == nil {
		if rec, book, err = s.at(stream).Stream(stream); err != nil {
			return a, err
		}
	}
	a.rec = rec
	c.book = append(c.book, book...)
	if rec.Length >= c.record.Length {
		c.record = rec
	}
	c.text = twin.Read(s.folder, stream)
	_, fault := c.whole(stream)
	if len(c.book) == 0 {
		fault = nil
	}
	if c.text.Unread != nil && !errors.Is(c.text.Unread, disk.ErrNoFile) && (fault != nil || len(c.book) == 0) && s.fresh == nil {
		return a, c.text.Unread // nothing vouches for what it may hold
	}
	say := func(said string) { a.said = append(a.said, said) }
	gaps := c.record.Gaps
	a.lines = c.book
	if fault != nil || !c.alike() || len(c.more) > 0 {
		if err := c.beyond(s.folder, stream); err != nil {
			return a, err
		}
		a.union = c.join(stream)
		if len(a.union.Main) == 1 && a.union.Main[0].Seq > 1 && len(c.book)+len(c.text.Lines) == 0 {
			a.union = twin.Union{Loose: 1} // one stray line that names a stream of which there is nothing else
		}
		a.lines, gaps = a.union.Lines(), a.union.Gaps
		for _, other := range a.union.OtherLines() {
			second, err := s.keepSecond(stream, other)
			if err != nil {
				return a, err
			}
			if second != "" {
				say(words.MendedSecond(second, len(other)))
			}
		}
	}
	next := boltfile.RecordOf(a.lines, gaps)
	if next.Head == "" && next.Length == c.record.Length {
		next.Lost = cmp.Or(c.record.Head, c.record.Lost)
	}
	if next.Head == c.record.Head && next.Length == c.record.Length {
		next.Rule, next.Summary = c.record.Rule, c.record.Summary
	}
	replaced, kept := false, twin.SamePrefix(book, a.lines)
	switch {
	case kept < len(book):
		aside, err := setAside(s.folder, stream, book)
		if err != nil {
			return a, err
		}
		if len(gaps) > len(rec.Gaps) {
			say(words.MendedGap(gaps[len(gaps)-1], aside))
		} else {
			say(words.MendedByTwin(int(twin.LastSeq(book[:kept]))+1, len(a.lines), aside))
		}
		replaced, kept = true, 0
	case len(a.lines) > kept && s.fresh == nil:
		say(words.MendedFromTwin(len(a.lines) - kept))
	case fault != nil && s.fresh == nil:
		say(words.MendedCount(len(book), rec.Length))
	}
	if replaced || len(a.lines) > kept || fault != nil && len(book) > 0 {
		a.rec = next
		if err := s.put(stream, a.lines[kept:], next, replaced); err != nil {
			return a, err
		}
	}
	a.twin, err = twin.Mend(s.folder, stream, c.text, a.lines, s.openTwin, say)
	return a, err
}

// put adds lines to a stream of the book, or puts them in the place of what it has,
// and writes its record.
func (s store) put(stream string, lines [][]byte, rec boltfile.Record, replace bool) error {
	do := func(tx boltfile.Tx) error {
		if replace {
			return tx.Replace(stream, lines, rec)
		}
		return tx.PutLines(stream, lines, rec)
	}
	return s.writing().Update(do)
}

// setAside writes lines of the book that have to give way to a file beside the
// twin.
func setAside(folder, stream string, lines [][]byte) (aside string, err error) {
	if err := disk.MakeFolder(folder); err != nil {
		return "", err
	}
	d, err := twin.NewDraft(folder, stream, lines)
	if err != nil {
		return "", err
	}
	return d.SetAside()
}

// keepSecond keeps a whole chain that parts from a stream as a stream of its own;
// its name is empty where it is kept already.
func (s store) keepSecond(stream string, lines [][]byte) (second string, err error) {
	names, err := s.streams()
	if err != nil {
		return "", err
	}
	names = append(names, s.names...)
	for _, n := range names {
		if twin.OfStream(n, stream) && n != stream {
			if had, _ := s.lines(n); len(had) >= len(lines) && twin.SamePrefix(had, lines) == len(lines) {
				return "", nil
			}
		}
	}
	second = secondName(stream, names)
	if err := twin.Write(s.folder, second, lines); err != nil {
		return "", err
	}
	return second, s.put(second, lines, boltfile.RecordOf(lines, nil), false)
}

// isAbsent tells whether nothing was ever kept under a name.
func isAbsent(err error) bool { return errors.As(err, new(*NoStreamError)) }
