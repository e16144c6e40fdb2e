package persist

import (
	"bytes"
	"encoding/binary"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

// largeBook makes a closed book whose pages are not all walked at opening, and
// gives the first page of beta, which leads on to others.
func largeBook(t *testing.T) (path string, a *acks, root uint64) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "book.db")
	b, a := open(t, path, Options{})
	for n := 1; n <= 200; n++ {
		e := note(beta, n)
		e.Event = entry.Note{Text: strings.Repeat("the slag runs well. ", 2500)}
		b.Keep(e)
	}
	keep(t, b, notes(smelt, 1, 3)...)
	shut(t, b)
	db, err := bolt.Open(path, 0o600, &bolt.Options{ReadOnly: true})
	must(t, err)
	defer db.Close()
	must(t, db.View(func(tx *bolt.Tx) error {
		root = uint64(tx.Bucket(bucketStreams).Bucket([]byte(beta)).Root())
		if tx.Size() <= 8<<20 {
			t.Errorf("the book has only %d bytes", tx.Size())
		}
		return nil
	}))
	return path, a, root
}

// harmedPages are ways in which a page leads bbolt to the end of the program.
var harmedPages = map[string]func(page []byte, id uint64){
	"in a circle":     func(page []byte, id uint64) { binary.NativeEndian.PutUint64(page[pageHeader+8:], id) },
	"out of the file": func(page []byte, _ uint64) { binary.NativeEndian.PutUint64(page[pageHeader+8:], 1<<40) },
	"nowhere":         func(page []byte, _ uint64) { clear(page) },
}

func harm(t *testing.T, path string, id uint64, how func([]byte, uint64)) {
	t.Helper()
	text := read(t, path)
	size := uint64(os.Getpagesize())
	how(text[id*size:(id+1)*size], id)
	write(t, path, text)
}

// A bad page of a large book is found in the background: a small book takes over
// at once, that is told, what the page held comes from the twin, and the next
// opening puts all of it right.
func TestBadPageOfALargeBookIsFoundInTheBackground(t *testing.T) {
	for _, name := range []string{"in a circle", "nowhere"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			path, a, root := largeBook(t)
			harm(t, path, root, harmedPages[name])
			b, second := open(t, path, Options{compareAfter: time.Millisecond})
			for end := time.Now().Add(20 * time.Second); len(second.noted()) == 0; time.Sleep(time.Millisecond) {
				if time.Now().After(end) {
					t.Fatal("nothing was found")
				}
			}
			if said := second.noted(); len(said) != 1 || !strings.Contains(said[0], "took over") || !strings.Contains(said[0], path+" is damaged") {
				t.Errorf("it says %q", said)
			}
			same(t, b, beta, a.kept[beta])
			if sums, err := b.Summaries(); err != nil || len(sums) != 2 {
				t.Errorf("%v, %v", sums, err)
			}
			a.kept[beta] = append(a.kept[beta], keep(t, b, note(beta, 1000))...)
			a.kept[smelt] = append(a.kept[smelt], keep(t, b, note(smelt, 1000))...)
			shut(t, b)
			foundAgain(t, path, a)
			whole(t, path)
		})
	}
}

// Before it is found, what would follow it is led to the twin instead.
func TestBadPageOfALargeBookIsNotFollowed(t *testing.T) {
	for _, name := range []string{"in a circle", "out of the file"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			path, a, root := largeBook(t)
			harm(t, path, root, harmedPages[name])
			r, err := OpenReader(path, Options{Summarise: counted})
			must(t, err)
			same(t, r, beta, a.kept[beta])
			same(t, r, smelt, a.kept[smelt])
			b, _ := open(t, path, Options{compareAfter: time.Hour})
			same(t, b, beta, a.kept[beta])
			a.kept[beta] = append(a.kept[beta], keep(t, b, note(beta, 1000))...)
			shut(t, b)
			foundAgain(t, path, a)
			whole(t, path)
		})
	}
}

// A sound large book is walked without a word, also while it is written to.
func TestLargeBookIsWalkedWhileItIsWrittenTo(t *testing.T) {
	path, a, _ := largeBook(t)
	b, second := open(t, path, Options{compareAfter: time.Microsecond})
	for n := range 50 {
		for _, s := range []string{smelt, beta} {
			a.kept[s] = append(a.kept[s], keep(t, b, note(s, 1000+n))...)
		}
	}
	for walked := false; !walked; {
		must(t, b.onWriter(func(w *writer) error { walked = len(w.rest) == 0; return nil }))
	}
	if said := second.noted(); len(said) > 0 {
		t.Errorf("it says %q", said)
	}
	shut(t, b)
	foundAgain(t, path, a)
}

// The mark that makes an element a bucket is changed: bbolt would take a smelt for a
// value and never take an entry for it again. The book is made anew from its twins.
func TestABucketThatIsMarkedAsAValue(t *testing.T) {
	from := filepath.Join(t.TempDir(), "book.db")
	b, _ := open(t, from, Options{})
	keep(t, b, notes(smelt, 1, 3)...)
	keep(t, b, note(entry.House, 1))
	shut(t, b)
	text, size, found := read(t, from), os.Getpagesize(), 0
	for page := 2 * size; page+size <= len(text); page += size {
		const kindLeaf, atCount, elementBytes = 2, 10, 16
		p := text[page : page+size]
		if binary.NativeEndian.Uint16(p[atKind:]) != kindLeaf {
			continue
		}
		for i := range int(binary.NativeEndian.Uint16(p[atCount:])) {
			at := page + pageHeader + i*elementBytes
			if binary.NativeEndian.Uint32(text[at:]) != 1 {
				continue
			}
			found++
			path := filepath.Join(t.TempDir(), "book.db")
			must(t, os.CopyFS(twin.Folder(path), os.DirFS(twin.Folder(from))))
			bad := bytes.Clone(text)
			bad[at] ^= 1
			write(t, path, bad)
			b, _ := open(t, path, Options{})
			if got := keep(t, b, note(smelt, 4)); got[0].Seq != 4 {
				t.Errorf("numbered %d", got[0].Seq)
			}
			shut(t, b)
			whole(t, path)
		}
	}
	if found < 4 {
		t.Errorf("only %d buckets found", found)
	}
}
