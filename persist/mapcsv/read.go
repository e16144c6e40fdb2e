// Package mapcsv reads other people's logs: tables whose columns have other names and
// other units than ours. A mapping names the columns (package columns); the table becomes
// one of package logcsv, line by line, which alone is read on.
package mapcsv

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/persist/logcsv"
)

// Table is a log of others as ours.
type Table struct {
	columns.Table
	CSV []byte // of package logcsv; its lines are those of the file
}

// shown is how many rows are shown before anything is kept, mostWords how many words of
// what was done that are none of ours.
const (
	shown     = 6
	mostWords = 8
)

// Options say what a table and its mapping leave open.
type Options struct {
	Begin       int  // minutes of the day at the nought of a clock that counts from the start
	BlankIsNone bool // a blank of charcoal or ore in a charge is none; else it was not recorded
}

// Read reads a table by a mapping. The names of the columns stand in the first line that has two
// cells or more; what stands above is kept as remarks, and so is a row without a time.
// Errors are [logcsv.Error] and name the line.
func Read(in io.Reader, file string, m map[string]entry.Mapped, opt Options) (Table, error) {
	text, err := textOf(in, file)
	if err != nil {
		return Table{}, err
	}
	t := table{file: file, opt: opt}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	lines := linesOf(text)
	for i, line := range lines {
		var row []string
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
			out.WriteString(line + "\n")
			continue
		case t.heads == nil && !isHeads(line):
			out.WriteString("# " + line + "\n")
			continue
		case t.heads == nil:
			if err := t.header(line, i+1, m); err != nil {
				return Table{}, err
			}
			t.decimal = columns.DecimalComma(t.comma, rowsOf(lines[i+1:], t.comma))
			row = t.names
		default:
			var remark string
			if row, remark, err = t.row(line, i+1); err != nil {
				return Table{}, err
			}
			if row == nil {
				out.WriteString(remark + "\n")
				continue
			}
		}
		err := w.Write(row)
		if w.Flush(); err != nil || w.Error() != nil {
			return Table{}, t.bad(i+1, "", "the line cannot be read", "check it")
		}
	}
	switch {
	case t.heads == nil:
		return Table{}, t.bad(1, "", "the file has no row of column names", "name the columns in the first row")
	case t.Rows == 0:
		return Table{}, t.bad(1, "", "the log has no rows", "add at least one row with a time")
	}
	t.CSV = out.Bytes()
	t.totals()
	return t.Table, nil
}

// table is one on the way.
type table struct {
	Table
	file    string
	opt     Options
	comma   rune
	decimal bool // a comma in a number is a decimal one
	heads   []string
	from    []source
	names   []string // of our columns, in the order in which they are written
	values  map[int][]float64
	last    int // minute of the row before, by a clock of twelve hours
}

// source is where a column of ours comes from.
type source struct {
	at     int // place among theirs
	column columns.Column
	unit   columns.Unit
}

// derived are the columns that every table of ours gets.
var derived = []string{"clock", "event", "date"}

func (t *table) bad(line int, column, what, do string) error {
	return &logcsv.Error{File: t.file, Line: line, Column: column, What: what, Do: do}
}

// header takes the names of the columns.
func (t *table) header(line string, n int, m map[string]entry.Mapped) error {
	t.comma = commaOf(line)
	cells, err := t.cells(line, n)
	if err != nil {
		return err
	}
	t.heads, t.values = apart(cells), map[int][]float64{}
	for i, head := range t.heads {
		mapped, found := mappedOf(head, m)
		if !found {
			if head != "" {
				t.Left = append(t.Left, head)
			}
			continue
		}
		c, _ := columns.Of(mapped.Ours)
		u, _ := c.Unit(mapped.Unit)
		t.from = append(t.from, source{i, c, u})
	}
	for _, theirs := range slices.Sorted(maps.Keys(m)) {
		if !slices.ContainsFunc(t.heads, func(h string) bool { return strings.EqualFold(h, theirs) }) {
			return t.bad(n, theirs, "there is no such column", "the file has "+strings.Join(t.heads, ", "))
		}
	}
	t.names = slices.Clone(derived)
	for _, s := range t.from {
		if !slices.Contains(t.names, s.column.To) {
			t.names = append(t.names, s.column.To)
		}
	}
	if !slices.Contains(t.names, "note") {
		t.names = append(t.names, "note")
	}
	return nil
}

