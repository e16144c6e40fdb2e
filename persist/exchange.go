package persist

import (
	"bytes"
	"errors"
	"io"

	"chargehand/model/entry"
	"chargehand/model/words"
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

// LinesOf gives entries that are in no book as lines of a journal: numbered and chained
// as they stand.
func LinesOf(entries []entry.Entry) ([][]byte, error) {
	var lines [][]byte
	for i, e := range entries {
		if e.Seq, e.Prev = uint64(i+1), ""; i > 0 {
			e.Prev = twin.HashOf(lines[i-1])
		}
		line, err := entry.Encode(e)
		if err != nil {
			return nil, err
		}
		lines = append(lines, twin.Sealed(line))
	}
	return lines, nil
}

// maxJournal bounds, in bytes, a journal that is read: a smelt of a year with a
// reading each minute has a third of it.
const maxJournal = 512 << 20

// ReadJSON reads what ExportJSON wrote, and checks name, sequence and chain. A
// *twin.LineError names the first bad line.
func ReadJSON(r io.Reader) (Journal, error) {
	name := "the file"
	if n, ok := r.(interface{ Name() string }); ok {
		name = n.Name()
	}
	within := &io.LimitedReader{R: r, N: maxJournal}
	lines, torn, err := twin.ReadLines(within)
	if err != nil && !errors.Is(err, twin.ErrLong) {
		return Journal{}, err
	}
	bad := func(line int, what string) (Journal, error) {
		return Journal{}, &twin.LineError{File: name, Line: line, Seq: uint64(line), What: what}
	}
	switch {
	case err != nil:
		return bad(len(lines)+1, err.Error())
	case within.N == 0:
		return bad(len(lines)+1, words.JournalLong(maxJournal))
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
			err = entry.CheckKept(e.Event)
		}
		if err != nil {
			return bad(i+1, err.Error())
		}
	}
	return Journal{Stream: first.Stream, Lines: lines}, nil
}
