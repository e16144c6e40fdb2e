package persist

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"chargehand/model/entry"
	"chargehand/persist/disk"
	"chargehand/persist/twin"
)

func TestKeptEntriesAreNumberedLinkedStampedAndReadBack(t *testing.T) {
	path := placeOf(t)
	b, a := open(t, path, Options{})
	for n := 1; n <= 50; n++ {
		b.Keep(note(smelt, n))
	}
	kept := keep(t, b, note(entry.House, 51), note(smelt, 51))
	if kept[0].Seq != 1 || kept[1].Seq != 51 || !kept[1].Kept.Equal(noon.Add(time.Hour)) || kept[1].Version != entry.Version {
		t.Errorf("kept as %+v", kept)
	}
	same(t, b, smelt, a.kept[smelt])
	shut(t, b)

	lines, _, err := twin.ReadLines(strings.NewReader(string(read(t, twinOf(path, smelt)))))
	if err != nil || len(lines) != 51 {
		t.Fatalf("the twin has %d lines: %v", len(lines), err)
	}
	if n, why, _ := twin.WholeChain(smelt, lines); n != 51 {
		t.Error(why)
	}
	b, _ = open(t, path, Options{})
	same(t, b, smelt, a.kept[smelt])
	if got, _ := b.Streams(); !cmp.Equal(got, []string{smelt, entry.House}) {
		t.Errorf("streams %v", got)
	}
	if m := b.Mended(); len(m) > 0 {
		t.Errorf("opening a whole book mended %v", m)
	}
	if got := keep(t, b, note(smelt, 52)); got[0].Seq != 52 {
		t.Errorf("after opening again the next is %d", got[0].Seq)
	}
}

func TestAcknowledgementsComeInTheOrderOfKeep(t *testing.T) {
	b, a := open(t, placeOf(t), Options{})
	const n = 2000
	for i := 1; i <= n; i++ {
		b.Keep(note(smelt, i))
	}
	shut(t, b)
	var got int
	for _, k := range a.list() {
		for _, e := range k.Entries {
			got++
			if want := fmt.Sprintf("note %d", got); k.Err != nil || e.Seq != uint64(got) || e.Event.(entry.Note).Text != want {
				t.Fatalf("acknowledgement %d is of %+v, %v", got, e, k.Err)
			}
		}
	}
	if got != n {
		t.Errorf("%d of %d acknowledged", got, n)
	}
}

func TestReferenceToAnEntryNotYetNumbered(t *testing.T) {
	path := placeOf(t)
	b, _ := open(t, path, Options{})
	strike := func(local string) entry.Entry {
		return entry.Entry{Stream: smelt, Happened: noon, Event: entry.Strike{Target: entry.Ref{Local: local}}}
	}
	kept := keep(t, b, note(smelt, 1), note(smelt, 2), strike("k2"))
	if got := kept[2].Event.(entry.Strike).Target; got != (entry.Ref{Seq: 2}) {
		t.Errorf("the strike names %+v", got)
	}
	shut(t, b)
	b, _ = open(t, path, Options{})
	if got := keep(t, b, strike("k1"))[0].Event.(entry.Strike).Target; got != (entry.Ref{Seq: 1}) {
		t.Errorf("after opening again the strike names %+v", got)
	}
}

func TestRefusedEntriesAreToldAndTheOthersAreKept(t *testing.T) {
	b, a := open(t, placeOf(t), Options{})
	nowhere := entry.Entry{Stream: smelt, Happened: noon, Event: entry.Strike{Target: entry.Ref{Local: "never"}}}
	outside := note("../outside", 1)
	long := note(smelt, 7)
	long.Event = entry.Note{Text: strings.Repeat("x", entry.MaxBytes)}
	b.Keep(note(smelt, 1), nowhere, note(smelt, 2), outside, long)
	var refused *RefusedError
	a.until(t, "the last refused", func(k Ack) bool {
		return errors.As(k.Err, &refused) && len(k.Entries) == 1 && cmp.Equal(k.Entries[0].Event, long.Event)
	})
	if kept := a.kept[smelt]; len(kept) != 2 || kept[1].Seq != 2 {
		t.Fatalf("kept %+v", kept)
	}
	var order []bool
	for _, k := range a.list() {
		for range k.Entries {
			order = append(order, k.Err == nil)
		}
		if strings.Contains(fmt.Sprint(k.Err), "\n") {
			t.Errorf("more than one line: %v", k.Err)
		}
	}
	if !cmp.Equal(order, []bool{true, false, true, false, false}) {
		t.Errorf("acknowledged %v", order)
	}
}

