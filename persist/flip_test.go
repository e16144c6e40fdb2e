package persist

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

// ordinaryStep is how many bytes an ordinary run goes on by.
const ordinaryStep = 97

var (
	flipStep = flag.Int("flipstep", ordinaryStep, "TestAFlippedByte flips each so-many-th byte of book and twin; 1 is every byte")
	flipFrom = flag.Int("flipfrom", 0, "first byte that TestAFlippedByte flips")
	flipTo   = flag.Int("flipto", 0, "byte before which it ends; 0 is the end of the file")
)

// flipped is what was met while one byte after the other was flipped.
type flipped struct{ tried, unseen, said, gaps, made int }

// eachFlip flips the bytes of a file in turn, each in one bit that goes with its
// place, and puts the file back.
func eachFlip(t *testing.T, file string, f func(at int)) {
	text := read(t, file)
	step, end := *flipStep, len(text)
	if *flipTo > 0 {
		end = min(end, *flipTo)
	}
	for at := *flipFrom; at < end; at += step {
		if step == 1 && at%4096 == 0 {
			t.Logf("byte %d of %d", at, len(text))
		}
		bad := bytes.Clone(text)
		bad[at] ^= 1 << (at / step % 8)
		write(t, file, bad)
		f(at)
		if t.Failed() {
			t.Fatalf("byte %d of %d", at, len(text))
		}
	}
	write(t, file, text)
}

// pagesInUse tells which pages of a closed book hold something, by bbolt's own list.
func pagesInUse(t *testing.T, path string) map[int]bool {
	t.Helper()
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true, PreLoadFreelist: true})
	must(t, err)
	defer db.Close()
	used := map[int]bool{}
	must(t, db.View(func(tx *bolt.Tx) error {
		for id := 0; ; id++ {
			p, err := tx.Page(id)
			if p == nil || err != nil {
				return err
			}
			if p.Type != "free" {
				used[id] = true
			}
		}
	}))
	return used
}

// neverChanged fails when an entry is shown otherwise than it was kept, or one is
// not shown and nothing is said.
func neverChanged(t *testing.T, got, want []entry.Entry, said bool) {
	t.Helper()
	for _, e := range got {
		i := slices.IndexFunc(want, func(w entry.Entry) bool { return w.Seq == e.Seq })
		if i < 0 || !cmp.Equal(want[i], e) {
			t.Errorf("entry %d is shown changed: %+v", e.Seq, e)
		}
	}
	if len(got) != len(want) && !said {
		t.Errorf("%d of %d entries are shown and nothing is said", len(got), len(want))
	}
}

// Every byte of a book of one smelt is flipped, with twins, without, and in the
// twin beside a whole book: no changed entry is ever shown, none is missing without
// a word, with a twin none is missing at all, and there is always a way on.
func TestAFlippedByte(t *testing.T) {
	for name, c := range map[string]struct{ twins, inTwin bool }{"book": {twins: true}, "book without twins": {}, "twin": {true, true}} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			from := filepath.Join(t.TempDir(), "book.db")
			b, _ := open(t, from, Options{})
			kept, err := b.Import(smelt, append(lit("a1", "f00d"), notes(smelt, 4, 24)...))
			must(t, err)
			shut(t, b)
			if !c.twins {
				must(t, os.RemoveAll(twin.Folder(from)))
			}
			used := pagesInUse(t, from)
			file := from
			if c.inTwin {
				file = twinOf(from, smelt)
			}
			var met flipped
			eachFlip(t, file, func(at int) {
				met.tried++
				r, err := OpenReader(from, Options{Summarise: counted})
				must(t, err)
				reading, err := r.Read(smelt)
				if err != nil && c.twins {
					t.Errorf("reading says %v", err)
				}
				es, _ := twin.DecodeAll(smelt, "", reading.Lines)
				neverChanged(t, es, kept, err != nil || len(r.Faults()) > 0)
				if sums, err := r.Summaries(); err == nil && len(sums) == 1 && len(r.Faults()) == 0 && sums[0].Charges != 1 {
					t.Errorf("the shelf shows %+v and nothing is said", sums)
				}
				if err != nil || len(r.Faults()) > 0 {
					met.said++
				} else {
					met.unseen++
				}

				// The way on, in a folder of its own. Where nothing was seen a short run
				// leaves out most of them, a long one most of those in pages that are not
				// in use.
				if (*flipStep == ordinaryStep || !c.inTwin && !used[at/os.Getpagesize()]) && err == nil && len(r.Faults()) == 0 && met.tried%16 != 0 {
					return
				}
				path := filepath.Join(t.TempDir(), "book.db")
				write(t, path, read(t, from))
				if c.twins {
					must(t, os.CopyFS(twin.Folder(path), os.DirFS(twin.Folder(from))))
				}
				b, err := Open(path, Options{Summarise: counted})
				if err != nil {
					if _, rerr := Rescue(path, Options{}); rerr != nil {
						t.Fatalf("opening says %v, a rescue %v", err, rerr)
					}
					met.made++
					b, err = Open(path, Options{Summarise: counted})
					must(t, err)
				}
				reading, err = b.Read(smelt)
				if err != nil && c.twins {
					t.Errorf("the book reads %v", err)
				}
				if len(reading.Gaps) > 0 {
					met.gaps++
				}
				es, _ = twin.DecodeAll(smelt, "", reading.Lines)
				neverChanged(t, es, kept, len(b.Mended()) > 0 || met.made > 0 || len(reading.Gaps) > 0)
				if c.twins && len(es) != len(kept) {
					t.Errorf("%d of %d entries are in the book", len(es), len(kept))
				}
				last := twin.LastSeq(reading.Lines)
				if next := keep(t, b, note(smelt, 999)); next[0].Seq <= last {
					t.Errorf("the next entry is %d after %d", next[0].Seq, last)
				}
				shut(t, b)
				os.RemoveAll(filepath.Dir(path))
			})
			t.Logf("%d pages in use; %d bytes flipped: %d said, %d touched nothing that is read, %d left a gap, %d wanted a rescue", len(used), met.tried, met.said, met.unseen, met.gaps, met.made)
		})
	}
}
