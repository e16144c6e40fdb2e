package logcsv

import (
	"bytes"
	"errors"
	"io"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"
)

const head = "clock,event,charcoal_kg,measures,ore_kg,air_l_min,temp_c,note\n"

// A bad file is refused as a whole, and the error says where and what to do.
func TestBadFilesAreNamedByLineAndColumn(t *testing.T) {
	good := head + "12:00,charge,1.9,1,0.5,,,\n"
	for _, c := range []struct {
		name, text string
		line       int
		column     string
		what       string
	}{
		{"letters in a mass", good + "12:10,charge,1.9kg,1,0,,,\n", 3, "charcoal_kg", "not a number"},
		{"letters amid digits", good + "12:10,charge,1,1,0,4o0,,\n", 3, "air_l_min", "not a number"},
		{"a power of ten", good + "12:10,charge,1e2,1,0,,,\n", 3, "charcoal_kg", "not a number"},
		{"hexadecimal", good + "12:10,charge,0x1p2,1,0,,,\n", 3, "charcoal_kg", "not a number"},
		{"infinite", good + "12:10,charge,1,inf,0,,,\n", 3, "measures", "not a number"},
		{"not a number", good + "12:10,charge,1,1,NaN,,,\n", 3, "ore_kg", "not a number"},
		{"two points", good + "12:10,charge,1.9.1,1,0,,,\n", 3, "charcoal_kg", "not a number"},
		{"a lone sign", good + "12:10,charge,-,1,0,,,\n", 3, "charcoal_kg", "not a number"},
		{"decimal comma between commas", good + "12:10,charge,\"1,9\",1,0,,,\n", 3, "charcoal_kg", "not a number"},
		{"point and comma", strings.ReplaceAll(head, ",", ";") + "12:10;charge;1.000,5;1;0;;;\n", 2, "charcoal_kg", "not a number"},
		{"negative charcoal", good + "12:10,charge,-1.9,1,0,,,\n", 3, "charcoal_kg", "less than 0 kg"},
		{"negative ore", good + "12:10,charge,1.9,1,-0.5,,,\n", 3, "ore_kg", "less than 0 kg"},
		{"negative measures", good + "12:10,charge,,-1,0,,,\n", 3, "measures", "less than 0"},
		{"negative air", good + "12:10,air,,,,-1,,\n", 3, "air_l_min", "less than 0"},
		{"below absolute zero", good + "12:10,note,,,,,-300,\n", 3, "temp_c", "less than -100"},
		{"grams for kilograms", good + "12:10,charge,1900,1,0,,,\n", 3, "charcoal_kg", "more than 1000 kg"},
		{"endless digits", good + "12:10,charge," + strings.Repeat("9", 400) + ",1,0,,,\n", 3, "charcoal_kg", "more than 1000 kg"},
		{"hotter than any furnace", good + "12:10,note,,,,,99999,\n", 3, "temp_c", "more than 3000"},
		{"unknown event", good + "12:10,chrage,1.9,1,0,,,\n", 3, "event", `no event is called "chrage"`},
		{"no event", good + "12:10,,1.9,1,0,,,\n", 3, "event", "no event"},
		{"no clock", good + ",charge,1.9,1,0,,,\n", 3, "clock", "no time"},
		{"no time of day", good + "25:10,charge,1.9,1,0,,,\n", 3, "clock", "not a time of day"},
		{"sixty minutes", good + "12:60,charge,1.9,1,0,,,\n", 3, "clock", "not a time of day"},
		{"sixty seconds", good + "12:10:60,charge,1.9,1,0,,,\n", 3, "clock", "not a time of day"},
		{"a clock of twelve hours", good + "1:10 pm,charge,1.9,1,0,,,\n", 3, "clock", "not a time of day"},
		{"signed clock", good + "+2:10,charge,1.9,1,0,,,\n", 3, "clock", "not a time of day"},
		{"clock going back", good + "11:59,charge,1.9,1,0,,,\n", 3, "clock", "goes back from 12:00 to 11:59"},
		{"clock going back half a day exactly", good + "00:00,charge,1.9,1,0,,,\n", 3, "clock", "goes back"},
		{"charcoal on a tap", good + "12:10,tap,1.9,,,,,\n", 3, "charcoal_kg", "a row of tap charges nothing"},
		{"ore on a note", good + "12:10,note,,,1,,,\n", 3, "ore_kg", "a row of note charges nothing"},
		{"a cell too many", good + "12:10,charge,1.9,1,0,,,a note, with a comma\n", 3, "9", "9 cells"},
		{"a cell too few", good + "12:10,charge,1.9,1,0,,\n", 3, "note", "7 cells"},
		{"a quote left open", good + "12:10,charge,1.9,1,0,,,\"it rained\n12:20,note,,,,,,\"\n", 3, "note", "quote"},
		{"a quote amid a cell", good + "12:10,charge,1\"9,1,0,,,\n", 3, "charcoal_kg", "quote"},
		{"a NUL", good + "12:10,charge,1.9,1,0,,,a\x00b\n", 3, "note", "U+0000"},
		{"a NUL in a remark", "# a\x00b\n" + good, 1, "", "U+0000"},
		{"an escape", good + "12:10,charge,1.9,1,0,,,\x1b[2J\n", 3, "note", "U+001B"},
		{"old line ends", strings.ReplaceAll(good, "\n", "\r"), 1, "8", "U+000D"},
		{"not UTF-8", good + "12:10,charge,1.9,1,0,,,Erzst\xfcck\n", 3, "note", "not UTF-8"},
		{"not UTF-8 in a remark", "# Erzst\xfcck\n" + good, 1, "", "not UTF-8"},
		{"UTF-16", "\xff\xfec\x00l\x00o\x00c\x00k\x00", 1, "1", "not UTF-8"},
		{"unknown column", "clock,event,charcoal_lb\n12:00,charge,4\n", 1, "3", `no column is called "charcoal_lb"`},
		{"nameless column", "clock,event,\n12:00,charge,4\n", 1, "3", "no column is called"},
		{"column twice", "clock,event,ore_kg,ORE_KG\n12:00,charge,4,4\n", 1, "ore_kg", "stands twice"},
		{"no column clock", "# log\nevent,ore_kg\ncharge,4\n", 2, "clock", "there is no column clock"},
		{"no column event", "clock,ore_kg\n12:00,4\n", 1, "event", "there is no column event"},
		{"no file to speak of", "", 1, "", "no row of column names"},
		{"remarks alone", "# a log\n", 1, "", "no row of column names"},
		{"no rows", head + ",,,,,,,\n\n", 3, "", "no rows"},
		{"a date that is none", "clock,event,date\n12:00,tap,2026-02-30\n", 2, "date", "not a date"},
		{"a date in another order", "clock,event,date\n12:00,tap,09/05/2026\n", 2, "date", "not a date"},
		{"a date before clocks", "clock,event,date\n12:00,tap,0026-05-09\n", 2, "date", "not a date"},
		{"day nought", "clock,event,date\n12:00,tap,day 0\n", 2, "date", "not a date"},
		{"date going back", "clock,event,date\n12:00,tap,2026-05-09\n13:00,tap,2026-05-08\n", 3, "date", "before the row above"},
		{"clock going back within a date", "clock,event,date\n12:00,tap,2026-05-09\n11:00,tap,2026-05-09\n", 3, "date", "before the row above"},
		{"a slip in the year", "clock,event,date\n12:00,tap,2026-05-09\n13:00,tap,2062-05-09\n", 3, "date", "days after the first"},
		{"a note without bound", good + "12:10,note,,,,,," + strings.Repeat("a", MaxCell+1) + "\n", 3, "note", "longer than"},
		{"a line without bound", good + strings.Repeat("a", MaxLine+1), 3, "", "longer than"},
		{"rows without bound", good + strings.Repeat("12:10,tap,,,,,,\n", MaxRows), MaxRows + 2, "", "more than 100000 rows"},
		{"remarks without bound", strings.Repeat("# "+strings.Repeat("r", MaxCell)+"\n", 9) + good, 8, "", "hold more than"},
	} {
		opt := options
		opt.Name = "smelt.csv"
		es, err := Read(strings.NewReader(c.text), opt)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if es != nil {
			t.Errorf("%s: half read", c.name)
		}
		if e.Line != c.line || e.Column != c.column || !strings.Contains(e.What, c.what) || e.Do == "" || e.File != "smelt.csv" {
			t.Errorf("%s: got line %d, column %q: %v", c.name, e.Line, e.Column, err)
		}
		if strings.ContainsAny(err.Error(), "\n\x00\x1b") || len(err.Error()) > 400 {
			t.Errorf("%s: not one plain line: %q", c.name, err)
		}
	}
}

