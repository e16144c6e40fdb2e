package persist

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/boltfile"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// flushOnce is a commit whose n-th, counted over all books of a test,
// reach the file and then fail to be flushed.
type flushOnce struct {
	boltfile.Commit
	n    *int
	fail map[int]bool
}

func (v flushOnce) do(f func(*bolt.Tx) error) error {
	*v.n++
	n := *v.n
	if err := v.Commit(f); err != nil {
		return err
	}
	if v.fail[n] {
		return syscall.EIO
	}
	return nil
}

func failing(commits ...int) Options {
	n, fail := 0, map[int]bool{}
	for _, c := range commits {
		fail[c] = true
	}
	return Options{wrapCommit: func(c boltfile.Commit) boltfile.Commit { return flushOnce{c, &n, fail}.do }}
}

// After a failed flush a new book takes over at once: the same entry is called kept,
// nothing is ever NOT kept, and what was not in use comes into it in pauses, or at the
// next opening.
func TestANewBookTakesOverAtOnce(t *testing.T) {
	const other = "2026-06-01-reedhollow-b"
	for name, opt := range map[string]Options{"one": failing(3), "two": failing(3, 6), "it fails too": failing(3, 4)} {
		t.Run(name, func(t *testing.T) {
			path := placeOf(t)
			b, a := open(t, path, opt)
			keep(t, b, notes(other, 1, 2)...)
			keep(t, b, notes(smelt, 1, 3)...)
			if _, err := keepNow(b, note(smelt, 4)); (err != nil) != (name == "it fails too") {
				t.Fatal(err)
			}
			keep(t, b, note(smelt, 5))
			keep(t, b, notes(other, 6, 7)...)
			keep(t, b, note(entry.House, 8))
			for s, want := range a.kept {
				same(t, b, s, want)
			}
			if _, err := b.Import("2026-07-01-reedhollow-c", notes("x", 1, 3)); err != nil {
				t.Error(err)
			}
			if aside := path + disk.AsideExt + "1"; !disk.Exists(aside) || !strings.Contains(strings.Join(b.Mended(), ""), aside) {
				t.Errorf("it says %v", b.Mended())
			}
			r, err := OpenReader(path, Options{})
			if err != nil {
				t.Fatal(err)
			}
			same(t, r, smelt, a.kept[smelt])
			shut(t, b)
			same(t, r, smelt, a.kept[smelt])
			same(t, r, other, a.kept[other])
			b, _ = open(t, path, Options{})
			for s, want := range a.kept {
				same(t, b, s, want)
			}
			if es, err := b.Entries("2026-07-01-reedhollow-c"); err != nil || len(es) != 3 {
				t.Errorf("%d imported, %v", len(es), err)
			}
			if got := keep(t, b, note(smelt, 9)); got[0].Seq != uint64(len(a.kept[smelt])+1) {
				t.Errorf("numbered %d", got[0].Seq)
			}
		})
	}
}

// The power goes after the take-over and before the old book's last commit has
// reached the disk: its file is as it was, or worse.
func TestNothingIsLostWhenTheUnflushedBookIsGone(t *testing.T) {
	for name, harm := range map[string]func(t *testing.T, path string, before []byte){
		"as it was":  func(t *testing.T, path string, before []byte) { write(t, path, before) },
		"cut":        func(t *testing.T, path string, before []byte) { write(t, path, before[:len(before)/2]) },
		"gone":       func(t *testing.T, path string, _ []byte) { os.Remove(path) },
		"twins gone": func(t *testing.T, path string, _ []byte) { os.RemoveAll(twin.Folder(path)) },
		"old gone":   func(t *testing.T, path string, _ []byte) { os.Remove(path + disk.AsideExt + "1") },
	} {
		t.Run(name, func(t *testing.T) {
			path := placeOf(t)
			b, a := open(t, path, failing(2))
			keep(t, b, notes(smelt, 1, 3)...)
			before := read(t, path)
			for n := 4; n < 9; n++ {
				keep(t, b, note(smelt, n))
			}
			shut(t, b)
			harm(t, path, before)
			b, _ = open(t, path, Options{})
			same(t, b, smelt, a.kept[smelt])
		})
	}
}

// While no new book can be begun either, entries are held; once one can, they
// are kept.
func TestTakeOverIsTriedAgain(t *testing.T) {
	f := &faults{}
	path := placeOf(t)
	b, a := open(t, path, f.options())
	keep(t, b, note(smelt, 1))
	f.set(func(f *faults) { f.bookSync = true })
	b.Keep(note(smelt, 2))
	k := a.until(t, "one not kept", isNotKept)
	if !errors.Is(k.Err, disk.ErrPoisoned) || strings.Contains(k.Err.Error(), "\n") {
		t.Errorf("got %v", k.Err)
	}
	b.Keep(note(smelt, 3))
	a.until(t, "two not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 2 })
	if left, _ := filepath.Glob(path + disk.UnfinishedExt + "*"); len(left) > 1 { // one may be on its way
		t.Errorf("unfinished books are left: %v", left)
	}
	f.set(func(f *faults) { f.bookSync = false })
	a.until(t, "both kept", func(k Ack) bool { return k.Err == nil && k.Waiting == 0 && k.Entries[len(k.Entries)-1].Seq == 3 })
	shut(t, b)
	b, _ = open(t, path, Options{})
	same(t, b, smelt, a.kept[smelt])
}
