package datapack_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/session"
	"chargehand/persist"
	"chargehand/persist/datapack"
)

func source(es []entry.Entry) (datapack.Source, error) {
	lines, err := persist.LinesOf(es)
	if err != nil {
		return datapack.Source{}, err
	}
	house, err := houseLines()
	return datapack.Source{Stream: es[0].Stream, Lines: lines, House: house}, err
}

func demo(t testing.TB) datapack.Source {
	t.Helper()
	es, err := invented.Smelt()
	if err != nil {
		t.Fatal(err)
	}
	src, err := source(es)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

var at = time.Date(2026, 5, 1, 10, 0, 0, 0, time.UTC)

// houseLines are a lot, one that is crossed out, and one that is renamed; the lab's answers
// on two samples; a bloom and its billet; a lot that was roasted of another, counted in a
// sack, and a third that was counted in the same.
func houseLines() ([][]byte, error) {
	lot := func(uid, name string) entry.LotStored {
		return entry.LotStored{Lot: entry.Lot{UID: entry.UID(uid), Name: name, What: entry.Ore}}
	}
	sacks := func(lot entry.UID, n entry.Count) entry.Amount {
		return entry.Amount{Lot: lot, Measure: "f6f6f6f6f6f6f6f6", Count: entry.Some(n)}
	}
	var es []entry.Entry
	for i, ev := range []entry.Event{
		lot("a1a1a1a1a1a1a1a1", "=cmd"), lot("b2b2b2b2b2b2b2b2", "gone"), entry.Strike{Target: entry.Ref{Seq: 2}}, lot("c3c3c3c3c3c3c3c3", "old"), entry.Amend{Target: entry.Ref{Seq: 4}, Event: lot("c3c3c3c3c3c3c3c3", "new")},
		entry.SampleResult{Sample: "7-s 3", Assay: entry.Assay{Parts: map[string]entry.Assayed{"FeO": {Percent: 52}}}}, entry.SampleResult{Sample: "8-S1", Assay: entry.Assay{Parts: map[string]entry.Assayed{"FeO": {Percent: 40}}}},
		entry.Piece{UID: "d4d4d4d4d4d4d4d4", Form: entry.BloomPiece, From: []entry.PieceFrom{{Smelt: "invented-reed-hollow"}}, Mass: entry.Some(entry.Kilogram(4))},
		entry.Piece{UID: "e5e5e5e5e5e5e5e5", Form: entry.Billet, From: []entry.PieceFrom{{Piece: "d4d4d4d4d4d4d4d4"}}, Mass: entry.Some(entry.Kilogram(2))},
		entry.MeasureNamed{Measure: entry.Measure{UID: "f6f6f6f6f6f6f6f6", Name: "sack", What: entry.Ore}}, lot("0707070707070707", "raw"), lot("1818181818181818", "roasted"),
		entry.Deed{Does: entry.Dug, Out: []entry.Amount{sacks("0707070707070707", 4)}},
		entry.Deed{Does: entry.Roasted, In: []entry.Amount{sacks("0707070707070707", 3)}, Out: []entry.Amount{{Lot: "1818181818181818", Mass: entry.Some(entry.Kilogram(30))}}},
		lot("2929292929292929", "another"), entry.Deed{Does: entry.Dug, Out: []entry.Amount{sacks("2929292929292929", 2)}},
	} {
		h := at.Add(time.Duration(i) * time.Minute)
		es = append(es, entry.Entry{Version: entry.Version, Stream: entry.House, Happened: h, Kept: h, Event: ev})
	}
	return persist.LinesOf(es)
}

// made is the package of the invented smelt: its figures each minute take a while.
var made = sync.OnceValues(func() (map[string][]byte, error) {
	es, err := invented.Smelt()
	if err != nil {
		return nil, err
	}
	src, err := source(es)
	if err != nil {
		return nil, err
	}
	return datapack.Files(src, "book1")
})

func files(t testing.TB) fstest.MapFS {
	t.Helper()
	fs, err := made()
	if err != nil {
		t.Fatal(err)
	}
	folder := fstest.MapFS{}
	for name, text := range fs {
		folder[name] = &fstest.MapFile{Data: text}
	}
	return folder
}

// What the standard asks of a descriptor and of its tables (Data Package 2.0 and Table
// Schema 2.0, datapackage.org, 26 June 2024): names, paths, types, keys, and every cell
// as its column says.
func TestThePackageKeepsToTheStandard(t *testing.T) {
	folder := files(t)
	var d struct {
		Schema    string `json:"$schema"`
		Name      string `json:"name"`
		Resources []struct {
			Name, Type, Path, Encoding, Hash string
			Bytes                            int
			Schema                           struct {
				Fields []struct {
					Name, Type, Unit, Description string
					Constraints                   struct{ Required bool }
				}
				PrimaryKey []string
			}
		}
	}
	if err := json.Unmarshal(folder["datapackage.json"].Data, &d); err != nil {
		t.Fatal(err)
	}
	name := regexp.MustCompile(`^[a-z0-9._-]+$`)
	if d.Schema != "https://datapackage.org/profiles/2.0/datapackage.json" || !name.MatchString(d.Name) || len(d.Resources) < 7 {
		t.Errorf("the descriptor: %q, %q, %d tables", d.Schema, d.Name, len(d.Resources))
	}
	cells := map[string]*regexp.Regexp{
		"string": regexp.MustCompile(``), "integer": regexp.MustCompile(`^[+-]?\d+$`), "number": regexp.MustCompile(`^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$`),
		"datetime": regexp.MustCompile(`^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$`),
	}
	seen := map[string]bool{}
	for _, r := range d.Resources {
		if seen[r.Name] || !name.MatchString(r.Name) || r.Type != "table" || r.Path == "" || strings.HasPrefix(r.Path, "/") || strings.Contains(r.Path, "..") || strings.HasPrefix(r.Path, ".") {
			t.Errorf("resource %q: type %q, path %q", r.Name, r.Type, r.Path)
		}
		seen[r.Name] = true
		text := folder[r.Path].Data
		if len(text) != r.Bytes {
			t.Errorf("%s has %d bytes, the descriptor says %d", r.Path, len(text), r.Bytes)
		}
		if !bytes.Contains(text, []byte("\r\n")) {
			t.Errorf("%s does not end its lines as the standard's tables do when nothing is said", r.Path)
		}
		rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var keys []int
		for _, k := range r.Schema.PrimaryKey {
			keys = append(keys, slices.Index(rows[0], k))
		}
		met := map[string]bool{}
		for n, row := range rows[1:] {
			key := ""
			for _, k := range keys {
				key += row[k] + "\x00"
			}
			if met[key] {
				t.Errorf("%s, row %d: the key is there twice", r.Path, n+2)
			}
			met[key] = true
			for i, f := range r.Schema.Fields {
				if row[i] == "" && f.Constraints.Required || row[i] != "" && !cells[f.Type].MatchString(row[i]) {
					t.Fatalf("%s, row %d, %s: %q is no %s", r.Path, n+2, f.Name, row[i], f.Type)
				}
				if f.Name != "line" && row[i] != "" && strings.ContainsAny(row[i][:1], "=@\t") {
					t.Errorf("%s, row %d, %s: %q could be taken for a formula", r.Path, n+2, f.Name, row[i])
				}
			}
		}
		for i, f := range r.Schema.Fields {
			if rows[0][i] != f.Name || cells[f.Type] == nil {
				t.Errorf("%s: column %d is %q, the descriptor says %q of type %q", r.Path, i, rows[0][i], f.Name, f.Type)
			}
			if f.Unit != "" && f.Unit != "1" && !strings.HasSuffix(f.Description, "in "+f.Unit) {
				t.Errorf("%s: the unit of %s is not in its description", r.Path, f.Name)
			}
		}
	}
}

// A package gives back the same bytes, without a doubt; the same source the same files.
func TestThePackageComesBackWhole(t *testing.T) {
	src := demo(t)
	folder := files(t)
	p, err := datapack.Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Doubts) > 0 || p.Book != "book1" || len(p.House) != 16 {
		t.Errorf("doubts %q, book %q, %d entries of the house", p.Doubts, p.Book, len(p.House))
	}
	if p.Journal.Stream != src.Stream || !slices.EqualFunc(p.Journal.Lines, src.Lines, bytes.Equal) {
		t.Error("the lines that came back are not those that went")
	}
	again, err := datapack.Files(src, "book1")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range again {
		if !bytes.Equal(text, folder[name].Data) {
			t.Errorf("%s differs when it is written again", name)
		}
	}
}