func mappedOf(head string, m map[string]entry.Mapped) (entry.Mapped, bool) {
	for theirs, to := range m {
		if head != "" && strings.EqualFold(theirs, head) {
			return to, true
		}
	}
	return entry.Mapped{}, false
}

// cells parts a line.
func (t *table) cells(line string, n int) ([]string, error) {
	cells, err := parted(line, t.comma)
	if err != nil {
		return nil, t.bad(n, "", "the line cannot be parted into cells", "close the quote on the same line")
	}
	return cells, nil
}

// row turns a row into ours; nil for one that says nothing, or that has no time: then what
// stands in it is a remark.
func (t *table) row(line string, n int) (row []string, remark string, err error) {
	cells, err := t.cells(line, n)
	if err != nil || strings.Join(cells, "") == "" {
		return nil, "", err
	}
	at := func(s source) string {
		if s.at < len(cells) {
			return cells[s.at]
		}
		return ""
	}
	for _, s := range t.from {
		if s.column.Name == columns.Clock && !strings.ContainsAny(at(s), "0123456789") { // blank, or "Total"
			t.Timeless = append(t.Timeless, n)
			said := slices.DeleteFunc(slices.Clone(cells), func(c string) bool { return c == "" })
			return nil, fmt.Sprintf("# line %d: %s", n, strings.Join(said, "; ")), nil
		}
	}
	ours := map[string]string{}
	theirs := make([]columns.Cell, 0, len(t.from))
	for _, s := range t.from {
		cell, head := at(s), t.heads[s.at]
		theirs = append(theirs, columns.Cell{Column: head, Text: cell})
		if cell == "" {
			continue
		}
		switch {
		case s.column.Name == columns.Clock:
			if err := t.clock(cell, s, n, ours); err != nil {
				return nil, "", err
			}
		case s.column.Numeric():
			v, ok := columns.Number(cell, t.decimal)
			if !ok {
				return nil, "", t.bad(n, head, fmt.Sprintf("%q is not a number", cell), "write digits with a point, or read the column as a note")
			}
			ours[s.column.To] = strconv.FormatFloat(round(s.unit.Ours(v)), 'f', -1, 64)
			t.values[s.at] = append(t.values[s.at], s.unit.Ours(v))
		case s.column.Name == columns.Note && ours["note"] != "":
			ours["note"] += "; " + cell
		case s.column.Name == columns.Date:
			ours["date"] = columns.Day(cell, s.unit.Name)
		default:
			ours[s.column.To] = cell
		}
	}
	t.event(ours)
	row = make([]string, len(t.names))
	for i, name := range t.names {
		row[i] = ours[name]
		if name == "note" {
			row[i] = logcsv.Harmless(ours[name])
		}
	}
	t.Rows++
	if len(t.Shown) < shown {
		var said []columns.Cell
		for _, name := range t.names {
			if ours[name] != "" {
				said = append(said, columns.Cell{Column: name, Text: ours[name]})
			}
		}
		t.Shown = append(t.Shown, columns.Row{Line: n, Theirs: theirs, Ours: said})
	}
	return row, "", nil
}

// half is twelve hours in minutes.
const half = 12 * 60

// clock takes a time. One that is none stays as it stands, and is refused where it is read.
func (t *table) clock(cell string, s source, n int, ours map[string]string) error {
	of := func(secs int) string { return fmt.Sprintf("%02d:%02d:%02d", secs/3600%24, secs/60%60, secs%60) }
	switch s.unit.Name {
	case "min", "h":
		v, ok := columns.Number(cell, t.decimal)
		if !ok || v < 0 || v > 1e5 {
			return t.bad(n, t.heads[s.at], fmt.Sprintf("%q is no time since the start", cell), "write digits, as 35")
		}
		secs := int(60*(s.unit.Ours(v)+float64(t.opt.Begin)) + 0.5)
		ours["clock"] = of(secs)
		if ours["date"] == "" {
			ours["date"] = fmt.Sprintf("day %d", secs/86400+1)
		}
		return nil
	case "day":
		secs, date, ok := columns.ShareOfDay(cell, t.decimal)
		if !ok {
			return t.bad(n, t.heads[s.at], fmt.Sprintf("%q is no time of day as spreadsheets count it", cell), "write a share of the day, as 0.3333 for 08:00, or the time as HH:MM")
		}
		ours["clock"] = of(secs)
		if date != "" && ours["date"] == "" {
			ours["date"] = date
		}
		return nil
	case "12h":
		if minutes, marked, ok := columns.TimeOfDay(cell); ok {
			for !marked && minutes < t.last {
				minutes += half
			}
			t.last, ours["clock"] = minutes, of(60*minutes)
			return nil
		}
	}
	ours["clock"] = cell
	if day, rest, both := strings.Cut(strings.Replace(cell, "T", " ", 1), " "); both {
		if _, err := time.Parse(time.DateOnly, day); err == nil {
			ours["clock"] = rest
			if ours["date"] == "" {
				ours["date"] = day
			}
		}
	}
	if at, marked, ok := columns.TimeOfDay(ours["clock"]); ok && marked {
		ours["clock"] = of(60 * at)
	}
	return nil
}

