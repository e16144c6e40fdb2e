package mapcsv_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/model/shelf"
	"chargehand/persist/logcsv"
	"chargehand/persist/logcsv/logcsvtest"
	"chargehand/persist/mapcsv"
)

// theirs is a log of ours as somebody else might have kept it: other names, pounds,
// Fahrenheit, cubic feet a minute, inches.
func theirs(t *testing.T, text []byte) []byte {
	t.Helper()
	names := map[string]string{"clock": "Time of day", "event": "What", "charcoal_kg": "Coal, lb", "measures": "Buckets", "ore_kg": "Ore", "scoops": "Scoops", "air_l_min": "Blower", "temp_c": "Temp", "height_cm": "Stack", "note": "Remarks", "date": "Day"}
	times := map[string]func(float64) float64{
		"charcoal_kg": func(v float64) float64 { return v / 0.45359237 }, "ore_kg": func(v float64) float64 { return v / 0.45359237 },
		"air_l_min": func(v float64) float64 { return v / 28.316846592 }, "temp_c": func(v float64) float64 { return v*9/5 + 32 }, "height_cm": func(v float64) float64 { return v / 2.54 },
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	for i, row := range rows {
		for j, name := range rows[0] {
			switch f := times[name]; {
			case i == 0:
				continue
			case f != nil && row[j] != "":
				v, err := strconv.ParseFloat(row[j], 64)
				if err != nil {
					t.Fatal(err)
				}
				row[j] = strconv.FormatFloat(f(v), 'f', 6, 64)
			}
		}
		if i == 0 {
			continue
		}
		if i == 1 {
			heads := make([]string, len(rows[0]))
			for j, name := range rows[0] {
				heads[j] = names[name]
			}
			w.Write(heads)
		}
		w.Write(row)
	}
	w.Flush()
	return out.Bytes()
}

const spec = `Time of day=clock,What=event,"Coal, lb=charcoal:lb",Buckets=measures,Ore=ore:lb,Scoops=scoops,Blower=air:cfm,Temp=temp:F,Stack=height:in,Remarks=note,Day=date`

// Every published log, with other names and units, is the same smelt again.
func TestLogsInPoundsAreTheSame(t *testing.T) {
	all, err := columns.Parse(spec)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range logcsvtest.Paths(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			want, err := logcsv.Read(bytes.NewReader(text), logcsv.Options{})
			if err != nil {
				t.Fatal(err)
			}
			foreign := theirs(t, text)
			heads := string(foreign[:bytes.IndexByte(foreign, '\n')])
			m := map[string]entry.Mapped{}
			for name, to := range all {
				if strings.Contains(heads, name) {
					m[name] = to
				}
			}
			table, err := mapcsv.Read(bytes.NewReader(foreign), "x.csv", m, mapcsv.Options{})
			if err != nil {
				t.Fatal(err)
			}
			got, err := logcsv.Read(bytes.NewReader(table.CSV), logcsv.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if len(got) != len(want) {
				t.Fatalf("%d entries, %d in kg", len(got), len(want))
			}
			for i := range got {
				if got[i].Event.Kind() != want[i].Event.Kind() || !got[i].Happened.Equal(want[i].Happened) {
					t.Errorf("entry %d: %s at %s, want %s at %s", i+1, got[i].Event.Kind(), got[i].Happened, want[i].Event.Kind(), want[i].Happened)
				}
			}
			a, b := shelf.Of("s", got), shelf.Of("s", want)
			for name, d := range map[string]float64{"ore": float64(a.Ore.Value - b.Ore.Value), "charcoal": float64(a.Charcoal.Value - b.Charcoal.Value)} {
				if math.Abs(d) > 0.05 {
					t.Errorf("%s differs by %g kg", name, d)
				}
			}
			for _, c := range table.Totals {
				if c.Beyond {
					t.Errorf("%+v is doubted", c)
				}
			}
		})
	}
}