// A table that was changed is a doubt that names table, row and column; the smelt comes
// from its entries all the same.
func TestAChangedTableIsADoubt(t *testing.T) {
	for _, table := range []string{"smelt", "figures", "warnings", "account", "lots"} {
		src := demo(t)
		folder := files(t)
		rows, err := csv.NewReader(bytes.NewReader(folder[table+".csv"].Data)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		last := len(rows) - 1
		rows[last][len(rows[last])-2] += "9"
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.UseCRLF = true
		if err := w.WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		folder[table+".csv"].Data = b.Bytes()
		p, err := datapack.Read(folder)
		if err != nil {
			t.Fatal(err)
		}
		told := strings.Join(p.Doubts, "; ")
		if !strings.Contains(told, fmt.Sprintf("%s.csv, row %d: %s is", table, last+1, rows[0][len(rows[0])-2])) {
			t.Errorf("%s: the doubts are %q", table, told)
		}
		if len(p.Journal.Lines) != len(src.Lines) {
			t.Errorf("%s: %d lines came back", table, len(p.Journal.Lines))
		}
	}
}

// A package that was written before the pieces had yields is taken without a doubt; one
// with a yield changed is not.
func TestAnEarlierTableOfPieces(t *testing.T) {
	f := files(t)
	rows, err := csv.NewReader(bytes.NewReader(f["pieces.csv"].Data)).ReadAll()
	if err != nil || len(rows) < 2 || len(rows[0]) != 9 || rows[1][7] == "" {
		t.Fatalf("pieces %v, %v", rows, err)
	}
	put := func(rows [][]string) {
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.UseCRLF = true
		if err := w.WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		f["pieces.csv"] = &fstest.MapFile{Data: b.Bytes()}
	}
	told := func() string {
		p, err := datapack.Read(f)
		if err != nil {
			t.Fatal(err)
		}
		return strings.Join(p.Doubts, "\n")
	}
	rows[1][7] = "0.9"
	put(rows)
	if got := told(); !strings.Contains(got, "of_ore is \"0.9\"") {
		t.Errorf("doubts %q", got)
	}
	for i := range rows {
		rows[i] = rows[i][:5]
	}
	put(rows)
	if got := told(); strings.Contains(got, "pieces.csv row") || strings.Contains(got, "of_ore") || strings.Count(got, "pieces.csv") != 1 { // the sum of the file is another
		t.Errorf("doubts %q", got)
	}
}

// A package tells of lots and measures by their names, and lists also the lots that were taken
// to the fire later. One that was written before it did so is taken without a doubt.
func TestNamesAndLaterLotsAreTold(t *testing.T) {
	pond, hill, sack := entry.UID("a1a1a1a1a1a1a1a1"), entry.UID("b2b2b2b2b2b2b2b2"), "f6f6f6f6f6f6f6f6"
	line := func(stream string, evs ...entry.Event) [][]byte {
		var es []entry.Entry
		for i, ev := range evs {
			es = append(es, entry.Entry{Version: entry.Version, Stream: stream, Seq: uint64(i + 1), Happened: at.Add(time.Duration(i) * time.Minute), Kept: at, Event: ev})
		}
		lines, err := persist.LinesOf(es)
		if err != nil {
			t.Fatal(err)
		}
		return lines
	}
	lot := func(uid entry.UID, name string) entry.Lot { return entry.Lot{UID: uid, Name: name, What: entry.Ore} }
	src := datapack.Source{Stream: "s", Lines: line("s", entry.Light{UID: "u", Lots: []entry.Lot{lot(pond, "pond")}},
		entry.LotStored{Lot: lot(hill, "hill")}, entry.Charge{Parts: entry.Parts{{What: entry.Ore, Lot: string(hill), Mass: entry.Some(entry.Kilogram(1))}}}),
		House: line(entry.House, entry.MeasureNamed{Measure: entry.Measure{UID: entry.UID(sack), Name: "sack"}}, entry.LotStored{Lot: lot(pond, "pond")},
			entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: pond, Measure: sack, Count: entry.Some(entry.Count(3))}}},
			entry.Deed{Does: entry.Sold, In: []entry.Amount{{Lot: hill, Mass: entry.Some(entry.Kilogram(2))}}})}
	all, err := datapack.Files(src, "book1")
	if err != nil {
		t.Fatal(err)
	}
	folder := fstest.MapFS{}
	for name, data := range all {
		folder[name] = &fstest.MapFile{Data: data}
	}
	for file, want := range map[string][]string{
		"house_entries.csv": {"dug: 3 sacks of pond", "sold: 2 kg hill"}, "entries.csv": {"1 kg ore (hill)"}, "lots.csv": {"1," + string(pond) + ",pond", "2," + string(hill) + ",hill"},
	} {
		for _, says := range want {
			if !strings.Contains(string(all[file]), says) {
				t.Errorf("%s does not say %q:\n%s", file, says, all[file])
			}
		}
	}
	earlier := func(file string, was, is string) {
		if !strings.Contains(string(folder[file].Data), was) {
			t.Fatalf("%s has no %q", file, was)
		}
		folder[file].Data = []byte(strings.Replace(string(folder[file].Data), was, is, 1))
	}
	earlier("house_entries.csv", "dug: 3 sacks of pond", "dug: 3 "+sack+"s of "+string(pond))
	lots := strings.SplitAfter(string(folder["lots.csv"].Data), "\n")
	earlier("lots.csv", lots[2], "")
	p, err := datapack.Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range p.Doubts {
		if strings.Contains(d, "row") {
			t.Errorf("a doubt of an earlier package: %s", d)
		}
	}
}

