package persist

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// filled makes a closed book of several pages in which all is kept.
func filledBook(t *testing.T, path string) *acks {
	t.Helper()
	b, a := open(t, path, Options{})
	for i := range 8 {
		keep(t, b, notes(smelt, 40*i+1, 40*i+40)...)
	}
	keep(t, b, notes("2026-06-01-reedhollow-b", 1, 3)...)
	shut(t, b)
	return a
}

// wayOnWorks does what the message says: the file is moved away, and the book
// comes back whole from its twins.
func wayOnWorks(t *testing.T, path string, a *acks) {
	t.Helper()
	if err := os.Rename(path, path+".away"); err != nil {
		t.Fatal(err)
	}
	b, _ := open(t, path, Options{})
	for s, want := range a.kept {
		same(t, b, s, want)
	}
	shut(t, b)
}

// madeAnew opens a damaged book: it is made anew from its twins, the damaged file
// is kept as it was, and that is told. It gives false where nothing was amiss.
func madeAnew(t *testing.T, path string, a *acks, name string) bool {
	t.Helper()
	damaged := read(t, path)
	b, err := Open(path, Options{Summarise: counted})
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	defer b.Close()
	for s, want := range a.kept {
		same(t, b, s, want)
	}
	if !disk.Exists(path + disk.AsideExt + "1") {
		return false
	}
	if !bytes.Equal(read(t, path+disk.AsideExt+"1"), damaged) {
		t.Errorf("%s: the damaged file was changed", name)
	}
	if said := strings.Join(b.Mended(), " "); !strings.Contains(said, "made anew") || !strings.Contains(said, disk.AsideExt+"1") || strings.Contains(said, "\n") {
		t.Errorf("%s: it says %q", name, said)
	}
	must(t, os.Remove(path+disk.AsideExt+"1"))
	return true
}

func TestFileCutAtEveryPageIsMadeAnewFromItsTwins(t *testing.T) {
	path := placeOf(t)
	a := filledBook(t, path)
	whole := read(t, path)
	page := os.Getpagesize() // what bbolt makes its pages of
	anew := 0
	for size := 0; size < len(whole); size += page / 2 {
		write(t, path, whole[:size])
		r, err := OpenReader(path, Options{Summarise: counted})
		if err != nil {
			t.Fatal(err)
		}
		for s, want := range a.kept {
			same(t, r, s, want)
		}
		troubled := errors.Is(r.trouble, disk.ErrDamaged) && len(r.Faults()) > 0
		if rep, err := Check(path, Options{}); troubled && (err != nil || rep.OK() || rep.Streams != 2) {
			t.Errorf("cut at %d: check says %+v, %v", size, rep, err)
		}
		if was := madeAnew(t, path, a, fmt.Sprint("cut at ", size)); was != troubled {
			t.Errorf("cut at %d: made anew %v, the reader's trouble is %v", size, was, r.trouble)
		} else if was {
			anew++
		}
	}
	if anew < 8 {
		t.Errorf("only %d cuts were seen", anew)
	}
	write(t, path, whole[:len(whole)/4])
	wayOnWorks(t, path, a)
}

func TestFilesThatAreNoBook(t *testing.T) {
	path := placeOf(t)
	a := filledBook(t, path)
	whole := read(t, path)
	bothMetas := bytes.Clone(whole)
	bothMetas[pageHeader+atTxID] ^= 0xff
	bothMetas[os.Getpagesize()+pageHeader+atTxID] ^= 0xff
	for name, text := range map[string][]byte{
		"empty": nil, "five bytes": []byte("hello"), "zeros": make([]byte, 1<<16),
		"a text": bytes.Repeat([]byte("charcoal, ore\n"), 4000), "both heads damaged": bothMetas,
	} {
		write(t, path, text)
		if !madeAnew(t, path, a, name) {
			t.Errorf("%s: it was opened as a book", name)
		}
		alone := filepath.Join(t.TempDir(), "alone.db") // without twins there is nothing to make it of
		write(t, alone, text)
		_, err := Open(alone, Options{})
		if !errors.Is(err, disk.ErrDamaged) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v", name, err)
		}
		if !bytes.Equal(read(t, alone), text) {
			t.Errorf("%s: the file was changed", name)
		}
		if r, err := OpenReader(alone, Options{}); err == nil {
			if names, err := r.Streams(); !errors.Is(err, disk.ErrDamaged) {
				t.Errorf("%s: the reader lists %v, %v", name, names, err)
			}
		}
	}
	wayOnWorks(t, path, a)
}

func TestAForeignBboltFile(t *testing.T) {
	path := placeOf(t)
	db, err := bolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := db.Update(func(tx *bolt.Tx) error { _, err := tx.CreateBucket([]byte("meta")); return err }); err != nil {
		t.Fatal(err)
	}
	db.Close()
	before := read(t, path)
	if _, err := Open(path, Options{}); !errors.Is(err, disk.ErrDamaged) || !strings.Contains(err.Error(), "not a book") {
		t.Errorf("got %v", err)
	}
	if !bytes.Equal(before, read(t, path)) {
		t.Error("the foreign file was changed")
	}
	os.Remove(path)
}

