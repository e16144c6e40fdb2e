package persist

import (
	"errors"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/repair"
	"chargehand/persist/twin"
)

// reconcile makes the book and the twin of a stream say the same: what their
// lines come to together. What has to give way is set aside beside the twin, and a
// whole chain that parts from the stream becomes one of its own. It gives the
// twin ready for appending, the stream's record and lines, and one sentence for
// each thing that was put right.
func reconcile(s store, stream string) (*twin.Twin, boltfile.Record, [][]byte, []string, error) {
	rec, book, err := s.at(stream).Stream(stream)
	if err != nil {
		return nil, rec, nil, nil, err
	}
	c := repair.Copies{Record: rec, Book: book, Text: twin.Read(s.folder, stream)}
	_, fault := c.Whole(stream)
	if fault == nil || len(book) == 0 {
		fault = nil
	}
	if c.Text.Unread != nil && !c.Text.Foreign && (fault != nil || len(book) == 0) {
		return nil, rec, nil, nil, c.Text.Unread // nothing vouches for what it may hold
	}
	var mended []string
	say := func(said string) { mended = append(mended, words.OfStream(stream, said)) }
	fail := func(err error) (*twin.Twin, boltfile.Record, [][]byte, []string, error) {
		return nil, rec, nil, mended, err
	}
	lines, gaps := book, rec.Gaps
	same := twin.SamePrefix(book, c.Text.Lines)
	if fault != nil || same < max(len(book), len(c.Text.Lines)) || len(c.Text.Torn) > 0 {
		u := c.Join(stream, nil)
		lines, gaps = u.Lines(), u.Gaps
		for _, other := range u.OtherLines() {
			second, err := s.keepSecond(stream, other)
			if err != nil {
				return fail(err)
			}
			if second != "" {
				say(words.MendedSecond(second, len(other)))
			}
		}
	}
	switch kept := twin.SamePrefix(book, lines); {
	case kept < len(book):
		aside, err := setAside(s.folder, stream, book)
		if err != nil {
			return fail(err)
		}
		if len(gaps) > len(rec.Gaps) {
			say(words.MendedGap(gaps[len(gaps)-1], aside))
		} else {
			say(words.MendedByTwin(int(twin.LastSeq(book[:kept]))+1, len(lines), aside))
		}
		err = s.replaceStream(stream, lines, gaps)
		if err != nil {
			return fail(err)
		}
	case len(lines) > len(book):
		say(words.MendedFromTwin(len(lines) - len(book)))
		if err := s.putTail(stream, lines[len(book):], boltfile.RecordOf(lines, gaps)); err != nil {
			return fail(err)
		}
	case fault != nil:
		say(words.MendedCount(len(book), rec.Length))
		if err := s.putTail(stream, nil, boltfile.RecordOf(lines, gaps)); err != nil {
			return fail(err)
		}
	}
	t, err := twin.Mend(s.folder, stream, c.Text, lines, s.openTwin, say)
	if err != nil {
		return fail(err)
	}
	rec, _, err = s.at(stream).Stream(stream)
	return t, rec, lines, mended, err
}

// putTail adds lines to a stream of the book and writes its record.
func (s store) putTail(stream string, lines [][]byte, rec boltfile.Record) error {
	return s.writing().Update(func(tx boltfile.Tx) error { return tx.PutLines(stream, lines, rec) })
}

// setAside writes lines of the book that have to give way to a file beside the
// twin.
func setAside(folder, stream string, lines [][]byte) (aside string, err error) {
	if err := disk.MakeFolder(folder); err != nil {
		return "", err
	}
	f, err := disk.Unfinished(twin.SegmentFile(folder, stream, 1))
	if err != nil {
		return "", err
	}
	_, err = f.Write(twin.Joined(lines))
	if err == nil {
		err = disk.Flush(f)
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		aside, err = disk.SetAside(f.Name(), twin.SegmentFile(folder, stream, 1))
	}
	return aside, err
}

// keepSecond keeps a whole chain that parts from a stream as a stream of its own;
// its name is empty where it is kept already.
func (s store) keepSecond(stream string, lines [][]byte) (second string, err error) {
	names, err := s.streams()
	if err != nil {
		return "", err
	}
	taken := map[string]bool{}
	for _, n := range names {
		taken[n] = true
		if twin.OfStream(n, stream) && n != stream {
			if had, _ := s.lines(n); len(had) >= len(lines) && twin.SamePrefix(had, lines) == len(lines) {
				return "", nil
			}
		}
	}
	second = repair.SecondName(stream, func(n string) bool { return taken[n] })
	if err := twin.Write(s.folder, second, lines); err != nil {
		return "", err
	}
	return second, s.putTail(second, lines, boltfile.RecordOf(lines, nil))
}

// isAbsent tells whether nothing was ever kept under a name.
func isAbsent(err error) bool { return errors.As(err, new(*NoStreamError)) }
