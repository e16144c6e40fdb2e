package persist

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"

	bolt "go.etcd.io/bbolt"

	"chargehand/persist/boltfile"
	"chargehand/persist/twin"
)

// faults is a disk that fails on demand.
type faults struct {
	mu                                       sync.Mutex
	write, flush, short, cut, book, bookSync bool
	syncOnce                                 bool // bookSync, for the next commit alone
	opened                                   []string
}

func (f *faults) set(change func(*faults)) {
	f.mu.Lock()
	defer f.mu.Unlock()
	change(f)
}

func (f *faults) is(what func(*faults) bool) bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	return what(f)
}

func (f *faults) options() Options {
	return Options{
		openTwin: func(path string) (twin.File, error) {
			f.set(func(f *faults) { f.opened = append(f.opened, path) })
			real, err := twin.OpenFile(path)
			return faultyFile{real, f}, err
		},
		wrapCommit: func(c boltfile.Commit) boltfile.Commit { return faultyCommit{c, f}.do },
	}
}

var errFull = &fs.PathError{Op: "write", Path: "disk", Err: syscall.ENOSPC}

type faultyFile struct {
	twin.File
	f *faults
}

func (w faultyFile) Write(b []byte) (int, error) {
	if w.f.is(func(f *faults) bool { return f.write }) {
		return 0, errFull
	}
	if w.f.is(func(f *faults) bool { return f.short }) {
		n, _ := w.File.Write(b[:len(b)/2])
		return n, errFull
	}
	return w.File.Write(b)
}

func (w faultyFile) Truncate(size int64) error {
	if w.f.is(func(f *faults) bool { return f.cut }) {
		return syscall.EIO
	}
	return w.File.Truncate(size)
}

func (w faultyFile) Flush() error {
	if w.f.is(func(f *faults) bool { return f.flush }) {
		return syscall.EIO
	}
	return w.File.Flush()
}

// faultyCommit fails a commit before anything is written, as a full disk does,
// or after all of it was, as a failed flush may.
type faultyCommit struct {
	boltfile.Commit
	f *faults
}

func (v faultyCommit) do(fn func(*bolt.Tx) error) error {
	if v.f.is(func(f *faults) bool { return f.book }) {
		return errFull
	}
	if err := v.Commit(fn); err != nil {
		return err
	}
	if v.f.is(func(f *faults) bool { once := f.syncOnce; f.syncOnce = false; return f.bookSync || once }) {
		return syscall.EIO
	}
	return nil
}

func isNotKept(k Ack) bool {
	var e *NotKeptError
	return errors.As(k.Err, &e)
}