// A unit that is wrong by much is doubted, with the one that would do.
func TestUnitsAreDoubted(t *testing.T) {
	for _, c := range []struct{ column, cells, doubt string }{
		{"air", "15 16 17", "cfm"}, {"temp", "2200 2300 2400", "F"}, {"charcoal", "1800 1900 1800", "g"}, {"height", "0.5 0.48 0.52", "m"},
		{"air", "700 720 690", ""}, {"ore", "1 2 0.5", ""}, {"temp", "1200", ""},
	} {
		text := "t,x\n"
		for i, cell := range strings.Fields(c.cells) {
			text += fmt.Sprintf("10:%02d,%s\n", i, cell)
		}
		table, err := mapcsv.Read(strings.NewReader(text), "x", map[string]entry.Mapped{"t": {Ours: "clock"}, "x": {Ours: c.column}}, mapcsv.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := table.Totals[0]; got.Doubt != c.doubt || got.Beyond != (c.doubt != "") {
			t.Errorf("%s %s: %+v", c.column, c.cells, got)
		}
	}
}

// Minutes since the start go on into the next day; a clock of twelve hours is read; a word
// of theirs that is none of ours goes to the note, and a row is what stands in it.
func TestTimesAndWords(t *testing.T) {
	m, err := columns.Parse("min=clock:min,what=event,coal=charcoal:kg,air=air")
	if err != nil {
		t.Fatal(err)
	}
	table, err := mapcsv.Read(strings.NewReader("min;what;coal;air\n0;lit;;\n\n35,5;bucket 1;1,8;\n40;Slag tap;;\n60;up;;700\n1000;;0;\n"), "x", m, mapcsv.Options{Begin: 9*60 + 30})
	if err != nil {
		t.Fatal(err)
	}
	es, err := logcsv.Read(bytes.NewReader(table.CSV), logcsv.Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, table.CSV)
	}
	var got []string
	for _, e := range es[1:] {
		got = append(got, e.Happened.Format("2 15:04:05 ")+string(e.Event.Kind()))
	}
	want := "1 09:30:00 note, 1 10:05:30 charge, 1 10:05:30 note, 1 10:10:00 tap, 1 10:30:00 blast, 1 10:30:00 note"
	if strings.Join(got, ", ") != want {
		t.Errorf("%s\nwant %s", strings.Join(got, ", "), want)
	}
	table, err = mapcsv.Read(strings.NewReader("t,c\n11:50 AM,1\n12:10 pm,1\n1:05 PM,1\n"), "x", map[string]entry.Mapped{"t": {Ours: "clock"}, "c": {Ours: "charcoal"}}, mapcsv.Options{})
	if err != nil || !strings.Contains(string(table.CSV), "13:05:00") || !strings.Contains(string(table.CSV), "12:10:00") {
		t.Errorf("%v\n%s", err, table.CSV)
	}
}

