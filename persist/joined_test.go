package persist

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

// aloneTwin makes a book whose file is rubbish and whose summaries are gone: there is
// but the twin, of lines with a sum or of those made before there was one.
func aloneTwin(t *testing.T, sealed bool) (path string, lines [][]byte) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "book.db")
	b, _ := open(t, path, Options{})
	if sealed {
		keep(t, b, notes(smelt, 1, 10)...)
	} else {
		must(t, b.ImportJSON(Journal{smelt, unsealed(t, smelt, notes(smelt, 1, 10))}))
	}
	shut(t, b)
	write(t, path, make([]byte, 1<<15))
	must(t, os.Remove(twin.SummaryFile(twin.Folder(path), smelt)))
	return path, bytes.SplitAfter(read(t, twinOf(path, smelt)), []byte("\n"))
}

// unsealed makes the lines of a stream as the first version did.
func unsealed(t *testing.T, stream string, es []entry.Entry) (lines [][]byte) {
	t.Helper()
	for i, e := range es {
		e.Version, e.Stream, e.Seq, e.Prev, e.Kept = entry.Version, stream, uint64(i+1), twin.HeadOf(lines), noon
		line, err := entry.Encode(e)
		must(t, err)
		lines = append(lines, line)
	}
	return lines
}

// A piece that is missing from a twin makes one line of its last two, which reads as an
// entry that nobody keyed.
func TestTheLastTwoLinesBecomeOne(t *testing.T) {
	path, lines := aloneTwin(t, true)
	cut := bytes.Index(lines[8], []byte(`{"text":"`)) + len(`{"text":"`)
	end := bytes.Index(lines[9], []byte(`"},"sum":"`))
	joined := append(bytes.Join(lines[:8], nil), lines[8][:cut]...)
	write(t, twinOf(path, smelt), append(joined, lines[9][end:]...))

	r, err := OpenReader(path, Options{Summarise: counted})
	must(t, err)
	reading, _ := r.Read(smelt)
	if len(reading.Lines) != 8 || len(r.Faults()) < 2 {
		t.Fatalf("%d lines, faults %v", len(reading.Lines), r.Faults())
	}
}

// The last line of a twin that stands alone was changed: it is left out, and that is
// said. Of one that has no sum yet nobody can tell, and that is said too.
func TestTheLastLineOfATwinThatStandsAlone(t *testing.T) {
	for _, c := range []struct {
		name           string
		sealed, change bool
		shown          int
		says           string
	}{
		{"whole", true, false, 10, ""},
		{"changed", true, true, 9, "its sum does not agree"},
		{"whole, made before there were sums", false, false, 10, "entry 10, the last, is shown as it reads"},
		{"changed, made before there were sums", false, true, 10, "entry 10, the last, is shown as it reads"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path, lines := aloneTwin(t, c.sealed)
			if c.change {
				lines[9] = bytes.Replace(lines[9], []byte("note 10"), []byte("note 99"), 1)
				write(t, twinOf(path, smelt), bytes.Join(lines, nil))
			}
			r, err := OpenReader(path, Options{Summarise: counted})
			must(t, err)
			reading, err := r.Read(smelt)
			must(t, err)
			if said := strings.Join(r.Faults(), "\n"); len(reading.Lines) != c.shown || !strings.Contains(said, c.says) || c.says == "" && strings.Contains(said, smelt) {
				t.Errorf("%d lines, said %q", len(reading.Lines), said)
			}
			rep, err := Check(path, Options{Summarise: counted})
			must(t, err)
			if found := rep.Findings; c.says != "" && (len(found) != 2 || !strings.Contains(found[1].What, c.says)) {
				t.Errorf("check finds %v", found)
			}
			b, _ := open(t, path, Options{})
			if said := strings.Join(b.Mended(), "\n"); !strings.Contains(said, c.says) && c.shown == 10 {
				t.Errorf("opening says %q", said)
			}
			if es, err := b.Entries(smelt); err != nil || len(es) != c.shown {
				t.Errorf("%d entries, %v", len(es), err)
			}
			shut(t, b)
			b, _ = open(t, path, Options{})
			if said := b.Mended(); len(said) > 0 {
				t.Errorf("the next opening says %q", said)
			}
			shut(t, b)
			whole(t, path)
		})
	}
}