// A full disk in the twin, in the book, in both, and with half a line written:
// entries are held, counted, and kept once there is room, each once.
func TestFullDisk(t *testing.T) {
	for name, fault := range map[string]func(f *faults, on bool){
		"twin":             func(f *faults, on bool) { f.write = on },
		"half a line":      func(f *faults, on bool) { f.short = on },
		"and no cut":       func(f *faults, on bool) { f.short, f.cut = on, on },
		"book":             func(f *faults, on bool) { f.book = on },
		"both":             func(f *faults, on bool) { f.book, f.write = on, on },
		"book, half lines": func(f *faults, on bool) { f.book, f.short = on, on },
	} {
		t.Run(name, func(t *testing.T) {
			f := &faults{}
			path := placeOf(t)
			b, a := open(t, path, f.options())
			keep(t, b, notes(smelt, 1, 3)...)
			f.set(func(f *faults) { fault(f, true) })
			b.Keep(note(smelt, 4))
			a.until(t, "one not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 1 })
			b.Keep(notes(smelt, 5, 6)...)
			a.until(t, "three not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 3 })
			if n := len(a.kept[smelt]); n != 3 {
				t.Fatalf("%d are called kept", n)
			}
			f.set(func(f *faults) { fault(f, false) })
			a.until(t, "the last kept", func(k Ack) bool { return k.Err == nil && k.Waiting == 0 && k.Entries[len(k.Entries)-1].Seq == 6 })
			same(t, b, smelt, a.kept[smelt])
			shut(t, b)
			b, _ = open(t, path, Options{})
			same(t, b, smelt, a.kept[smelt])
			if m := b.Mended(); len(m) > 0 {
				t.Errorf("mended %v", m)
			}
		})
	}
}

func TestDiskThatStaysFullAtTheEnd(t *testing.T) {
	f := &faults{}
	path := placeOf(t)
	b, a := open(t, path, f.options())
	keep(t, b, note(smelt, 1))
	f.set(func(f *faults) { f.write, f.book = true, true })
	b.Keep(notes(smelt, 2, 4)...)
	var lost *NotKeptError
	if err := b.Close(); !errors.As(err, &lost) || lost.Count != 3 || len(lost.Entries) != 3 || !errors.Is(err, syscall.ENOSPC) {
		t.Fatalf("closing says %v", err)
	}
	b, _ = open(t, path, Options{})
	same(t, b, smelt, a.kept[smelt])
}

// A new stream on a disk that has no room for it even to be begun.
func TestFullDiskBeforeAStreamCanBeRead(t *testing.T) {
	f := &faults{}
	path := placeOf(t)
	b, a := open(t, path, f.options())
	if err := os.RemoveAll(twin.Folder(path)); err != nil {
		t.Fatal(err)
	}
	write(t, twin.Folder(path), nil) // a file where the folder should be
	b.Keep(note(smelt, 1))
	a.until(t, "one not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 1 })
	if err := os.Remove(twin.Folder(path)); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(twin.Folder(path), 0o700); err != nil {
		t.Fatal(err)
	}
	a.until(t, "kept", func(k Ack) bool { return k.Err == nil && k.Entries[0].Seq == 1 })
}

// A twin whose flush fails is never written again: another takes its place, which
// holds all that was kept.
func TestFailedFlushOfTheTwinIsWrittenAnew(t *testing.T) {
	for _, cut := range []bool{false, true} {
		f := &faults{}
		path := placeOf(t)
		b, a := open(t, path, f.options())
		keep(t, b, notes(smelt, 1, 2)...)
		poisoned, err := os.Open(twinOf(path, smelt))
		must(t, err)
		defer poisoned.Close()
		f.set(func(f *faults) { f.flush, f.cut = true, cut })
		b.Keep(note(smelt, 3))
		if _, err := keepNow(b, note(smelt, 4)); err == nil {
			t.Error("kept, though nothing written after the new twin can be flushed")
		}
		f.set(func(f *faults) { f.flush, f.cut = false, false })
		a.until(t, "kept", func(k Ack) bool { return k.Err == nil && k.Entries[len(k.Entries)-1].Seq == 4 })
		keep(t, b, note(smelt, 5))
		was, err := poisoned.Stat()
		must(t, err)
		if now, err := os.Stat(twinOf(path, smelt)); err != nil || os.SameFile(was, now) {
			t.Errorf("what could not be flushed was written again (%v)", err)
		}
		if left, _ := filepath.Glob(twinOf(path, smelt) + ".*"); len(left) > 0 {
			t.Errorf("%v is left", left)
		}
		if text := twin.Read(twin.Folder(path), smelt); len(text.Lines) != 5 {
			t.Fatalf("the twin reads %d lines", len(text.Lines))
		}
		if said := strings.Join(b.Mended(), "\n"); !strings.Contains(said, "could not be flushed") {
			t.Errorf("it says %q", said)
		}
		shut(t, b)
		b, _ = open(t, path, Options{})
		same(t, b, smelt, a.kept[smelt])
		keep(t, b, note(smelt, 6))
		shut(t, b)
	}
}

func TestFailedFlushOfTheBookIsNeverCalledKept(t *testing.T) {
	f := &faults{}
	path := placeOf(t)
	b, a := open(t, path, f.options())
	keep(t, b, note(smelt, 1))
	f.set(func(f *faults) { f.bookSync = true }) // no other book can be flushed either
	b.Keep(note(smelt, 2))
	a.until(t, "one not kept", isNotKept)
	b.Keep(note(smelt, 3))
	a.until(t, "two not kept", func(k Ack) bool { return isNotKept(k) && k.Waiting == 2 })
	if n := len(a.kept[smelt]); n != 1 {
		t.Errorf("%d are called kept", n)
	}
	var lost *NotKeptError
	if err := b.Close(); !errors.As(err, &lost) || lost.Count != 2 {
		t.Errorf("closing says %v", err)
	}
	// They are in the twin, and the next opening brings them into the book.
	b, _ = open(t, path, Options{})
	if es, err := b.Entries(smelt); err != nil || len(es) != 3 {
		t.Errorf("%d entries, %v", len(es), err)
	}
	keep(t, b, note(smelt, 4))
}