func TestErrorIsOneLineWithWhatWhereAndWhatToDo(t *testing.T) {
	_, err := Read(strings.NewReader(head+"12:00,charge,-2,1,0,,,\n"), Options{Name: "day.csv"})
	want := `"-2" is less than 0 kg, the least that can be (day.csv line 2, column charcoal_kg): write what was read, or leave the cell blank if it was not recorded`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// endless gives the same byte for ever and counts what was taken.
type endless struct{ taken int }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = 'x'
	}
	e.taken += len(p)
	return len(p), nil
}

func TestEndlessLineIsRefusedWithoutEatingMemory(t *testing.T) {
	var before, after runtime.MemStats
	var tail endless
	runtime.ReadMemStats(&before)
	_, err := Read(io.MultiReader(strings.NewReader(head), &tail), Options{})
	runtime.ReadMemStats(&after)
	var e *Error
	if !errors.As(err, &e) || e.Line != 2 {
		t.Fatalf("got %v", err)
	}
	if tail.taken > 2*MaxLine {
		t.Errorf("took %d bytes of an endless line", tail.taken)
	}
	if used := after.TotalAlloc - before.TotalAlloc; used > 8*MaxLine {
		t.Errorf("allocated %d bytes for an endless line", used)
	}
}

func TestEndlessFileIsRefused(t *testing.T) {
	_, err := Read(io.MultiReader(strings.NewReader(head), &repeat{line: "\n"}), Options{})
	var e *Error
	if !errors.As(err, &e) || !strings.Contains(e.What, "file is longer") {
		t.Errorf("got %v", err)
	}
}

