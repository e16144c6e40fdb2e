package persist

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"chargehand/model/entry"
)

// fillUp takes all the room there is, but for so many bytes, and gives the way to
// give it back.
func fillUp(t *testing.T, folder string, but int64) (makeRoom func()) {
	t.Helper()
	name := filepath.Join(folder, "filler")
	f, err := os.Create(name)
	must(t, err)
	defer f.Close()
	for block := make([]byte, 1<<12); err == nil; {
		_, err = f.Write(block)
	}
	if !errors.Is(err, syscall.ENOSPC) {
		t.Fatal(err)
	}
	info, err := f.Stat()
	must(t, err)
	must(t, f.Truncate(max(0, info.Size()-but)))
	return func() { must(t, os.Remove(name)) }
}

// Entries are kept until the disk is full; from then on they are counted as not
// kept and, when there is room, kept once each.
func TestDiskFullWhileKeeping(t *testing.T) { onSmallDisk(t, fullWhileKeeping) }

func fullWhileKeeping(t *testing.T, folder string) {
	for _, room := range []int64{0, 1 << 12, 3 << 12, 7 << 12, 20 << 12} {
		path := filepath.Join(folder, fmt.Sprint(room), "book.db")
		b, a := open(t, path, Options{})
		keep(t, b, notes(smelt, 1, 3)...)
		makeRoom := fillUp(t, folder, room)
		n := 3
		for full := false; !full; {
			if n++; n > 20_000 {
				t.Fatal("the disk never was full")
			}
			_, err := keepNow(b, note(smelt, n), note(beta, n))
			if full = err != nil; full {
				if lost := new(NotKeptError); !errors.As(err, &lost) || !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), "make room") {
					t.Errorf("a full disk says %v", err)
				}
			}
		}
		b.Keep(note(smelt, n+1))
		a.until(t, "what was keyed since is counted", func(k Ack) bool { return isNotKept(k) && k.Waiting >= 2 }) // one stream may just have had room
		makeRoom()
		b.Keep(note(smelt, n+2))
		// The held ones may be kept before this one is known to the writer: the count says when all are.
		all := n + 2 + n - 3
		a.until(t, "all is kept", func(Ack) bool { return a.count() >= all })
		shut(t, b)
		if kept := a.count(); kept != all {
			t.Errorf("%d entries were kept, %d were handed over", kept, all)
		}
		foundAgain(t, path, a)
		whole(t, path)
		must(t, os.RemoveAll(filepath.Dir(path)))
	}
}

// A book that cannot be made leaves nothing behind, and says why; once there is
// room it is made.
func TestDiskFullAtCreation(t *testing.T) { onSmallDisk(t, fullAtCreation) }

func fullAtCreation(t *testing.T, folder string) {
	for _, room := range []int64{0, 1 << 12, 2 << 12, 4 << 12, 6 << 12} {
		path := filepath.Join(folder, fmt.Sprint(room), "book.db")
		must(t, os.Mkdir(filepath.Dir(path), 0o700))
		makeRoom := fillUp(t, folder, room)
		b, err := Open(path, Options{})
		if err == nil {
			b.Close()
		} else if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), path) || strings.Contains(err.Error(), "\n") {
			t.Errorf("with %d bytes left: %v", room, err)
		}
		left, _ := os.ReadDir(filepath.Dir(path))
		if err != nil && len(left) > 0 {
			t.Errorf("with %d bytes left, %v is left behind", room, left)
		}
		makeRoom()
		b, a := open(t, path, Options{})
		keep(t, b, note(smelt, 1))
		shut(t, b)
		foundAgain(t, path, a)
		must(t, os.RemoveAll(filepath.Dir(path)))
	}
}

// A rescue that has no room says so and leaves all as it was.
func TestDiskFullAtRescue(t *testing.T) { onSmallDisk(t, fullAtRescue) }

func fullAtRescue(t *testing.T, folder string) {
	for _, room := range []int64{0, 2 << 12, 8 << 12, 20 << 12} {
		path := filepath.Join(folder, fmt.Sprint(room), "book.db")
		b, _ := open(t, path, Options{})
		keep(t, b, notes(smelt, 1, 200)...)
		keep(t, b, notes(beta, 1, 20)...)
		shut(t, b)
		book := read(t, path)
		book = book[:len(book)/2]
		write(t, path, book)
		must(t, os.Truncate(twinOf(path, smelt), int64(len(read(t, twinOf(path, smelt))))/2)) // has to be written too
		elsewhere := t.TempDir()
		must(t, os.CopyFS(elsewhere, os.DirFS(filepath.Dir(path))))
		want, err := Rescue(elsewhere, Options{})
		must(t, err)

		makeRoom := fillUp(t, folder, room)
		_, err = Rescue(path, Options{})
		if room == 0 && err == nil {
			t.Error("no room, and no error")
		}
		if err != nil {
			if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), path) || strings.Contains(err.Error(), "\n") {
				t.Errorf("with %d bytes left: %v", room, err)
			}
			if string(read(t, path)) != string(book) {
				t.Errorf("with %d bytes left the book was changed", room)
			}
		}
		makeRoom()
		got, err := Rescue(path, Options{})
		must(t, err)
		if got.Entries != want.Entries {
			t.Errorf("with %d bytes left, %d of %d entries came back", room, got.Entries, want.Entries)
		}
		whole(t, path)
		must(t, os.RemoveAll(filepath.Dir(path)))
	}
}

// The book's map grows while the disk is full: that is an error that says so,
// and no fault of memory.
func TestDiskFullWhileTheBookGrows(t *testing.T) { onSmallDisk(t, fullWhileGrowing) }

func fullWhileGrowing(t *testing.T, folder string) {
	path := filepath.Join(folder, "book.db")
	b, a := open(t, path, Options{})
	keep(t, b, note(smelt, 1))
	makeRoom := fillUp(t, folder, 5<<12)
	const n = 40
	for i := 2; i <= n; i++ {
		long := note(smelt, i)
		long.Event = entry.Note{Text: fmt.Sprint(i, strings.Repeat(" the slag runs well", 60))}
		b.Keep(long)
	}
	a.until(t, "not kept", isNotKept)
	if es, err := b.Entries(smelt); err != nil || len(es) == 0 {
		t.Errorf("%d entries are read, %v", len(es), err)
	}
	makeRoom()
	b.Keep(note(smelt, n+1))
	a.until(t, "all is kept", func(k Ack) bool {
		return k.Err == nil && k.Waiting == 0 && k.Entries != nil && k.Entries[len(k.Entries)-1].Seq == uint64(n+1)
	})
	shut(t, b)
	foundAgain(t, path, a)
	whole(t, path)
}
