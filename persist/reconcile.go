package persist

import (
	"bytes"
	"fmt"
	"os"

	bolt "go.etcd.io/bbolt"
)

// reconcile makes the book and the twin of a stream say the same. Of the two,
// the longer whole chain wins, and the book where they are equally long (unless
// its own record of the last line speaks for the twin). What
// one lacks is added to it; what contradicts the winner is set aside. It gives
// the twin ready for appending, the stream's record and lines, and one sentence for
// each thing that was put right.
func reconcile(s store, stream string) (*twin, record, [][]byte, []string, error) {
	var book [][]byte
	var rec record
	var gap error
	if err := s.at(stream).follow(stream); err != nil {
		return nil, rec, nil, nil, err
	}
	err := s.at(stream).View(func(tx *bolt.Tx) (err error) {
		if rec, err = recordIn(tx, stream); err != nil {
			return err
		}
		book, err = linesIn(tx, stream)
		if _, isGap := err.(*LineError); isGap {
			gap, err = err, nil
		}
		return err
	})
	if err != nil {
		return nil, rec, nil, nil, err
	}
	text, err := readTwin(s.folder, stream)
	if err != nil {
		return nil, rec, nil, nil, err
	}

	var mended []string
	say := func(format string, a ...any) { mended = append(mended, stream+": "+fmt.Sprintf(format, a...)) }
	same := samePrefix(book, text.lines)
	agreed := rec.Length == uint64(len(book)) && rec.Head == headOf(book) && gap == nil
	bookWhole, twinWhole := len(book), len(text.lines)
	if !agreed || same < max(bookWhole, twinWhole) {
		bookWhole, _ = wholeChain(stream, book)
		twinWhole, _ = wholeChain(stream, text.lines)
		if bookWhole == twinWhole && rec.Head != headOf(book[:bookWhole]) && rec.Head == headOf(text.lines[:twinWhole]) {
			bookWhole-- // no link follows the last line; what was counted vouches for the twin's
		}
	}

	lines := book
	switch {
	case twinWhole > bookWhole:
		lines = text.lines[:twinWhole]
		if same == len(book) && gap == nil {
			say("%s lacking in the book came from the twin", entriesOf(twinWhole-same))
			err = s.putTail(stream, same, lines)
		} else {
			say("the book did not agree with the twin from entry %d on; it was set aside in the book and the twin's %s hold", same+1, entriesOf(twinWhole))
			err = s.replaceStream(stream, lines)
		}
	case bookWhole < len(book) || gap != nil:
		// Neither has a whole chain beyond here. The rest is set aside too, for
		// no later line could be linked to it.
		lines = book[:bookWhole]
		say("entry %d in the book is damaged and the twin does not have it; the rest was set aside in the book", bookWhole+1)
		err = s.replaceStream(stream, lines)
	case !agreed:
		say("%s in the book where %d were counted; the count was made anew", entriesOf(len(book)), rec.Length)
		err = s.putTail(stream, len(book), lines)
	}
	if err != nil {
		return nil, rec, nil, mended, err
	}
	t, err := s.mendTwin(stream, text, lines, say)
	if err != nil {
		return nil, rec, nil, mended, err
	}
	err = s.at(stream).View(func(tx *bolt.Tx) (err error) { rec, err = recordIn(tx, stream); return err })
	return t, rec, lines, mended, err
}

// mendTwin makes the twin hold exactly the lines.
func (s store) mendTwin(stream string, text twinText, lines [][]byte, say func(string, ...any)) (*twin, error) {
	t := &twin{folder: s.folder, stream: stream, open: s.openTwin, segment: max(text.segments, 1), size: text.size, seq: uint64(len(text.lines))}
	if err := makeFolder(s.folder); err != nil {
		return nil, err
	}
	same := samePrefix(lines, text.lines)
	switch {
	case same < len(text.lines) || text.fault != "":
		say("its twin did not agree with the book from line %d on; it was set aside and written anew", same+1)
		if err := t.remake(lines); err != nil {
			return nil, err
		}
		return t, nil
	case text.torn > 0:
		say("a half-written line at the end of its twin was cut off")
		if err := os.Truncate(segmentFile(s.folder, stream, t.segment), text.size); err != nil {
			return nil, err
		}
	}
	if same < len(lines) {
		say("%s lacking in the twin came from the book", entriesOf(len(lines)-same))
		err := t.append(lines[same:])
		if err != nil {
			return nil, err
		}
	}
	return t, nil
}

// samePrefix is how many lines agree from the start.
func samePrefix(a, b [][]byte) int {
	n := min(len(a), len(b))
	for i := range n {
		if !bytes.Equal(a[i], b[i]) {
			return i
		}
	}
	return n
}

// entriesOf is a number of entries in words.
func entriesOf(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}
