package persist

import (
	"cmp"
	"errors"
	"maps"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// copies is what there is of one stream.
type copies struct {
	record boltfile.Record
	book   [][]byte // what the newest book that has it has, whatever it is
	own    bool     // it is the one that is written to
	gaps   []twin.Gap
	fault  error // what is wrong with the book's lines, as inBook says; nil when they are whole
	text   twin.Text
	more   [][]byte          // what other books have, and what was found in other files
	heads  map[string]uint64 // hashes that were counted as those of last lines in other files
}

// gather reads all that there is of a stream. The error is that of the book that is
// written to: of the others and the twin what can be read is there.
func (s store) gather(stream string) (c copies, broken error) {
	for i, b := range s.books() {
		rec, lines, err := b.Stream(stream)
		switch {
		case err != nil && i == 0:
			broken = err
		case c.record.Length > 0 || len(c.book) > 0:
			c.more = append(c.more, lines...)
		case err == nil:
			c.record, c.book, c.own = rec, lines, i == 0
		}
	}
	c.gaps, c.fault = c.inBook(stream)
	c.text = twin.Read(s.folder, stream)
	c.more = append(append(c.more, c.text.Beyond...), s.found[stream]...)
	c.heads = map[string]uint64{}
	if c.record.Head == "" { // the summary beside the twin has counted too
		if n, ok := s.noted(stream); ok && n.Head != "" {
			c.heads[n.Head] = n.Length
		}
	}
	return c, broken
}

// inBook tells whether the book's lines are a chain with the head that was counted,
// and lack nothing but what is known to be lost. If not, it says what is wrong.
func (c copies) inBook(stream string) (gaps []twin.Gap, fault error) {
	n, why, gaps := twin.WholeChain(stream, c.book)
	seq := twin.LastSeq(c.book[:n])
	switch {
	case len(c.book) == 0:
		return c.record.Gaps, nil
	case why != "":
		seq++
	case c.record.Length == 0:
		why = words.FoundNoCount
	case !c.record.Speaks(c.book) && c.record.Length != seq:
		why = words.FoundCount(len(c.book), c.record.Length)
	case !c.record.Speaks(c.book):
		why = words.FoundLast
	case !c.record.Knows(gaps):
		why, seq = words.LineMissing, gaps[0].After+1
	default:
		return c.record.Gaps, nil
	}
	return gaps, &twin.LineError{Stream: stream, Seq: seq, What: why}
}

// inTwin says what the twin lacks of the book's lines, or has besides; nil when both
// are the same.
func (c copies) inTwin() error {
	lines, text := c.book, c.text
	same := twin.SamePrefix(lines, text.Lines)
	e := &twin.LineError{File: text.File, Stream: text.Stream, Seq: twin.LastSeq(lines[:same]) + 1}
	switch {
	case text.Unread != nil:
		e.Seq, e.What = 0, text.Unread.Error()
	case same < len(text.Lines):
		e.Line, e.What = same+1, words.FoundNotHere
	case text.Fault != "":
		e.Line, e.What = len(text.Lines)+1, text.Fault
	case same < len(lines):
		e.What = words.FoundBehind(len(lines) - same)
	case len(text.Torn) > 0:
		e.What = words.FoundTorn
	default:
		return nil
	}
	return e
}

// settled tells whether the book's lines are whole and the twin has none but the
// first of them.
func (c copies) settled() bool {
	return c.fault == nil && twin.SamePrefix(c.book, c.text.Lines) == len(c.text.Lines) && len(c.more) == 0 &&
		c.text.Fault == "" && c.text.Unread == nil
}

// judge says what the copies come to. Where the book's lines are whole and the twin has
// nothing else, that is all; else they are joined by their links.
func (c copies) judge(stream string) (r Reading) {
	if len(c.book) > 0 && c.settled() {
		r.Lines, r.Gaps = c.book, c.gaps
		return r
	}
	if len(c.book) == 0 {
		r.file = twin.TextFile("", stream)
	}
	r.Fault = cmp.Or(c.fault, c.text.Wrong(stream))
	heads, pool := map[string]uint64{}, twin.Pool{}
	maps.Copy(heads, c.heads)
	if c.record.Head != "" {
		heads[c.record.Head] = c.record.Length
	}
	for _, g := range c.record.Gaps {
		if g.Head != "" && !g.Unsure {
			heads[g.Head] = g.After
		}
	}
	pool.Add(stream, c.book...)
	pool.Add(stream, c.more...)
	pool.Add(stream, c.text.Lines...)
	pool.Add(stream, c.text.Torn)
	r.Union = pool.Join(heads)
	if twin.Alone(r.Lines, heads) {
		r.alone = errors.New(words.LineAlone(twin.LastSeq(r.Lines)))
	}
	return r
}
