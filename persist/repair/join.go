package repair

import (
	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// Copies is what the two places have of one stream.
type Copies struct {
	Record boltfile.Record
	Book   [][]byte // what the book has, whatever it is
	Text   twin.Text
}

// Whole tells whether the book's lines are a chain with the head that was
// counted, and lack nothing but what is known to be lost. If not, it says what is
// wrong.
func (c Copies) Whole(stream string) (gaps []twin.Gap, fault error) {
	n, why, gaps := twin.WholeChain(stream, c.Book)
	seq := twin.LastSeq(c.Book[:n])
	switch {
	case why != "":
		seq++
	case c.Record.Length == 0 && len(c.Book) > 0:
		why = words.FoundNoCount
	case !c.Record.Speaks(c.Book) && c.Record.Length != seq:
		why = words.FoundCount(len(c.Book), c.Record.Length)
	case !c.Record.Speaks(c.Book):
		why = words.FoundLast
	case !c.Record.Knows(gaps):
		why, seq = words.LineMissing, gaps[0].After+1
	default:
		return c.Record.Gaps, nil
	}
	return gaps, &twin.LineError{Stream: stream, Seq: seq, What: why}
}

// Join puts together what both places have, and more lines of a damaged file.
func (c Copies) Join(stream string, heads map[string]uint64, more ...[]byte) twin.Union {
	pool := twin.Pool{}
	pool.Add(stream, twin.InBook, c.Book...)
	pool.Add(stream, twin.InBook, more...)
	pool.Add(stream, twin.InTwin, c.Text.Lines...)
	pool.Add(stream, twin.InTwin, c.Text.Torn)
	all := map[string]uint64{}
	for h := range heads {
		all[h] = heads[h]
	}
	if c.Record.Head != "" {
		all[c.Record.Head] = c.Record.Length
	}
	for _, g := range c.Record.Gaps {
		if g.Head != "" && !g.Unsure {
			all[g.Head] = g.After
		}
	}
	return pool.Join(all)
}
