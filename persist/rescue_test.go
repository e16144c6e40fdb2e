package persist

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// rescued rescues a book and compares it with what was called kept; check must
// find nothing afterwards.
func rescued(t *testing.T, path string, kept map[string][]entry.Entry) Rescued {
	t.Helper()
	r, err := Rescue(path, Options{lockWait: time.Millisecond})
	if err != nil {
		t.Fatalf("rescue: %v", err)
	}
	if rep, err := Check(path, Options{}); err != nil || !rep.OK() {
		t.Fatalf("check after the rescue: %v, %v", rep.Findings, err)
	}
	b, err := Open(path, Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	for s, want := range kept {
		same(t, b, s, want)
	}
	if m := b.Mended(); len(m) > 0 {
		t.Errorf("opening after the rescue mended %v", m)
	}
	return r
}

// found fails unless check says that something is wrong.
func wrong(t *testing.T, path string) {
	t.Helper()
	rep, err := Check(path, Options{})
	if err != nil || rep.OK() {
		t.Errorf("check says %v, %v", rep.Findings, err)
	}
	for _, f := range rep.Findings {
		if strings.Contains(f.String(), "\n") || f.Do == "" {
			t.Errorf("no clear message: %q", f)
		}
	}
}

// closedBook is one in a folder of its own, with copies of its files.
type closedBook struct {
	path string
	kept map[string][]entry.Entry
	book []byte
	twin []byte // of the larger smelt
}

func newClosedBook(t *testing.T) closedBook {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.db")
	a := filledBook(t, path)
	return closedBook{path: path, kept: a.kept, book: read(t, path), twin: read(t, twinOf(path, smelt))}
}

// restore puts the files back as they were.
func (c closedBook) restore(t *testing.T) {
	t.Helper()
	for _, pattern := range []string{c.path + "*", filepath.Join(twin.Folder(c.path), "*"+disk.AsideExt+"*")} {
		names, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range names {
			os.Remove(n)
		}
	}
	write(t, c.path, c.book)
	write(t, twinOf(c.path, smelt), c.twin)
}

// Book and twins cut at every page, one after the other: the rescue has all.
func TestRescueOfABookCutAtEveryPage(t *testing.T) {
	c := newClosedBook(t)
	page := os.Getpagesize()
	for size := 0; size < len(c.book); size += page {
		c.restore(t)
		write(t, c.path, c.book[:size])
		if sound(c.path) == nil {
			continue // what was cut off was not in use
		}
		wrong(t, c.path)
		r := rescued(t, c.path, c.kept)
		if r.Trouble == "" || len(r.Aside) != 1 || !bytes.Equal(read(t, r.Aside[0]), c.book[:size]) {
			t.Fatalf("cut at %d: %q, set aside %v", size, r.Trouble, r.Aside)
		}
	}
	for size := 0; size < len(c.twin); size += page {
		c.restore(t)
		write(t, twinOf(c.path, smelt), c.twin[:size])
		wrong(t, c.path)
		rescued(t, c.path, c.kept)
	}
}

// Both the book and the twin are cut: what either still holds comes back.
func TestRescueJoinsWhatIsLeftOfBoth(t *testing.T) {
	c := newClosedBook(t)
	twin := bytes.Clone(c.twin)
	copy(twin[len(twin)/2:], "\x00\x00\x00\x00\x00\x00\x00\x00") // one line of the twin
	write(t, twinOf(c.path, smelt), twin)
	book := bytes.Clone(c.book)
	book[pageHeader+atTxID] ^= 0xff // and both heads of the book
	book[os.Getpagesize()+pageHeader+atTxID] ^= 0xff
	write(t, c.path, book)
	wrong(t, c.path)
	r := rescued(t, c.path, c.kept)
	if s := r.Streams[0]; s.Loose != 0 {
		t.Errorf("told as %+v", s)
	}
}

// The same entry is lost on both sides: all others come back, around a gap that
// is told.
func TestRescueSaysWhatItCannotBringBack(t *testing.T) {
	c := newClosedBook(t)
	gone, spoilt := []byte("note 100\""), []byte("note 100\x00")
	write(t, c.path, bytes.ReplaceAll(c.book, gone, spoilt))
	write(t, twinOf(c.path, smelt), bytes.Replace(c.twin, gone, spoilt, 1))
	wrong(t, c.path)
	r := rescued(t, c.path, map[string][]entry.Entry{smelt: slices.Delete(slices.Clone(c.kept[smelt]), 99, 100)})
	if s := r.Streams[0]; s.Entries != 319 || s.Loose != 0 || len(s.Gaps) != 1 || s.Gaps[0].After != 99 || s.Gaps[0].Before != 101 {
		t.Errorf("told as %+v", s)
	}
	if !bytes.Contains(read(t, r.Aside[0]), []byte("note 101\"")) {
		t.Error("what stands beyond is not in the file set aside")
	}
}

// Bytes are flipped anywhere in the book: every reading gives entries or an
// error, and a rescue gives all entries.
func TestRescueAfterFlippedBytes(t *testing.T) {
	c := newClosedBook(t)
	rounds := 150
	if testing.Short() {
		rounds = 20
	}
	unseen := 0
	for seed := range rounds {
		r := rand.New(rand.NewPCG(uint64(seed), 2026))
		bad := bytes.Clone(c.book)
		for range 1 + r.IntN(8) {
			at := r.IntN(len(bad))
			if r.IntN(2) == 0 { // pages begin with what is most dangerous to follow
				at = at/os.Getpagesize()*os.Getpagesize() + r.IntN(64)
			}
			bad[at] ^= byte(1 << r.IntN(8))
		}
		c.restore(t)
		write(t, c.path, bad)
		rep, err := Check(c.path, Options{})
		if err != nil {
			t.Fatalf("seed %d: check: %v", seed, err)
		}
		if rep.OK() {
			unseen++ // in a page that nothing uses
		}
		reader, err := OpenReader(c.path, Options{Summarise: counted})
		if err != nil {
			t.Fatal(err)
		}
		_, _ = reader.Summaries()
		if b, err := Open(c.path, Options{closeTries: 1, retryEvery: time.Millisecond}); err == nil {
			b.Close()
		} else if strings.Contains(err.Error(), "\n") {
			t.Errorf("seed %d: %v", seed, err)
		}
		rescued(t, c.path, c.kept)
	}
	t.Logf("%d of %d damages were in no page in use", unseen, rounds)
}

// Bytes are flipped anywhere in the twin.
func TestRescueAfterFlippedBytesInTheTwin(t *testing.T) {
	c := newClosedBook(t)
	for seed := range 50 {
		r := rand.New(rand.NewPCG(uint64(seed), 7))
		bad := bytes.Clone(c.twin)
		bad[r.IntN(len(bad))] ^= byte(1 << r.IntN(8))
		c.restore(t)
		write(t, twinOf(c.path, smelt), bad)
		wrong(t, c.path)
		rescued(t, c.path, c.kept)
	}
}

func TestRescueOfFilesThatAreNoBook(t *testing.T) {
	c := newClosedBook(t)
	foreign := filepath.Join(t.TempDir(), "foreign.db")
	db, err := bolt.Open(foreign, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	db.Close()
	for name, text := range map[string][]byte{"empty": nil, "zeros": make([]byte, 1<<16), "text": []byte("charcoal, ore\n"), "another program's": read(t, foreign)} {
		c.restore(t)
		write(t, c.path, text)
		wrong(t, c.path)
		if r := rescued(t, c.path, c.kept); !bytes.Equal(read(t, r.Aside[0]), text) || r.Streams[0].Entries != 320 {
			t.Errorf("%s: %+v", name, r)
		}
	}
	c.restore(t)
	os.Remove(c.path)
	wrong(t, c.path)
	rescued(t, c.path, c.kept)
	c.restore(t)
	os.RemoveAll(twin.Folder(c.path))
	wrong(t, c.path)
	if r := rescued(t, c.path, c.kept); r.Streams[0].Entries != 320 {
		t.Errorf("%+v", r.Streams)
	}
}

func TestRescueKeepsOutOfABookInUseAndOfANewerOne(t *testing.T) {
	path := placeOf(t)
	b, a := open(t, path, Options{})
	keep(t, b, notes(smelt, 1, 3)...)
	before := read(t, path)
	if _, err := Rescue(path, Options{lockWait: time.Millisecond}); !errors.Is(err, disk.ErrHeld) || !strings.Contains(err.Error(), path) {
		t.Errorf("got %v", err)
	}
	if !bytes.Equal(before, read(t, path)) {
		t.Error("the book was changed")
	}
	keep(t, b, note(smelt, 4))
	shut(t, b)
	mutate(t, path, func(_ *bolt.Bucket, tx *bolt.Tx) error { return newerBook(tx) })
	if _, err := Rescue(path, Options{}); !errors.Is(err, disk.ErrNewer) {
		t.Errorf("got %v", err)
	}
	mutate(t, path, func(_ *bolt.Bucket, tx *bolt.Tx) error { return tx.Bucket(bucketMeta).Put(keySchema, []byte("1")) })
	if _, err := Rescue(filepath.Join(t.TempDir(), "none.db"), Options{}); !errors.Is(err, disk.ErrMissing) {
		t.Errorf("got %v", err)
	}
	uid := b.UID()
	rescued(t, path, a.kept)
	b, _ = open(t, path, Options{})
	if b.UID() != uid {
		t.Errorf("the book's uid went from %s to %s", uid, b.UID())
	}
}

// A page that names one of its ancestors would lead bbolt in a circle until the
// stack is full, which nothing can stop. It is seen before.
func TestPagesThatLeadInACircle(t *testing.T) {
	c := newClosedBook(t)
	page := os.Getpagesize()
	circles := 0
	for at := 2 * page; at < len(c.book); at += page {
		if c.book[at+atKind] != kindBranch {
			continue
		}
		bad := bytes.Clone(c.book)
		copy(bad[at+pageHeader+8:at+pageHeader+16], bad[at:at+8]) // its first child is itself
		c.restore(t)
		write(t, c.path, bad)
		if sound(c.path) == nil {
			continue // not in use
		}
		circles++
		wrong(t, c.path)
		reader, err := OpenReader(c.path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		same(t, reader, smelt, c.kept[smelt])
		rescued(t, c.path, c.kept)
		c.restore(t)
		write(t, c.path, bad)
		b, err := Open(c.path, Options{})
		must(t, err)
		if said := strings.Join(b.Mended(), " "); !strings.Contains(said, "made anew") {
			t.Errorf("opening says %q", said)
		}
		same(t, b, smelt, c.kept[smelt])
		shut(t, b)
	}
	if circles == 0 {
		t.Error("no branch page to try")
	}
	fmt.Fprintln(t.Output(), circles, "circles")
}
