package persist

import (
	"bytes"
	"path/filepath"
	"testing"
)

// A piece that is missing from a twin makes one line of its last two, which reads as an
// entry that nobody keyed. Where the book is hurt too, the head that stands in the summary
// still tells that it may be changed.
func TestTheLastTwoLinesBecomeOne(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.db")
	b, _ := open(t, path, Options{Summarise: counted})
	keep(t, b, notes(smelt, 1, 10)...)
	shut(t, b)
	write(t, path, make([]byte, 1<<15))
	lines := bytes.SplitAfter(read(t, twinOf(path, smelt)), []byte("\n"))
	end := []byte(`"}}` + "\n")
	cut := bytes.Index(lines[8], []byte(`{"text":"`)) + len(`{"text":"`)
	joined := append(bytes.Join(lines[:8], nil), lines[8][:cut]...)
	write(t, twinOf(path, smelt), append(joined, lines[9][bytes.LastIndex(lines[9], end):]...))

	r, err := OpenReader(path, Options{Summarise: counted})
	must(t, err)
	reading, _ := r.Read(smelt)
	if len(reading.Lines) != 9 || len(r.Faults()) == 0 {
		t.Fatalf("%d lines, faults %v", len(reading.Lines), r.Faults())
	}
	if gaps := reading.Gaps; len(gaps) != 1 || gaps[0].After != 9 || !gaps[0].Unsure {
		t.Errorf("the last entry is not what was kept, and the gaps are %+v", gaps)
	}
}