// events are the words of our table, and others that mean the same.
var events = map[string]string{
	"preheat": "preheat", "fill": "fill", "charge": "charge", "air": "air", "tap": "tap", "burndown": "burndown", "extract": "extract", "note": "note",
	"blast": "air", "slag tap": "tap", "burn down": "burndown", "burn-down": "burndown", "extraction": "extract", "bloom": "extract", "pull": "extract",
}

// event says what a row is: by the word of theirs where it is one of ours, else by what
// stands in it; a word that is none is kept in the note.
func (t *table) event(ours map[string]string) {
	word := ours["event"]
	known, is := events[strings.ToLower(word)]
	if !is && word != "" {
		if len(t.Words) < mostWords && !slices.Contains(t.Words, word) {
			t.Words = append(t.Words, word)
		}
		note := word
		if ours["note"] != "" {
			note += "; " + ours["note"]
		}
		ours["note"] = note
	}
	charged := false
	for _, c := range []string{"charcoal_kg", "measures", "ore_kg", "scoops"} {
		v, err := strconv.ParseFloat(ours[c], 64)
		charged = charged || err == nil && v > 0
	}
	switch {
	case is && (!charged || known == "fill" || known == "charge"):
		ours["event"] = known
	case charged:
		ours["event"] = "charge"
	case ours["air_l_min"] != "":
		ours["event"] = "air"
	default:
		ours["event"] = "note"
	}
	if ours["event"] == "charge" {
		t.blank(ours, "charcoal_kg", "measures")
		t.blank(ours, "ore_kg", "scoops")
	}
	if ours["event"] != "charge" && ours["event"] != "fill" {
		for _, c := range []string{"charcoal_kg", "measures", "ore_kg", "scoops"} {
			delete(ours, c) // noughts of a row that charges nothing
		}
	}
}

// blank takes a blank of a charge as what it was said to be, where the table has a column
// for it at all.
func (t *table) blank(ours map[string]string, columns ...string) {
	column := ""
	for _, c := range columns {
		if ours[c] != "" {
			return
		}
		if column == "" && slices.Contains(t.names, c) {
			column = c
		}
	}
	switch {
	case column == "":
	case t.opt.BlankIsNone:
		ours[column] = "0"
	default:
		t.Blanks++
	}
}

// round leaves three decimals: what a pound or a cubic foot makes beyond is no reading.
func round(v float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'f', 3, 64), 64)
	return r + 0
}

// totals sums the columns up, and doubts a unit by the middle of what is above nought.
func (t *table) totals() {
	for _, s := range t.from {
		if !s.column.Numeric() {
			continue
		}
		total := columns.Total{Theirs: t.heads[s.at], Ours: s.column.To, Unit: s.unit.Name, Our: s.column.Units[0].Name}
		var positive []float64
		for _, v := range t.values[s.at] {
			total.N++
			total.Sum += v
			if v > 0 {
				positive = append(positive, v)
			}
		}
		if len(positive) > 0 {
			slices.Sort(positive)
			total.Middle = positive[len(positive)/2]
			total.Beyond = !s.column.Usual(total.Middle)
		}
		for _, u := range s.column.Units {
			as := u.Ours(s.unit.Theirs(total.Middle))
			if total.Beyond && total.Doubt == "" && u != s.unit && s.column.Usual(as) {
				total.Doubt = u.Name
			}
		}
		t.Totals = append(t.Totals, total)
	}
}
