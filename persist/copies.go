package persist

import (
	"maps"
	"os"
	"slices"
	"strconv"

	"chargehand/model/words"
	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// copies is what there is of one stream.
type copies struct {
	record boltfile.Record
	book   [][]byte // what the book has, whatever it is
	text   twin.Text
	more   [][]byte          // what was found in other files
	rest   [][]byte          // what was found in the twin where its lines cannot be followed
	heads  map[string]uint64 // hashes that were counted as those of last lines, with their sequences where these are known
}

// whole tells whether the book's lines are a chain with the head that was
// counted, and lack nothing but what is known to be lost. If not, it says what is
// wrong.
func (c copies) whole(stream string) (gaps []twin.Gap, fault error) {
	n, why, gaps := twin.WholeChain(stream, c.book)
	seq := twin.LastSeq(c.book[:n])
	switch {
	case why != "":
		seq++
	case c.record.Length == 0 && len(c.book) > 0:
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

// alike tells whether the twin has what the book has, and nothing is wrong with it.
func (c copies) alike() bool {
	return len(c.text.Lines) == len(c.book) && twin.SamePrefix(c.text.Lines, c.book) == len(c.book) &&
		c.text.Unread == nil && c.text.Fault == "" && len(c.text.Torn) == 0
}

// beyond looks where the lines of the twin cannot be followed any more, and for a
// head where the book has none.
func (c *copies) beyond(folder, stream string) error {
	found := salvaged{map[string][][]byte{}, maps.Clone(c.heads)}
	if found.heads == nil {
		found.heads = map[string]uint64{}
	}
	if c.text.Fault != "" {
		if err := found.search(c.text.File); err != nil {
			return err
		}
	}
	if b, err := os.ReadFile(twin.SummaryFile(folder, stream)); err == nil && c.record.Head == "" {
		if rec, ok := boltfile.ReadRecord(b); ok && rec.Head != "" {
			found.heads[rec.Head] = rec.Length
		}
	}
	c.rest, c.heads = found.lines[stream], found.heads
	return nil
}

// join puts together what all of them have.
func (c copies) join(stream string) twin.Union {
	pool := twin.Pool{}
	pool.Add(stream, twin.InBook, c.book...)
	pool.Add(stream, twin.InBook, c.more...)
	pool.Add(stream, twin.InTwin, c.text.Lines...)
	pool.Add(stream, twin.InTwin, c.rest...)
	pool.Add(stream, twin.InTwin, c.text.Torn)
	heads := map[string]uint64{}
	maps.Copy(heads, c.heads)
	if c.record.Head != "" {
		heads[c.record.Head] = c.record.Length
	}
	for _, g := range c.record.Gaps {
		if g.Head != "" && !g.Unsure {
			heads[g.Head] = g.After
		}
	}
	return pool.Join(heads)
}

// secondName is what a second chain of a stream is called.
func secondName(name string, taken []string) string {
	for n := 2; ; n++ {
		if second := name + "-" + strconv.Itoa(n); !slices.Contains(taken, second) {
			return second
		}
	}
}