// A package that is not whole is refused with one clear error.
func TestASpoiltPackageIsRefused(t *testing.T) {
	for name, spoil := range map[string]func(fstest.MapFS){
		"no descriptor":    func(f fstest.MapFS) { delete(f, "datapackage.json") },
		"no JSON":          func(f fstest.MapFS) { f["datapackage.json"].Data = []byte("{") },
		"no table":         func(f fstest.MapFS) { f["datapackage.json"].Data = []byte(`{"resources":[]}`) },
		"no entries":       func(f fstest.MapFS) { delete(f, "entries.csv") },
		"no column line":   func(f fstest.MapFS) { f["entries.csv"].Data = []byte("seq\r\n1\r\n") },
		"an empty table":   func(f fstest.MapFS) { f["entries.csv"].Data = nil },
		"a path above":     func(f fstest.MapFS) { replace(f, `"path": "lots.csv"`, `"path": "../lots.csv"`) },
		"an absolute path": func(f fstest.MapFS) { replace(f, `"path": "lots.csv"`, `"path": "/etc/passwd"`) },
		"a hidden folder":  func(f fstest.MapFS) { replace(f, `"path": "lots.csv"`, `"path": ".x/lots.csv"`) },
		"a changed line": func(f fstest.MapFS) {
			f["entries.csv"].Data = bytes.Replace(f["entries.csv"].Data, []byte(`""seq"":3`), []byte(`""seq"":4`), 1)
		},
	} {
		t.Run(name, func(t *testing.T) {
			folder := files(t)
			spoil(folder)
			if p, err := datapack.Read(folder); err == nil {
				t.Errorf("it was taken: %d lines, doubts %q", len(p.Journal.Lines), p.Doubts)
			}
		})
	}
}