// repeat gives the same line for ever.
type repeat struct{ line string }

func (r *repeat) Read(p []byte) (int, error) {
	n := 0
	for n+len(r.line) <= len(p) {
		n += copy(p[n:], r.line)
	}
	return n, nil
}

func TestAReadThatFailsKeepsItsCause(t *testing.T) {
	cause := errors.New("the stick was pulled out")
	_, err := Read(io.MultiReader(strings.NewReader(head+"12:00,tap,,,,,,\n"), iotest.ErrReader(cause)), Options{})
	if !errors.Is(err, cause) {
		t.Errorf("got %v", err)
	}
}

func TestAWriteThatFailsIsTold(t *testing.T) {
	es := read(t, head+strings.Repeat("12:00,tap,,,,,,some words\n", 1000), Options{})
	for _, room := range []int{0, 5000} {
		if _, err := Write(&full{room: room}, es); !errors.Is(err, errFull) {
			t.Errorf("with room for %d: %v", room, err)
		}
	}
}

var errFull = errors.New("no room")

// full takes a number of bytes and no more.
type full struct {
	room int
	b    bytes.Buffer
}

func (f *full) Write(p []byte) (int, error) {
	if f.b.Len()+len(p) > f.room {
		return 0, errFull
	}
	return f.b.Write(p)
}
