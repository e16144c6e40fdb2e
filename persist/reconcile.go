package persist

import (
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// reconcile makes the book and the twin of a stream say the same. Of the two,
// the longer whole chain wins, and the book where they are equally long (unless
// its own record of the last line speaks for the twin). What
// one lacks is added to it; what contradicts the winner is set aside. It gives
// the twin ready for appending, the stream's record and lines, and one sentence for
// each thing that was put right.
func reconcile(s store, stream string) (*twin.Twin, boltfile.Record, [][]byte, []string, error) {
	var book [][]byte
	var rec boltfile.Record
	var gap error
	if err := s.at(stream).Follow(stream); err != nil {
		return nil, rec, nil, nil, err
	}
	err := s.at(stream).View(func(tx boltfile.Tx) (err error) {
		if rec, err = tx.Record(stream); err != nil {
			return err
		}
		book, err = tx.Lines(stream)
		if _, isGap := err.(*LineError); isGap {
			gap, err = err, nil
		}
		return err
	})
	if err != nil {
		return nil, rec, nil, nil, err
	}
	text, err := twin.Read(s.folder, stream)
	if err != nil {
		return nil, rec, nil, nil, err
	}

	var mended []string
	say := func(said string) { mended = append(mended, words.OfStream(stream, said)) }
	same := twin.SamePrefix(book, text.Lines)
	agreed := rec.Length == uint64(len(book)) && rec.Head == twin.HeadOf(book) && gap == nil
	bookWhole, twinWhole := len(book), len(text.Lines)
	if !agreed || same < max(bookWhole, twinWhole) {
		bookWhole, _ = twin.WholeChain(stream, book)
		twinWhole, _ = twin.WholeChain(stream, text.Lines)
		if bookWhole == twinWhole && rec.Head != twin.HeadOf(book[:bookWhole]) && rec.Head == twin.HeadOf(text.Lines[:twinWhole]) {
			bookWhole-- // no link follows the last line; what was counted vouches for the twin's
		}
	}

	lines := book
	switch {
	case twinWhole > bookWhole:
		lines = text.Lines[:twinWhole]
		if same == len(book) && gap == nil {
			say(words.MendedFromTwin(twinWhole - same))
			err = s.putTail(stream, same, lines)
		} else {
			say(words.MendedByTwin(same+1, twinWhole))
			err = s.replaceStream(stream, lines)
		}
	case bookWhole < len(book) || gap != nil:
		// Neither has a whole chain beyond here. The rest is set aside too, for
		// no later line could be linked to it.
		lines = book[:bookWhole]
		say(words.MendedCut(bookWhole + 1))
		err = s.replaceStream(stream, lines)
	case !agreed:
		say(words.MendedCount(len(book), rec.Length))
		err = s.putTail(stream, len(book), lines)
	}
	if err != nil {
		return nil, rec, nil, mended, err
	}
	t, err := twin.Mend(s.folder, stream, text, lines, s.openTwin, say)
	if err != nil {
		return nil, rec, nil, mended, err
	}
	rec, err = s.at(stream).Record(stream)
	return t, rec, lines, mended, err
}
