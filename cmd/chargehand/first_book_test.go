package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	stores "chargehand/model/house"
	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist"
)

// firstBook is a copy of the book that the first version wrote.
func firstBook(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Join(root, "testdata", "book"))); err != nil {
		t.Fatal(err)
	}
	return filepath.Join(dir, "book.db")
}

const firstSmelt = "2026-05-09-reed-hollow-a"

// A book of the first version is read as it was: nothing is lost, its lines stay
// what they are, its summaries are made anew and say what they said.
func TestABookOfTheFirstVersionIsRead(t *testing.T) {
	path := firstBook(t)
	written := twinsOf(t, path)
	r, err := persist.OpenReader(path, persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	list, err := r.Summaries()
	if err != nil || len(list) != 3 {
		t.Fatalf("%v, %v", list, err)
	}
	for i, want := range []struct {
		id                   string
		charges              int
		charcoal, ore, bloom float64
		practice, imported   bool
	}{ // as the first version listed them
		{firstSmelt, 3, 17.1, 4.5, 1.2, false, false},
		{"2026-05-12-reed-hollow-a", 3, 17.1, 4.5, 1.2, true, false},
		{"2026-05-13-course-a", 2, 12.8, 2.5, 0, false, true},
	} {
		s := list[i]
		near := func(m entry.Maybe[entry.Kilogram], v float64) bool {
			return m.Known == (v > 0) && float64(m.Value) > v-1e-9 && float64(m.Value) < v+1e-9
		}
		if s.ID != want.id || s.Charges != want.charges || !near(s.Charcoal, want.charcoal) || !near(s.Ore, want.ore) || !near(s.Bloom, want.bloom) ||
			s.Practice != want.practice || s.Imported != want.imported {
			t.Errorf("%+v, want %+v", s, want)
		}
		if s.Teaches() {
			t.Errorf("%s has no mix and teaches", s.ID)
		}
	}
	if !list[0].OreDry.Known {
		t.Error("the summary is the one that was stored, of an older rule")
	}

	report, err := persist.Check(path, persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	if !report.OK() {
		t.Errorf("faults: %+v", report.Findings)
	}
	b, err := persist.Open(path, persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if said := b.Mended(); len(said) != 1 || !strings.Contains(said[0], "the twins are in "+path) {
		t.Errorf("mended: %q", said) // their folder got another name since
	}
	for stream, was := range written {
		lines, err := linesOf(b, stream)
		if err != nil || !bytes.Equal(append(bytes.Join(lines, []byte("\n")), '\n'), was) {
			t.Errorf("%s is not what it was (%v)", stream, err)
		}
		for _, line := range lines { // what this version would write of it is the same
			e, err := entry.Decode(line)
			if err != nil {
				t.Fatal(err)
			}
			if again, _ := entry.Encode(e); !bytes.Equal(again, line) {
				t.Errorf("%s\nwould be written as\n%s", line, again)
			}
		}
	}
}

// twinsOf are the plain-text twins beside a book, by stream: those in the folder of the
// first version before the book was opened.
func twinsOf(t *testing.T, path string) map[string][]byte {
	t.Helper()
	folder := path + ".twins"
	if _, err := os.Stat(folder); err != nil {
		folder = strings.TrimSuffix(path, ".db") + ".twins"
	}
	names, err := filepath.Glob(filepath.Join(folder, "*.jsonl"))
	if err != nil || len(names) != 4 {
		t.Fatalf("twins %q, %v", names, err)
	}
	all := map[string][]byte{}
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		all[strings.TrimSuffix(filepath.Base(name), ".jsonl")] = b
	}
	return all
}

// The house of the first version is folded: things without a uid go by their
// names, practice takes nothing, and heats in the forge stand under the bloom
// of their smelt.
func TestTheHouseOfTheFirstVersion(t *testing.T) {
	r, err := persist.OpenReader(firstBook(t), persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	entries, err := r.Entries(entry.House)
	if err != nil {
		t.Fatal(err)
	}
	var uses []stores.Use
	for _, stream := range []string{firstSmelt, "2026-05-12-reed-hollow-a", "2026-05-13-course-a"} {
		es, err := r.Entries(stream)
		if err != nil {
			t.Fatal(err)
		}
		uses = append(uses, stores.UsedBy(es))
	}
	s := stores.Fold(entries, uses, time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC))
	if s.Settings["background"] != "light" || s.Settings["unit of mass"] != "lb" {
		t.Errorf("settings %v", s.Settings)
	}
	if f, ok := s.Furnace("Reed Hollow"); !ok || f.ID != "name:Reed Hollow" || f.Last().Furnace.Bore.Value != 28 {
		t.Errorf("furnaces %+v", s.Furnaces)
	}
	if len(s.Measures) != 1 || s.Measures[0].ID() != "name:bucket" || len(s.Plans) != 1 || len(s.Plans[0].Ramp) != 1 {
		t.Errorf("measures %+v, plans %+v", s.Measures, s.Plans)
	}
	// 30 kg of 5 % water; 4.5 kg went into one smelt, nothing into practice.
	if l, ok := s.Lot("pond"); !ok || len(l.Changes) != 4 || l.Left.Kg < 25.5/1.05-1e-9 || l.Left.Kg > 25.5/1.05+1e-9 {
		t.Errorf("pond %+v", l)
	}
	if len(s.Pieces) != 1 {
		t.Fatalf("pieces %+v", s.Pieces)
	}
	if p := s.Pieces[0]; p.UID != entry.NameUID(firstSmelt) || p.Form != entry.BloomPiece || len(p.OldHeats) != 2 || p.Mass.Value != 0.7 || p.From[0].Smelt != "00aa00aa00aa00aa" {
		t.Errorf("the bloom %+v", p)
	}
}

// What a newer version wrote is kept, shown as such, and goes whole through book,
// twin, export and import.
func TestWhatANewerVersionWroteSurvives(t *testing.T) {
	path := firstBook(t)
	b, err := persist.Open(path, persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	const odd = `"kind":"moon","event":{"phase":"full","odd":[1,2]}`
	raw := entry.Unknown{Name: "moon", Raw: []byte(`{"phase":"full","odd":[1,2]}`)}
	es, err := b.Entries(entry.House)
	if err != nil {
		t.Fatal(err)
	}
	if u, ok := es[len(es)-1].Event.(entry.Unknown); !ok || u.Name != "moon" || !strings.Contains((words.Units{}).Event(u), "newer version") {
		t.Errorf("read as %#v", es[len(es)-1].Event)
	}
	es, err = b.Entries(firstSmelt)
	if err != nil {
		t.Fatal(err)
	}
	at := es[0].Happened.Add(time.Minute)
	b.Keep(entry.Entry{Stream: firstSmelt, Happened: at, Event: raw},
		entry.Entry{Stream: firstSmelt, Happened: at, Event: entry.Amend{Target: entry.Ref{Seq: 2}, Event: raw}})
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	b, err = persist.Open(path, persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	lines, err := linesOf(b, firstSmelt)
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(twinsOf(t, path)[firstSmelt], []byte(odd)); n != 2 {
		t.Errorf("the twin has it %d times", n)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := persist.ExportJSON(&out, lines); err != nil {
		t.Fatal(err)
	}
	j, err := persist.ReadJSON(&out)
	if err != nil {
		t.Fatal(err)
	}
	other, err := persist.Open(filepath.Join(t.TempDir(), "other.db"), persist.Options{Summarise: shelf.Of})
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	if err := other.ImportJSON(j); err != nil {
		t.Fatal(err)
	}
	back, err := linesOf(other, firstSmelt)
	if err != nil || !bytes.Equal(bytes.Join(back, nil), bytes.Join(lines, nil)) {
		t.Errorf("came back otherwise (%v)", err)
	}
	if s := fold.Fold(es, fold.All, fold.Latest(es)); s.Phase != entry.Closed {
		t.Errorf("phase %q", s.Phase)
	}
}

// linesOf gives the stored lines of a stream.
func linesOf(b *persist.Book, stream string) ([][]byte, error) {
	r, err := b.Read(stream)
	return r.Lines, err
}