// Every page in turn is filled with rubbish: opening, reading, keeping and
// checking give entries or errors, and never end the program.
func TestRubbishInAnyPage(t *testing.T) {
	path := placeOf(t)
	a := filledBook(t, path)
	whole := read(t, path)
	page := os.Getpagesize()
	told := 0
	for at := 0; at+page <= len(whole); at += page {
		bad := bytes.Clone(whole)
		for i := range page {
			bad[at+i] = byte(i*7 + 3)
		}
		write(t, path, bad)
		if _, err := Check(path, Options{}); err != nil {
			t.Errorf("page at %d: check: %v", at, err)
		}
		r, err := OpenReader(path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for s, want := range a.kept {
			same(t, r, s, want)
		}
		b, err := Open(path, Options{closeTries: 1})
		must(t, err)
		if len(b.Mended()) > 0 {
			told++
		}
		for s, want := range a.kept {
			same(t, b, s, want)
		}
		keep(t, b, note("2026-07-01-reedhollow-c", 999))
		shut(t, b)
		os.RemoveAll(twin.Folder(path)) // what was keyed into a broken book is not part of the next round
		aside, _ := filepath.Glob(path + disk.AsideExt + "*")
		for _, f := range aside {
			must(t, os.Remove(f))
		}
		write(t, path, whole)
		b, _ = open(t, path, Options{})
		shut(t, b)
	}
	if told == 0 {
		t.Error("no page mattered at opening")
	}
	os.Remove(path)
}

// One damaged head takes a bbolt file back by one commit without a word. The
// twin is longer then, and opening brings the commit back.
func TestOneDamagedHeadLosesNothing(t *testing.T) {
	for i := range 2 {
		path := placeOf(t)
		a := filledBook(t, path)
		b, a2 := open(t, path, Options{})
		keep(t, b, note(smelt, 1000))
		b.Close()
		want := append(a.kept[smelt], a2.kept[smelt]...)
		text := read(t, path)
		text[i*os.Getpagesize()+pageHeader+atTxID] ^= 0xff
		write(t, path, text)
		b, _ = open(t, path, Options{})
		same(t, b, smelt, want)
		shut(t, b)
	}
}

func TestReadOnlyFileSaysSo(t *testing.T) {
	path := placeOf(t)
	filledBook(t, path)
	for _, cause := range []error{syscall.EACCES, syscall.EROFS} {
		// Rights do not bind whoever runs tests as the superuser, so the
		// system's answer is given here.
		_, err := Open(path, Options{openBook: func(name string, flag int, mode os.FileMode) (*os.File, error) {
			if flag&os.O_RDWR != 0 {
				return nil, &fs.PathError{Op: "open", Path: name, Err: cause}
			}
			return os.OpenFile(name, flag, mode)
		}})
		if !errors.Is(err, disk.ErrReadOnlyFile) || !strings.Contains(err.Error(), path) {
			t.Errorf("got %v", err)
		}
	}
}

// newerBook makes a book one of a newer version.
func newerBook(tx *bolt.Tx) error {
	return errors.Join(tx.Bucket(bucketMeta).Put(keySchema, []byte("2")), tx.Bucket(bucketMeta).Delete([]byte("sum")))
}

func TestBookOfANewerVersionIsReadAndNotWritten(t *testing.T) {
	path := placeOf(t)
	a := filledBook(t, path)
	db, err := bolt.Open(path, 0o600, &bolt.Options{Timeout: time.Second})
	if err != nil {
		t.Fatal(err)
	}
	if err := db.Update(newerBook); err != nil {
		t.Fatal(err)
	}
	db.Close()
	before := read(t, path)
	b, acks := open(t, path, Options{})
	if !errors.Is(b.ReadOnly(), disk.ErrNewer) {
		t.Errorf("read-only: %v", b.ReadOnly())
	}
	same(t, b, smelt, a.kept[smelt])
	b.Keep(note(smelt, 1))
	if k := acks.list()[0]; !errors.Is(k.Err, disk.ErrNewer) {
		t.Errorf("got %+v", k)
	}
	shut(t, b)
	if !bytes.Equal(before, read(t, path)) {
		t.Error("the newer book was changed")
	}
}

func TestMissingBook(t *testing.T) {
	path := placeOf(t)
	if _, err := OpenReader(path, Options{}); !errors.Is(err, disk.ErrMissing) {
		t.Errorf("got %v", err)
	}
	if _, err := Check(path, Options{}); !errors.Is(err, disk.ErrMissing) {
		t.Errorf("got %v", err)
	}
}

func TestSecondWriterInTheSameProgram(t *testing.T) {
	path := placeOf(t)
	b, a := open(t, path, Options{})
	keep(t, b, note(smelt, 1))
	_, err := Open(path, Options{lockWait: time.Millisecond})
	if !errors.Is(err, disk.ErrHeld) || !strings.Contains(err.Error(), path) {
		t.Errorf("got %v", err)
	}
	if _, err := Check(path, Options{lockWait: time.Millisecond}); !errors.Is(err, disk.ErrHeld) {
		t.Errorf("got %v", err)
	}
	r, err := OpenReader(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	same(t, r, smelt, a.kept[smelt])
	if names, err := r.Streams(); err != nil || len(names) != 1 || r.trouble != nil {
		t.Errorf("%v, %v, %v", names, err, r.trouble)
	}
	var none *twin.NoStreamError
	if _, err := r.Entries("2026-01-01-nowhere-a"); !errors.As(err, &none) {
		t.Errorf("got %v", err)
	}
	if _, err := b.Entries("2026-01-01-nowhere-a"); !errors.As(err, &none) {
		t.Errorf("got %v", err)
	}
	if _, err := r.Entries("../book"); !errors.As(err, &none) {
		t.Errorf("got %v", err)
	}
}
