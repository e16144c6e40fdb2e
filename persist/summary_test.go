package persist

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/persist/twin"
)

func TestSummariesAreRenewedInAPauseAndReadWithoutEntries(t *testing.T) {
	path := placeOf(t)
	var made atomic.Int64
	opt := Options{idle: 10 * time.Millisecond, Summarise: func(s string, es []entry.Entry) Summary {
		made.Add(1)
		return counted(s, es)
	}}
	b, _ := open(t, path, opt)
	if _, err := b.Import(smelt, lit("a1", "f00d")); err != nil {
		t.Fatal(err)
	}
	keep(t, b, note(entry.House, 1))
	want := func(entries uint64) []Summary {
		lines, err := linesOf(b, smelt)
		if err != nil {
			t.Fatal(err)
		}
		return []Summary{{ID: smelt, UID: "a1", Furnace: "Reed Hollow", Lit: noon, Charges: 1, SourceHash: "f00d", Entries: entries, Head: twin.HeadOf(lines)}}
	}
	check := func(entries uint64, from interface{ Summaries() ([]Summary, error) }) {
		t.Helper()
		got, err := from.Summaries()
		if d := cmp.Diff(want(entries), got); d != "" || err != nil {
			t.Errorf("%v\n%s", err, d)
		}
	}
	stored := func() bool {
		recs, _, err := b.store.listed()
		if err != nil {
			t.Fatal(err)
		}
		_, ok := b.store.stored(smelt, recs[smelt], 0)
		return ok
	}
	await := func() {
		t.Helper()
		for end := time.Now().Add(20 * time.Second); !stored(); time.Sleep(time.Millisecond) {
			if time.Now().After(end) {
				t.Fatal("the summary is never renewed")
			}
		}
	}
	check(3, b)
	await()
	n := made.Load()
	check(3, b)
	if made.Load() != n {
		t.Error("a stored summary was made anew")
	}
	r, err := OpenReader(path, opt)
	if err != nil {
		t.Fatal(err)
	}
	for end := time.Now().Add(20 * time.Second); ; time.Sleep(time.Millisecond) { // the note for readers comes just after
		n = made.Load()
		check(3, r)
		if made.Load() == n {
			break
		}
		if time.Now().After(end) {
			t.Fatal("readers have to make the summary of a held book themselves")
		}
	}
	keep(t, b, note(smelt, 4))
	check(4, b)
	check(4, r)
	await()
	keep(t, b, note(smelt, 5))
	shut(t, b)
	n = made.Load()
	check5 := func(from interface{ Summaries() ([]Summary, error) }) {
		t.Helper()
		got, err := from.Summaries()
		if err != nil || len(got) != 1 || got[0].Entries != 5 || made.Load() != n {
			t.Errorf("%+v, %v, made %d more", got, err, made.Load()-n)
		}
	}
	check5(r) // closing has renewed it
	b, _ = open(t, path, opt)
	check5(b)
}

// A smelt of which nothing can be read is named to whoever lists the smelts, and not said to be
// shown from another copy.
func TestASmeltThatCannotBeReadIsNamed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.db")
	b, _ := open(t, path, Options{})
	for i, name := range []string{smelt, "2026-05-10-reedhollow-a"} {
		if _, err := b.Import(name, lit(string(rune('a'+i)), "")); err != nil {
			t.Fatal(err)
		}
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	folder := twin.Folder(path)
	if err := errors.Join(os.Remove(path), os.WriteFile(twin.TextFile(folder, smelt), []byte("no entry\n"), 0o600)); err != nil {
		t.Fatal(err)
	}
	r, err := OpenReader(path, Options{Summarise: counted})
	if err != nil {
		t.Fatal(err)
	}
	all, err := r.Summaries()
	if err != nil || len(all) != 1 || all[0].ID != "2026-05-10-reedhollow-a" {
		t.Fatalf("%v, %v", all, err)
	}
	said := strings.Join(r.Faults(), "\n")
	if !strings.Contains(said, smelt+": nothing of it can be read, so it is not among the smelts") || strings.Contains(said, "from the other copy") {
		t.Errorf("it says %s", said)
	}
}