// What is wrong is told with its line, its column and what to do.
func TestWhatIsWrong(t *testing.T) {
	m := map[string]entry.Mapped{"t": {Ours: "clock"}, "c": {Ours: "charcoal", Unit: "lb"}}
	for text, want := range map[string]string{
		"":                         "no row of column names",
		"t,c\n":                    "the log has no rows",
		"t,d\n1:00,2\n":            "there is no such column (x.csv line 1, column c): the file has t, d",
		"t,c\n,1\n":                "the log has no rows",
		"t,c\n1:00,heavy":          `"heavy" is not a number (x.csv line 2, column c)`,
		"t,c\n1:00,1\n1:10,\xff\n": `"1:10,?" is not UTF-8 (x.csv line 3): save it as UTF-8`,
		"\xff\xfet\x00,\x00":       "UTF-16",
	} {
		_, err := mapcsv.Read(strings.NewReader(text), "x.csv", m, mapcsv.Options{})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
	for _, spec := range []string{"", "Time", "Time=watch", "Time=clock", "Time=clock,Time=note", "a=clock,b=clock", "=clock,b=ore", "Time=clock,Ore=ore:stone", "Coal=charcoal:lb", "a=clock\nb=ore"} {
		if m, err := columns.Parse(spec); err == nil {
			t.Errorf("%q is taken as %v", spec, m)
		}
	}
}

// A sheet as a spreadsheet leaves it: times as shares of the day, digits in threes. A day that
// stands before the share is the row's.
func TestASheetWithSharesOfADay(t *testing.T) {
	const sheet = "Time,Charcoal (g)\n0.9792,\"1,900.5\"\n0.9861,\"1,850\"\n0.0035,900\n"
	look, err := mapcsv.Look(strings.NewReader(sheet), "x")
	if err != nil {
		t.Fatal(err)
	}
	m := columns.Mapping(look.Heads, columns.Guesses(look.Heads, look.Rows, look.DecimalComma))
	table, err := mapcsv.Read(strings.NewReader(sheet), "x", m, mapcsv.Options{})
	if want := "clock,event,date,charcoal_kg,note\n23:30:00,charge,,1.901,\n23:40:00,charge,,1.85,\n00:05:00,charge,,0.9,\n\n"; err != nil || string(table.CSV) != want {
		t.Errorf("%v\n%s\nwant\n%s", err, table.CSV, want)
	}
	if es, err := logcsv.Read(bytes.NewReader(table.CSV), logcsv.Options{Stream: "s"}); err != nil || es[len(es)-1].Happened.Sub(es[0].Happened) != 35*time.Minute {
		t.Errorf("%v: %v", err, es)
	}
	_, err = mapcsv.Read(strings.NewReader("Time,Charcoal (g)\n0.9792,1\n1.5,2\n"), "x", m, mapcsv.Options{})
	if err == nil || !strings.Contains(err.Error(), `"1.5" is no time of day as spreadsheets count it (x line 3, column Time)`) {
		t.Error(err)
	}
}

// No specification and no table breaks anything; what is read is a log of ours, or says in
// which line it is none.
func FuzzMapped(f *testing.F) {
	f.Add(spec, "Time of day,What,Ore\n10:00,charge,4.4\n")
	f.Add("t=clock:min,x=charcoal:g", "t;x\n0;1800\n5;\"\n")
	f.Add("a=b:c=d", "\ufeff#\n,,,\n")
	f.Add(`"t=clock",n=note`, "t\tn\n25:00\t=1+1\n")
	f.Fuzz(func(t *testing.T, spec, text string) {
		m, err := columns.Parse(spec)
		if err != nil {
			return
		}
		if err := columns.Check(m); err != nil {
			t.Fatalf("%q is taken and is wrong: %v", spec, err)
		}
		table, err := mapcsv.Read(strings.NewReader(text), "x", m, mapcsv.Options{Begin: 570})
		if err != nil {
			if !errors.As(err, new(*logcsv.Error)) {
				t.Errorf("%v", err)
			}
			return
		}
		if a, b := strings.Count(string(table.CSV), "\n"), strings.Count(text, "\n"); a < b-1 || a > b+1 {
			t.Errorf("%d lines of %d", a, b)
		}
		if _, err := logcsv.Read(bytes.NewReader(table.CSV), logcsv.Options{}); err != nil && !errors.As(err, new(*logcsv.Error)) {
			t.Errorf("%v", err)
		}
	})
}

// The sums under a sheet are no charge, whether "Total" stands in the column of the time or
// beside a blank one: the line is told and counts nowhere.
func TestSumsUnderASheetAreNoCharge(t *testing.T) {
	for _, last := range []string{"Total,3.8,3", ",3.8,3"} {
		text := "t,coal,iron ore\n10:00,1.9,1\n10:10,1.9,2\n" + last + "\n"
		table, err := mapcsv.Read(strings.NewReader(text), "x", map[string]entry.Mapped{"t": {Ours: "clock"}, "coal": {Ours: "charcoal"}, "iron ore": {Ours: "ore"}}, mapcsv.Options{})
		if err != nil {
			t.Fatalf("%s: %v", last, err)
		}
		if table.Rows != 2 || len(table.Timeless) != 1 || table.Timeless[0] != 4 || table.Totals[0].Sum != 3.8 {
			t.Errorf("%s: %d rows, without a time %v, %+v", last, table.Rows, table.Timeless, table.Totals)
		}
	}
}