func TestKeepAfterCloseIsToldAsNotKept(t *testing.T) {
	b, a := open(t, placeOf(t), Options{})
	shut(t, b)
	b.Keep(note(smelt, 1))
	if _, err := keepNow(b, note(smelt, 2)); !errors.Is(err, ErrClosed) {
		t.Errorf("got %v", err)
	}
	if err := b.ImportJSON(Journal{}); !errors.Is(err, ErrClosed) {
		t.Errorf("got %v", err)
	}
	if k := a.list()[0]; !errors.Is(k.Err, ErrClosed) || len(k.Entries) != 1 {
		t.Errorf("got %+v", k)
	}
	if err := b.Close(); err != nil {
		t.Errorf("closing twice: %v", err)
	}
}

func TestNamesOfStreams(t *testing.T) {
	for _, good := range []string{"house", smelt, "undated-x-a", "7"} {
		if err := twin.ValidStream(good); err != nil {
			t.Error(err)
		}
	}
	for _, bad := range []string{"", "..", "a/b", `a\b`, "A", "a.2", "-a", "a b", "é", "nul\x00", strings.Repeat("a", 101)} {
		if twin.ValidStream(bad) == nil {
			t.Errorf("%q is taken for a name", bad)
		}
	}
}

func TestPathMayBeAFolder(t *testing.T) {
	dir := t.TempDir()
	b, _ := open(t, dir, Options{})
	keep(t, b, note(smelt, 1))
	if b.Path() != filepath.Join(dir, "book.db") || !disk.Exists(filepath.Join(dir, "book.db.twins", smelt+".jsonl")) {
		t.Errorf("the book stands at %s", b.Path())
	}
	files, err := os.ReadDir(dir)
	if err != nil || len(files) != 2 {
		t.Errorf("making a book leaves %v, %v", files, err)
	}
	if len(b.UID()) != 16 {
		t.Errorf("uid %q", b.UID())
	}
}

// TestRandomKeepingAgainstAList keeps, closes and opens at random and compares
// with plain lists.
func TestRandomKeepingAgainstAList(t *testing.T) {
	streams := []string{smelt, "2026-06-01-reedhollow-b", entry.House}
	rapid.Check(t, func(rt *rapid.T) {
		dir, err := os.MkdirTemp(t.TempDir(), "b")
		if err != nil {
			rt.Fatal(err)
		}
		path, want, n := filepath.Join(dir, "book.db"), map[string][]string{}, 0
		b, _ := open(t, path, Options{})
		compare := func() {
			for _, s := range streams {
				var texts []string
				es, err := b.Entries(s)
				var none *twin.NoStreamError
				if err != nil && !errors.As(err, &none) {
					rt.Fatal(err)
				}
				for _, e := range es {
					texts = append(texts, e.Event.(entry.Note).Text)
				}
				if d := cmp.Diff(want[s], texts); d != "" {
					rt.Fatalf("%s:\n%s", s, d)
				}
			}
		}
		rt.Repeat(map[string]func(*rapid.T){
			"keep": func(rt *rapid.T) {
				var es []entry.Entry
				for range rapid.IntRange(1, 5).Draw(rt, "entries") {
					n++
					e := note(rapid.SampledFrom(streams).Draw(rt, "stream"), n)
					want[e.Stream] = append(want[e.Stream], fmt.Sprintf("note %d", n))
					es = append(es, e)
				}
				if _, err := keepNow(b, es...); err != nil {
					rt.Fatal(err)
				}
			},
			"open again": func(rt *rapid.T) {
				if err := b.Close(); err != nil {
					rt.Fatal(err)
				}
				b, _ = open(t, path, Options{})
				if m := b.Mended(); len(m) > 0 {
					rt.Fatal(m)
				}
			},
			"tear the twin": func(rt *rapid.T) {
				s := rapid.SampledFrom(streams).Draw(rt, "stream")
				if err := b.Close(); err != nil {
					rt.Fatal(err)
				}
				if f := twinOf(path, s); disk.Exists(f) {
					text := read(t, f)
					write(t, f, text[:rapid.IntRange(0, len(text)).Draw(rt, "length")])
				}
				b, _ = open(t, path, Options{})
			},
			"compare": func(*rapid.T) { compare() },
		})
		compare()
		if err := b.Close(); err != nil {
			rt.Fatal(err)
		}
		if r, err := Check(path, Options{Summarise: counted}); err != nil || !r.OK() {
			rt.Fatal(r, err)
		}
	})
}
