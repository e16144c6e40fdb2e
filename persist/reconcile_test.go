package persist

import (
	"bytes"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

// bookAfter makes a closed book of ten entries, lets damage be done to the files, and
// opens it again.
func bookAfter(t *testing.T, opt Options, harm func(t *testing.T, path string)) (*Book, []entry.Entry, string) {
	t.Helper()
	path := placeOf(t)
	b, a := open(t, path, Options{})
	keep(t, b, notes(smelt, 1, 6)...)
	keep(t, b, notes(smelt, 7, 10)...)
	shut(t, b)
	harm(t, path)
	b, _ = open(t, path, opt)
	return b, a.kept[smelt], path
}

// mutate changes the closed book's bbolt file.
func mutate(t *testing.T, path string, f func(stream *bolt.Bucket, tx *bolt.Tx) error) {
	t.Helper()
	db, err := bolt.Open(path, 0o600, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.Update(func(tx *bolt.Tx) error { return f(tx.Bucket(bucketStreams).Bucket([]byte(smelt)), tx) }); err != nil {
		t.Fatal(err)
	}
}

// twinLinesOf splits a twin into its lines, ends included.
func twinLinesOf(t *testing.T, path string) [][]byte {
	return bytes.SplitAfter(bytes.TrimSuffix(read(t, twinOf(path, smelt)), []byte("\n")), []byte("\n"))
}

func TestOpeningMendsWhatOneOfTheTwoLacks(t *testing.T) {
	for _, c := range []struct {
		name  string
		harm  func(t *testing.T, path string)
		says  string
		aside bool // what gave way is kept under another name
	}{
		{name: "twin gone", says: "10 entries lacking in the twin", harm: func(t *testing.T, path string) { os.RemoveAll(twin.Folder(path)) }},
		{name: "twin behind", says: "4 entries lacking in the twin", harm: func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), bytes.Join(twinLinesOf(t, path)[:6], nil))
		}},
		{name: "half a line", says: "half-written", harm: func(t *testing.T, path string) {
			text := read(t, twinOf(path, smelt))
			write(t, twinOf(path, smelt), text[:len(text)-30])
		}},
		{name: "half a line of one never kept", says: "half-written", harm: func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), append(read(t, twinOf(path, smelt)), `{"v":1,"stre`...))
		}},
		{name: "book gone", says: "10 entries lacking in the book", harm: func(t *testing.T, path string) { os.Remove(path) }},
		{name: "book behind", says: "3 entries lacking in the book", harm: func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
				return errors.Join(b.Delete(seqKey(8)), b.Delete(seqKey(9)), b.Delete(seqKey(10)))
			})
		}},
		{name: "stream gone", says: "10 entries lacking in the book", harm: func(t *testing.T, path string) {
			mutate(t, path, func(_ *bolt.Bucket, tx *bolt.Tx) error {
				return errors.Join(tx.Bucket(bucketStreams).DeleteBucket([]byte(smelt)), tx.Bucket(bucketSummary).Delete([]byte(smelt)))
			})
		}},
		{name: "gap in the book", says: "from entry 4 on; what it had was set aside", aside: true, harm: func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error { return b.Delete(seqKey(4)) })
		}},
		{name: "changed in the book", says: "from entry 5 on; what it had was set aside", aside: true, harm: func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
				return b.Put(seqKey(5), bytes.Replace(b.Get(seqKey(5)), []byte("note 5"), []byte("note 6"), 1))
			})
		}},
		{name: "last changed in the book", says: "from entry 10 on; what it had was set aside", aside: true, harm: func(t *testing.T, path string) {
			// The twin must win although both have ten: the count names the last hash.
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
				return b.Put(seqKey(10), bytes.Replace(b.Get(seqKey(10)), []byte("note 10"), []byte("note 11"), 1))
			})
		}},
		{name: "changed in the twin", says: "from line 3 on", aside: true, harm: func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), bytes.Replace(read(t, twinOf(path, smelt)), []byte("note 3"), []byte("note 4"), 1))
		}},
		{name: "rubbish in the twin", says: "from line 11 on", aside: true, harm: func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), append(read(t, twinOf(path, smelt)), "rubbish\n"...))
		}},
		{name: "endless line in the twin", says: "from line 11 on", aside: true, harm: func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), append(read(t, twinOf(path, smelt)), bytes.Repeat([]byte("x"), entry.MaxBytes+9)...))
		}},
		{name: "count lost", says: "in the book where 0 were counted", harm: func(t *testing.T, path string) {
			mutate(t, path, func(_ *bolt.Bucket, tx *bolt.Tx) error { return tx.Bucket(bucketSummary).Delete([]byte(smelt)) })
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, want, path := bookAfter(t, Options{}, c.harm)
			same(t, b, smelt, want)
			if said := strings.Join(b.Mended(), "\n"); !strings.Contains(said, c.says) || strings.Count(said, smelt+": ") != strings.Count(said, "\n")+1 {
				t.Errorf("it says %q, not %q", said, c.says)
			}
			if aside := disk.Exists(twinOf(path, smelt) + disk.AsideExt + "1"); aside != c.aside {
				t.Errorf("twin set aside: %v", aside)
			}
			if got := keep(t, b, note(smelt, 11)); got[0].Seq != 11 {
				t.Errorf("the next is %d", got[0].Seq)
			}
			shut(t, b)
			b, _ = open(t, path, Options{})
			if m := b.Mended(); len(m) > 0 {
				t.Errorf("the second opening still mends %v", m)
			}
		})
	}
}