// Entries that are missing are a gap of the smelt, which every screen says; the package
// says that it was changed.
func TestALineGoneIsToldOf(t *testing.T) {
	folder := files(t)
	rows := bytes.Split(folder["entries.csv"].Data, []byte("\r\n"))
	folder["entries.csv"].Data = bytes.Join(slices.Delete(slices.Clone(rows), 5, 6), []byte("\r\n"))
	if p, err := datapack.Read(folder); err == nil && len(p.Doubts) < 2 {
		t.Errorf("taken with the doubts %q", p.Doubts)
	}
}

func replace(f fstest.MapFS, from, to string) {
	f["datapackage.json"].Data = bytes.Replace(f["datapackage.json"].Data, []byte(from), []byte(to), 1)
}

// Only what the smelt leans on leaves the house, and what changes it: the lab's answer on
// its own sample, not on another's; of a lot that was roasted the one that it was roasted of.
func TestWhatOfTheHouseGoesWith(t *testing.T) {
	lines, err := houseLines()
	if err != nil {
		t.Fatal(err)
	}
	seqs := func(uids ...string) string {
		light := entry.Light{UID: "s"}
		for _, u := range uids {
			light.Lots = append(light.Lots, entry.Lot{UID: entry.UID(u)})
		}
		var all []string
		for _, l := range datapack.Leaning(session.Open("s", []entry.Entry{{Version: entry.Version, Stream: "s", Seq: 1, Event: light}, {Version: entry.Version, Stream: "s", Seq: 2, Event: entry.Sample{Of: "slag", Label: "7-S3"}}}), lines) {
			e, err := entry.Decode(l)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, strconv.FormatUint(e.Seq, 10))
		}
		return strings.Join(all, " ")
	}
	for want, got := range map[string]string{"6": seqs(), "1 6": seqs("a1a1a1a1a1a1a1a1"), "2 3 6": seqs("b2b2b2b2b2b2b2b2"), "4 5 6": seqs("c3c3c3c3c3c3c3c3"), "6 10 11 12 13 14": seqs("1818181818181818"), "1 4 5 6": seqs("c3c3c3c3c3c3c3c3", "a1a1a1a1a1a1a1a1")} {
		if got != want {
			t.Errorf("entries %q go with it, expected %q", got, want)
		}
	}
}
