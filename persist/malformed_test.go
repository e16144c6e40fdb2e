package persist

import (
	"bytes"
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

var (
	malformed     = flag.Int("malformed", 60, "how many malformed books TestMalformedFiles reads, opens and rescues")
	malformedSeed = flag.Uint64("malformedseed", 20260509, "seed of what is wrong with them")
)

// malform does something to a file that disks, cables and people do.
func malform(r *rand.Rand, b []byte) []byte {
	b = bytes.Clone(b)
	if len(b) == 0 {
		return b
	}
	page := min(os.Getpagesize(), len(b))
	at := func() int { return r.IntN(max(1, len(b)/page)) * page }
	part := func(from int) []byte { return b[from:min(from+page, len(b))] }
	for range 1 + r.IntN(3) {
		switch r.IntN(9) {
		case 0: // a bit
			b[r.IntN(len(b))] ^= 1 << r.IntN(8)
		case 1: // some bytes of rubbish
			from := r.IntN(len(b))
			for i := range b[from:min(from+1+r.IntN(200), len(b))] {
				b[from+i] = byte(r.Uint32())
			}
		case 2: // a page that was never written
			clear(part(at()))
		case 3: // a page in the place of another
			copy(part(at()), bytes.Clone(part(at())))
		case 4: // two pages exchanged
			x, y := part(at()), part(at())
			old := bytes.Clone(x)
			copy(x, y)
			copy(y, old)
		case 5: // cut
			b = b[:1+r.IntN(len(b))]
			page = min(page, len(b))
		case 6: // something behind it
			b = append(b, bytes.Repeat([]byte("{\"v\":1,"), r.IntN(300))...)
		case 7: // a number of one of its pages is another
			p := part(at())
			if n := r.IntN(max(1, len(p)/8)) * 8; n+8 <= len(p) {
				copy(p[n:n+8], []byte{byte(r.IntN(40)), 0, 0, 0, 0, 0, 0, 0})
			}
		case 8: // a piece is missing
			from := r.IntN(len(b))
			b = slices.Delete(b, from, min(from+1+r.IntN(300), len(b)))
			if len(b) == 0 {
				return b
			}
			page = min(page, len(b))
		}
	}
	return b
}

// Books and twins that are malformed in any way, one of them or both: reading,
// opening and rescue never end the program, always leave a way on, and never show an
// entry otherwise than it was kept without saying that it may be changed. With one
// of the two whole nothing is lost.
func TestMalformedFiles(t *testing.T) {
	r := rand.New(rand.NewPCG(*malformedSeed, 2))
	var from [2]string // with sums in the lines, and as they were made before
	var kept, other [2][]entry.Entry
	for i := range from {
		from[i] = filepath.Join(t.TempDir(), "book.db")
		b, _ := open(t, from[i], Options{})
		es := append(lit("a1", "f00d"), notes(smelt, 4, 60)...)
		if i == 0 {
			_, err := b.Import(smelt, es)
			must(t, err)
		} else {
			must(t, b.ImportJSON(Journal{smelt, unsealed(t, smelt, es)}))
		}
		_, err := b.Import(beta, notes(beta, 1, 5))
		must(t, err)
		kept[i], err = b.Entries(smelt)
		must(t, err)
		other[i], err = b.Entries(beta)
		must(t, err)
		shut(t, b)
	}
	var met struct{ said, rescued, lost, doubted, unlit int }
	for n := range *malformed {
		path := filepath.Join(t.TempDir(), "book.db")
		from, sealed := from[n/3%2], n/3%2 == 0
		book, text := read(t, from), read(t, twinOf(from, smelt))
		kept, other := kept[n/3%2], other[n/3%2]
		which := n % 3 // the book, the twin, both
		if which != 1 {
			book = malform(r, book)
		}
		if which != 0 {
			text = malform(r, text)
		}
		must(t, os.CopyFS(twin.Folder(path), os.DirFS(twin.Folder(from))))
		write(t, path, book)
		write(t, twinOf(path, smelt), text)

		// shown fails where an entry is not as it was kept and nobody says so, and counts
		// what is there.
		shown := func(step string, reading Reading, said bool) int {
			es, _ := reading.Entries(smelt)
			doubt := map[uint64]bool{}
			for _, g := range reading.Gaps {
				doubt[g.After] = g.Unsure
			}
			for _, e := range es {
				i := slices.IndexFunc(kept, func(w entry.Entry) bool { return w.Seq == e.Seq })
				if i >= 0 && cmp.Equal(kept[i], e) {
					continue
				}
				last := e.Seq == es[len(es)-1].Seq && reading.alone != nil
				if !said || sealed || !doubt[e.Seq] && !last {
					t.Fatalf("round %d, %s: entry %d is shown changed: %+v; gaps %+v", n, step, e.Seq, e, reading.Gaps)
				}
				met.doubted++
			}
			if len(es) < len(kept) && !said {
				t.Fatalf("round %d, %s: %d of %d entries and nothing is said", n, step, len(es), len(kept))
			}
			if which != 2 && len(es) != len(kept) {
				t.Fatalf("round %d, %s: %d of %d entries with one copy whole", n, step, len(es), len(kept))
			}
			return len(es)
		}
		reader, err := OpenReader(path, Options{Summarise: counted})
		must(t, err)
		reading, err := reader.Read(smelt)
		said := err != nil || len(reader.Faults()) > 0
		if said {
			met.said++
		}
		shown("reading", reading, said)
		if _, err := reader.Summaries(); err != nil && len(reader.Faults()) == 0 {
			t.Fatalf("round %d: the shelf says %v", n, err)
		}

		o, err := Open(path, Options{Summarise: counted})
		if err != nil {
			met.rescued++
			if _, rerr := Rescue(path, Options{}); rerr != nil {
				t.Fatalf("round %d: opening says %v, a rescue %v", n, err, rerr)
			}
			o, err = Open(path, Options{Summarise: counted})
			must(t, err)
		}
		reading, err = o.Read(smelt)
		if err != nil {
			met.unlit++ // nothing of it is left
		}
		met.lost += len(kept) - shown("the book", reading, err != nil || len(reading.Gaps) > 0 || len(o.Mended()) > 0)
		if es, err := o.Entries(beta); err != nil || !cmp.Equal(es, other) {
			t.Fatalf("round %d: the other smelt has %d entries, %v", n, len(es), err)
		}
		last := twin.LastSeq(reading.Lines)
		if next := keep(t, o, note(smelt, 999)); next[0].Seq <= last {
			t.Fatalf("round %d: the next entry is %d after %d", n, next[0].Seq, last)
		}
		shut(t, o)
		if rep, err := Check(path, Options{Summarise: counted}); err != nil || !rep.OK() {
			t.Fatalf("round %d: check afterwards: %v, %v", n, rep.Findings, err)
		}
		must(t, os.RemoveAll(filepath.Dir(path)))
	}
	t.Logf("%d malformed: %d said at reading, %d wanted a rescue; of %d entries %d were lost (both copies hurt), %d smelts whole; %d shown as doubtful",
		*malformed, met.said, met.rescued, *malformed*63, met.lost, met.unlit, met.doubted)
}
