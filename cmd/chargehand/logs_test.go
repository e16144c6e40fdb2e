package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/persist"
	"chargehand/tui/screen"
)

// theirs is a spreadsheet of somebody else's: a title, other names, pounds, cubic feet, a
// clock of twelve hours, a sum at the end. Invented.
const theirs = `Smelt at the meadow,,,,,,
,,,,,,
Date,Time,What we did,"Coal, lb",Ore lb,Blower,Remarks
5/25/2026,11:20,charge,4,2,,
5/25/2026,11:40,,,,25,smoke
5/25/2026,12:40,charge,4,4,26,
5/25/2026,1:05,charge,4,,,peep white
5/25/2026,1:50,pull,,,,
,,Total,12,6,,
`

// Without a word about its columns a log of others is taken by their names and figures, but
// not before somebody says yes; columns kept under a name are known again.
func TestColumnsAreGuessed(t *testing.T) {
	h := newHouse(t)
	file := filepath.Join(h.dir, "theirs.csv")
	if err := os.WriteFile(file, []byte(theirs), 0o600); err != nil {
		t.Fatal(err)
	}
	said := h.run("import", "--preview", file)
	for _, want := range []string{
		`--columns 'Date=date:m/d/y,Time=clock:12h,What we did=event,"Coal, lb=charcoal:lb",Ore lb=ore:lb,Blower=air:cfm,Remarks=note'`,
		"line 4: Date 5/25/2026, Time 11:20, What we did charge", "clock 11:20:00, event charge, date 2026-05-25, charcoal_kg 1.814, ore_kg 0.907",
		"5 rows read", "together 5.4 kg", "line 9 has no time", "1 blank of ore or charcoal", "nothing was kept",
	} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not said:\n%s", want, said)
		}
	}
	h.run("import", "--yes", "--save", "meadow sheets", "--blank-is-none", "--furnace", "Meadow", file)
	if again := h.run("import", "--preview", file); !strings.Contains(again, "columns as kept under meadow sheets") || strings.Contains(again, "1 blank") {
		t.Errorf("not known again:\n%s", again)
	}
	es := h.entries("2026-05-25-meadow-a")
	last := es[len(es)-1]
	if last.Event.Kind() != entry.KindExtract || last.Happened.Format("15:04") != "13:50" {
		t.Errorf("the last is %s at %s", last.Event.Kind(), last.Happened)
	}
	light := es[0].Event.(entry.Light)
	if got := strings.Join(light.Source, "|"); !strings.Contains(got, "Smelt at the meadow") || !strings.Contains(got, "line 9: Total; 12; 6") {
		t.Errorf("what was no row is kept as %q", got)
	}
}

// A log of ours with a slip in one name is no log of others: it is refused, as it was.
func TestALogOfOursIsNotGuessed(t *testing.T) {
	h := newHouse(t)
	file := filepath.Join(h.dir, "ours.csv")
	if err := os.WriteFile(file, []byte("clock,event,charcol_kg\n10:00,charge,2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if said := h.fails(exitFailed, "import", file); !strings.Contains(said, "no column is called") {
		t.Error(said)
	}
	if err := os.WriteFile(file, []byte("Moon,Sun\nfull,high\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if said := h.fails(exitFailed, "import", file); !strings.Contains(said, "has the columns Moon, Sun, and none could be guessed: no column is the time") {
		t.Error(said)
	}
}

// The screen lists folders and tables, reads a file once, and keeps what it showed.
func TestFilesForTheScreen(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{"b.csv": theirs, "A.TXT": "x", "c.pdf": "x", ".hidden.csv": "x"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(dir, "zebra"), 0o700); err != nil {
		t.Fatal(err)
	}
	w := world{getenv: func(string) string { return dir }, clock: func() entry.Stamp { return entry.Stamp{Wall: today} }, err: os.Stderr}
	book, err := writer(w, common{book: filepath.Join(dir, "book.db")}, func(persist.Ack) {})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	logs := fileLogs{w, book}
	f, err := logs.Folder(dir)
	if err != nil || f.Above != filepath.Dir(dir) {
		t.Fatal(f, err)
	}
	var names []string
	for _, one := range f.Files {
		names = append(names, one.Name)
	}
	if got := strings.Join(names, " "); !strings.HasSuffix(got, "zebra A.TXT b.csv") || strings.Contains(got, "pdf") || strings.Contains(got, "hidden") {
		t.Errorf("it lists %s", got)
	}
	if _, err := logs.Folder(filepath.Join(dir, "gone")); err == nil {
		t.Error("a folder that is not there is listed")
	}
	if _, err := logs.Open(filepath.Join(dir, "gone.csv")); err == nil {
		t.Error("a file that is not there is opened")
	}
	sheet, err := logs.Open("~/b.csv")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, "b.csv")); err != nil {
		t.Fatal(err)
	}
	m := entry.Mapping{Columns: columns.Mapping(sheet.Heads, columns.Guesses(sheet.Heads, sheet.Rows, sheet.DecimalComma)), BlankIsNone: true}
	read := sheet.Read(m)
	if read.Err != nil || read.Table.Rows != 5 || read.Smelt.Charges != 3 || !read.Smelt.Ore.Known || float64(read.Smelt.Ore.Value) < 2.71 || float64(read.Smelt.Ore.Value) > 2.73 {
		t.Errorf("%+v", read)
	}
	if got := sheet.Read(entry.Mapping{}); got.Err != columns.ErrNoTime {
		t.Errorf("%v", got.Err)
	}
	id, n, err := sheet.Take(m, screen.TakenAs{Furnace: "Meadow", Day: time.Time{}})
	if err != nil || id != "2026-05-25-meadow-a" || n < 8 {
		t.Errorf("%s %d %v", id, n, err)
	}
	if _, _, err := sheet.Take(m, screen.TakenAs{Furnace: "Meadow"}); err == nil {
		t.Error("the same log is taken in twice")
	}
}

// fails runs a subcommand, which has to fail so, and gives its complaint.
func (h place) fails(code int, args ...string) string {
	h.t.Helper()
	var out, complaint bytes.Buffer
	if got := run(append([]string{"--book", h.book()}, args...), world{
		out: &out, err: &complaint, getenv: func(string) string { return "" },
		clock: func() entry.Stamp { return entry.Stamp{Wall: today} },
	}); got != code {
		h.t.Fatalf("%v gave %d: %s", args, got, complaint.String())
	}
	return complaint.String()
}

// What a spreadsheet saves in other ways than as UTF-8 text says how to save it, and not
// that a column has no name of ours.
func TestFilesOfASpreadsheetSayHowToSaveThem(t *testing.T) {
	h := newHouse(t)
	for name, c := range map[string]struct{ text, says string }{
		"latin.csv":  {"Zeit;Holzkohle;Bemerkung\n08:00;1,9;gef\xfcllt\n", `"08:00;1,9;gef?llt" is not UTF-8 (` + filepath.Join(h.dir, "latin.csv") + " line 2): save it as UTF-8"},
		"sheet.xlsx": {"PK\x03\x04\x14\x00\x06", "is a spreadsheet's own file, no table of text: save its sheet there as CSV"},
		"sheet.xls":  {"\xd0\xcf\x11\xe0\xa1\xb1", "is a spreadsheet's own file"},
	} {
		path := filepath.Join(h.dir, name)
		if err := os.WriteFile(path, []byte(c.text), 0o600); err != nil {
			t.Fatal(err)
		}
		if said := h.fails(exitFailed, "import", path); !strings.Contains(said, c.says) {
			t.Errorf("%s: %s", name, said)
		}
	}
}
