package persist

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// Two books that differ only in the ending have twins of their own, also when
// they were written by a version that let them share a folder.
func TestBooksThatDifferInTheEndingHaveTwinsOfTheirOwn(t *testing.T) {
	for _, shared := range []bool{false, true} {
		dir := t.TempDir()
		anna, ben := filepath.Join(dir, "smelt.anna"), filepath.Join(dir, "smelt.ben")
		want := map[string]map[string][]entry.Entry{}
		for n, path := range []string{anna, ben} {
			b, a := open(t, path, Options{})
			keep(t, b, notes(smelt, 10*n+1, 10*n+9+n)...)
			shut(t, b)
			want[path] = a.kept
		}
		if shared { // the one opened last has its lines in the folder of the old name
			must(t, os.Rename(twin.Folder(ben), filepath.Join(dir, "smelt.twins")))
			must(t, os.Remove(filepath.Join(dir, "smelt.twins", "book")))
			must(t, os.RemoveAll(twin.Folder(anna)))
		}
		for _, path := range []string{anna, ben, anna} {
			b, _ := open(t, path, Options{})
			same(t, b, smelt, want[path][smelt])
			if names, err := b.Streams(); err != nil || len(names) != 1 {
				t.Errorf("%s holds %v, %v", path, names, err)
			}
			want[path][smelt] = append(want[path][smelt], keep(t, b, note(smelt, 100))...)
			shut(t, b)
			whole(t, path)
		}
		if shared && !disk.Exists(filepath.Join(dir, "smelt.twins", smelt+".jsonl")) {
			t.Error("what is not Anna's did not stay")
		}
	}
}

// Another book's twins stand where this one's should: they are left alone, and
// that is said.
func TestTwinsOfAnotherBookAreLeftAlone(t *testing.T) {
	path, other := placeOf(t), filepath.Join(t.TempDir(), "book.db")
	b, a := open(t, path, Options{})
	keep(t, b, notes(smelt, 1, 3)...)
	shut(t, b)
	b, _ = open(t, other, Options{})
	keep(t, b, notes(smelt, 11, 19)...)
	shut(t, b)
	must(t, os.RemoveAll(twin.Folder(path)))
	must(t, os.Rename(twin.Folder(other), twin.Folder(path)))
	before := read(t, twinOf(path, smelt))
	b, _ = open(t, path, Options{})
	if said := strings.Join(b.Mended(), "\n"); !strings.Contains(said, "of another book") {
		t.Errorf("it says %q", said)
	}
	same(t, b, smelt, a.kept[smelt])
	shut(t, b)
	if !bytes.Equal(before, read(t, twinOf(path, smelt))) {
		t.Error("the other book's twin was touched")
	}
}

// One book was carried on at two machines and is put together: both are kept.
func TestABookCarriedOnAtTwoMachines(t *testing.T) {
	path := placeOf(t)
	b, _ := open(t, path, Options{})
	keep(t, b, notes(smelt, 1, 5)...)
	shut(t, b)
	elsewhere := filepath.Join(t.TempDir(), "book.db")
	must(t, os.CopyFS(filepath.Dir(elsewhere), os.DirFS(filepath.Dir(path))))
	kept := map[string][]entry.Entry{}
	for n, p := range []string{path, elsewhere} {
		b, _ := open(t, p, Options{})
		keep(t, b, notes(smelt, 100*n+6, 100*n+8+n)...)
		es, err := b.Entries(smelt)
		must(t, err)
		kept[p] = es
		shut(t, b)
	}
	write(t, twinOf(path, smelt), read(t, twinOf(elsewhere, smelt)))
	b, _ = open(t, path, Options{})
	if said := strings.Join(b.Mended(), "\n"); !strings.Contains(said, "carried on apart") || !strings.Contains(said, smelt+"-2") {
		t.Errorf("it says %q", said)
	}
	same(t, b, smelt, kept[path])
	theirs := kept[elsewhere]
	for i := range theirs {
		theirs[i].Stream = smelt + "-2"
	}
	same(t, b, smelt+"-2", theirs)
	same(t, b, smelt+"-2", append(theirs, keep(t, b, note(smelt+"-2", 900))...))
	keep(t, b, note(smelt, 901))
	shut(t, b)
	b, _ = open(t, path, Options{})
	if said := b.Mended(); len(said) > 0 {
		t.Errorf("the next opening says %q", said)
	}
	if names, _ := b.Streams(); len(names) != 2 {
		t.Errorf("it holds %v", names)
	}
}

// A folder stands where the house's twin should: the smelt is kept as before, and
// the house's is written anew, which is said.
func TestATwinThatCannotBeReadStopsNoOther(t *testing.T) {
	path := placeOf(t)
	b, first := open(t, path, Options{})
	keep(t, b, notes(entry.House, 1, 3)...)
	keep(t, b, notes(smelt, 1, 3)...)
	shut(t, b)
	must(t, os.Remove(twinOf(path, entry.House)))
	must(t, os.Mkdir(twinOf(path, entry.House), 0o700))
	b, a := open(t, path, Options{})
	for s, es := range first.kept {
		a.kept[s] = es
	}
	keep(t, b, note(smelt, 4), note(entry.House, 4), note(smelt, 5))
	if said := strings.Join(b.Mended(), "\n"); !strings.Contains(said, "house: its twin was written anew") {
		t.Errorf("it says %q", said)
	}
	for _, k := range a.list() {
		if isNotKept(k) {
			t.Errorf("it said %v", k.Err)
		}
	}
	shut(t, b)
	foundAgain(t, path, a)
	if aside, err := os.Stat(twinOf(path, entry.House) + ".aside-1"); err != nil || !aside.IsDir() {
		t.Errorf("the folder was not set aside: %v", err)
	}
}