// What the book loses to its twin is kept beside it under another name.
func TestWhatGivesWayIsSetAside(t *testing.T) {
	b, want, path := bookAfter(t, Options{}, func(t *testing.T, path string) {
		mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
			return b.Put(seqKey(5), bytes.Replace(b.Get(seqKey(5)), []byte("note 5"), []byte("note 6"), 1))
		})
	})
	same(t, b, smelt, want)
	if aside := read(t, twinOf(path, smelt)+disk.AsideExt+"1"); !bytes.Contains(aside, []byte("note 6")) {
		t.Error("the changed entry was not set aside")
	}
	shut(t, b)
}

// Opening compares lengths; a change of the same length is found in the background,
// and when the stream is read.
func TestWhatOpeningDoesNotLookAtIsFoundInTheBackground(t *testing.T) {
	path := placeOf(t)
	b, a := open(t, path, Options{})
	keep(t, b, notes(smelt, 1, 3)...)
	keep(t, b, notes(beta, 1, 3)...)
	shut(t, b)
	for name, harm := range map[string]func(){
		"twin": func() {
			write(t, twinOf(path, smelt), bytes.Replace(read(t, twinOf(path, smelt)), []byte("note 2"), []byte("note 1"), 1))
		},
		"book": func() {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
				return b.Put(seqKey(2), bytes.Replace(b.Get(seqKey(2)), []byte("note 2"), []byte("note 1"), 1))
			})
		},
	} {
		harm()
		b, second := open(t, path, Options{compareAfter: time.Millisecond})
		for end := time.Now().Add(20 * time.Second); len(second.noted()) == 0; time.Sleep(time.Millisecond) {
			if time.Now().After(end) {
				t.Fatalf("%s: nothing was found", name)
			}
		}
		if said := second.noted(); len(said) != 1 || !strings.HasPrefix(said[0], smelt) {
			t.Errorf("%s: it says %q", name, said)
		}
		same(t, b, smelt, a.kept[smelt])
		shut(t, b)
	}
	mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
		return b.Put(seqKey(2), bytes.Replace(b.Get(seqKey(2)), []byte("note 2"), []byte("note 1"), 1))
	})
	b, second := open(t, path, Options{compareAfter: time.Hour})
	same(t, b, smelt, a.kept[smelt])
	if said := second.noted(); len(said) != 1 {
		t.Errorf("reading says %q", said)
	}
	shut(t, b)
}

func TestCheckNamesWhatIsWrongAndChangesNothing(t *testing.T) {
	for _, c := range []struct {
		name, says string
		seq        uint64
		line       int
		harm       func(t *testing.T, path string)
	}{
		{"changed in the twin", "not in the book", 3, 3, func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), bytes.Replace(read(t, twinOf(path, smelt)), []byte("note 3"), []byte("note 4"), 1))
		}},
		{"twin behind", "missing in the twin", 7, 0, func(t *testing.T, path string) {
			write(t, twinOf(path, smelt), bytes.Join(twinLinesOf(t, path)[:6], nil))
		}},
		{"gap", "missing from the book", 4, 0, func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error { return b.Delete(seqKey(4)) })
		}},
		{"last gone", "9 entries here where 10 were counted", 9, 0, func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error { return b.Delete(seqKey(10)) })
		}},
		{"changed in the book", "was changed", 5, 0, func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
				return b.Put(seqKey(5), bytes.Replace(b.Get(seqKey(5)), []byte("note 5"), []byte("note 6"), 1))
			})
		}},
		{"last changed in the book", "was changed", 10, 0, func(t *testing.T, path string) {
			mutate(t, path, func(b *bolt.Bucket, _ *bolt.Tx) error {
				return b.Put(seqKey(10), bytes.Replace(b.Get(seqKey(10)), []byte("note 10"), []byte("note 11"), 1))
			})
		}},
		{"record", "count of its entries is missing or was changed", 10, 0, func(t *testing.T, path string) {
			mutate(t, path, func(_ *bolt.Bucket, tx *bolt.Tx) error {
				s := tx.Bucket(bucketSummary)
				return s.Put([]byte(smelt), bytes.Replace(s.Get([]byte(smelt)), []byte(`"length":10`), []byte(`"length":17`), 1))
			})
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := t.TempDir() + "/book.db" // not checked at the end, for it stays as it is
			b, _ := open(t, path, Options{})
			keep(t, b, notes(smelt, 1, 10)...)
			shut(t, b)
			c.harm(t, path)
			book, twin := read(t, path), read(t, twinOf(path, smelt))
			r, err := Check(path, Options{Summarise: counted})
			if err != nil {
				t.Fatal(err)
			}
			i := slices.IndexFunc(r.Findings, func(f Finding) bool { return strings.Contains(f.What, c.says) })
			if i < 0 {
				t.Fatalf("found only %v", r.Findings)
			}
			if f := r.Findings[i]; f.Stream != smelt || f.Seq != c.seq || f.Line != c.line || f.Do == "" || strings.Contains(f.String(), "\n") {
				t.Errorf("found %+v", f)
			}
			if !bytes.Equal(book, read(t, path)) || !bytes.Equal(twin, read(t, twinOf(path, smelt))) {
				t.Error("the check changed a file")
			}
		})
	}
}