// One damaged entry without a twin is a gap: all others are shown, keeping goes
// on after the highest, and the gap stays said.
func TestADamagedEntryIsAGap(t *testing.T) {
	path := placeOf(t)
	b, a := open(t, path, Options{})
	keep(t, b, notes(smelt, 1, 37)...)
	shut(t, b)
	must(t, os.RemoveAll(twin.Folder(path)))
	write(t, path, bytes.ReplaceAll(read(t, path), []byte("note 8\""), []byte("note 9\"")))
	r, err := OpenReader(path, Options{})
	must(t, err)
	reading, err := r.Read(smelt)
	if err != nil || len(reading.Lines) != 36 || len(reading.Gaps) != 1 || reading.Gaps[0].After != 7 || reading.Gaps[0].Before != 9 || len(r.Faults()) == 0 {
		t.Fatalf("%d lines, gaps %v, said %q, %v", len(reading.Lines), reading.Gaps, r.Faults(), err)
	}
	b, _ = open(t, path, Options{})
	es, err := b.Entries(smelt)
	if err != nil || len(es) != 36 {
		t.Fatalf("%d entries, %v", len(es), err)
	}
	if got := keep(t, b, note(smelt, 38)); got[0].Seq != 38 {
		t.Errorf("the next is %d", got[0].Seq)
	}
	shut(t, b)
	aside := twinOf(path, smelt) + disk.AsideExt + "1"
	if !disk.Exists(aside) {
		t.Error("what the book had is not set aside")
	}
	b, _ = open(t, path, Options{})
	if said := b.Mended(); len(said) > 0 {
		t.Errorf("the next opening says %q", said)
	}
	reading, err = b.Read(smelt)
	if err != nil || len(reading.Gaps) != 1 || len(reading.Lines) != 37 || reading.Fault != nil {
		t.Errorf("%d lines, gaps %v, %v, %v", len(reading.Lines), reading.Gaps, reading.Fault, err)
	}
	lines := bytes.Split(bytes.TrimSpace(read(t, aside)), []byte("\n"))
	if name, _, err := b.Take(smelt, lines); !errors.As(err, new(*PresentError)) {
		t.Errorf("what is there already was taken in as %s, %v", name, err)
	}
	other, _ := open(t, placeOf(t), Options{})
	keep(t, other, note(smelt, 1))
	name, taken, err := other.Take(smelt, lines)
	if err != nil || name != smelt+"-2" || len(taken.Lines) != 36 || len(taken.Gaps) != 1 {
		t.Errorf("taken in as %s with %d lines, gaps %v, %v", name, len(taken.Lines), taken.Gaps, err)
	}
	for _, e := range a.kept[smelt] {
		e.Stream = name
		es, err := other.Entries(name)
		if i := slices.IndexFunc(es, func(o entry.Entry) bool { return o.Seq == e.Seq }); err != nil || i < 0 && e.Seq != 8 || i >= 0 && !cmp.Equal(es[i], e) {
			t.Errorf("entry %d was taken in otherwise, %v", e.Seq, err)
		}
	}
}

// The end of a stream is lost in both copies, and somebody goes on: what was keyed
// since stands behind the gap whatever happens to one of the copies afterwards.
func TestWhatIsKeptBehindALostEndStays(t *testing.T) {
	for name, left := range map[string]int{"some": 8, "nothing": 0} {
		for harmed, harm := range map[string]func(t *testing.T, path string){
			"twin cut": func(t *testing.T, path string) {
				text := read(t, twinOf(path, smelt))
				write(t, twinOf(path, smelt), text[:len(text)-9])
			},
			"twin gone": func(t *testing.T, path string) { must(t, os.RemoveAll(twin.Folder(path))) },
			"book gone": func(t *testing.T, path string) { must(t, os.Remove(path)) },
			"book changed": func(t *testing.T, path string) {
				write(t, path, bytes.ReplaceAll(read(t, path), []byte("note 101"), []byte("note 191")))
			},
		} {
			for kept := 1; kept <= 2; kept++ {
				t.Run(fmt.Sprintf("%s left, %s, %d kept", name, harmed, kept), func(t *testing.T) {
					path := placeOf(t)
					b, _ := open(t, path, Options{})
					keep(t, b, notes(smelt, 1, 10)...)
					keep(t, b, note(beta, 1))
					shut(t, b)
					lines := twinLinesOf(t, path)
					write(t, twinOf(path, smelt), bytes.Join(lines[:left], nil))
					mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) (err error) {
						for seq := left + 1; seq <= 10; seq++ {
							err = errors.Join(err, b.Delete(seqKey(uint64(seq))))
						}
						return err
					})
					b, _ = open(t, path, Options{})
					want, err := b.Entries(smelt)
					if left > 0 {
						must(t, err)
					}
					if got := keep(t, b, notes(smelt, 101, 100+kept)...); got[0].Seq != 11 {
						t.Errorf("the next is %d", got[0].Seq)
					} else {
						want = append(want, got...)
					}
					shut(t, b)
					harm(t, path)
					b, _ = open(t, path, Options{})
					same(t, b, smelt, want)
					shut(t, b)
				})
			}
		}
	}
}
