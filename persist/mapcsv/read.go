package mapcsv

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"chargehand/model/entry"
	"chargehand/persist/logcsv"
)

// Table is a log of others as ours.
type Table struct {
	CSV    []byte // of package logcsv; its lines are those of the file
	Shown  []Row  // the first rows, for a look before anything is kept
	Rows   int
	Totals []Total
	Left   []string // columns of theirs that nothing was read from
}

// Row is a row as it stood and as it is read.
type Row struct {
	Line         int
	Theirs, Ours []string
}

// Total is what was read from a column of numbers.
type Total struct {
	Theirs, Ours, Unit string
	N                  int
	Sum, Middle        float64 // in our unit
	Our                string  // that unit
	Doubt              string  // the unit in which the middle would be usual, where it is not in its own
	Beyond             bool    // the middle is unusual
}

// shown is how many rows are shown before anything is kept.
const shown = 3

// Read reads a table by a mapping. A log whose clock counts from its start begins at begin,
// in minutes of the day. Errors are [logcsv.Error] and name the line.
func Read(in io.Reader, file string, m map[string]entry.Mapped, begin int) (Table, error) {
	text, err := io.ReadAll(io.LimitReader(in, logcsv.MaxFile+1))
	bad := func(line int, column, what, do string) (Table, error) {
		return Table{}, &logcsv.Error{File: file, Line: line, Column: column, What: what, Do: do}
	}
	switch {
	case err != nil:
		return bad(1, "", "the file could not be read: "+err.Error(), "check the file")
	case len(text) > logcsv.MaxFile:
		return bad(1, "", fmt.Sprintf("the file is longer than %d bytes", logcsv.MaxFile), "check that this is the log of a smelt")
	case !utf8.Valid(text):
		return bad(1, "", "the text is not UTF-8", "save the file as UTF-8")
	}
	t := table{file: file, begin: begin}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	for i, line := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		line = strings.TrimSuffix(line, "\r")
		switch {
		case strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#"):
			out.WriteString(line + "\n")
			continue
		case t.heads == nil:
			if err := t.header(line, i+1, m); err != nil {
				return Table{}, err
			}
			err = w.Write(t.names)
		default:
			var row []string
			if row, err = t.row(line, i+1); err != nil {
				return Table{}, err
			}
			if row == nil {
				out.WriteString("\n")
				continue
			}
			err = w.Write(row)
		}
		if w.Flush(); err != nil || w.Error() != nil {
			return bad(i+1, "", "the line cannot be read", "check it")
		}
	}
	switch {
	case t.heads == nil:
		return bad(1, "", "the file has no row of column names", "name the columns in the first row")
	case t.Rows == 0:
		return bad(1, "", "the log has no rows", "add at least one row with a time")
	}
	t.CSV = out.Bytes()
	t.totals()
	return t.Table, nil
}

// table is one on the way.
type table struct {
	Table
	file   string
	begin  int
	comma  rune
	heads  []string
	from   []source
	names  []string // of our columns, in the order in which they are written
	values map[int][]float64
	timed  bool // the clock counts from the start
}

// source is where a column of ours comes from.
type source struct {
	at     int // place among theirs
	column column
	unit   unit
}

// derived are the columns that every table of ours gets.
var derived = []string{"clock", "event", "date"}

func (t *table) bad(line int, column, what, do string) error {
	return &logcsv.Error{File: t.file, Line: line, Column: column, What: what, Do: do}
}

// header takes the names of the columns.
func (t *table) header(line string, n int, m map[string]entry.Mapped) error {
	t.comma = ','
	for _, c := range ";\t" {
		if strings.ContainsRune(line, c) {
			t.comma = c
		}
	}
	cells, err := t.cells(line, n)
	if err != nil {
		return err
	}
	t.heads, t.values = cells, map[int][]float64{}
	left := map[string]bool{}
	for theirs := range m {
		left[strings.ToLower(theirs)] = true
	}
	for i, head := range cells {
		var mapped entry.Mapped
		found := false
		for theirs, to := range m {
			if strings.EqualFold(theirs, head) {
				mapped, found = to, true
			}
		}
		if !found {
			if head != "" {
				t.Left = append(t.Left, head)
			}
			continue
		}
		if !left[strings.ToLower(head)] {
			return t.bad(n, head, "the column stands twice", "keep one of them")
		}
		delete(left, strings.ToLower(head))
		c, _ := columnOf(mapped.Ours)
		u, _ := c.unit(mapped.Unit)
		t.from = append(t.from, source{i, c, u})
		t.timed = t.timed || c.name == "clock" && u.name != ""
	}
	for theirs := range m {
		if left[strings.ToLower(theirs)] {
			return t.bad(n, theirs, "there is no such column", "the file has "+strings.Join(cells, ", "))
		}
	}
	t.names = slices.Clone(derived)
	for _, s := range t.from {
		if !slices.Contains(t.names, s.column.to) {
			t.names = append(t.names, s.column.to)
		}
	}
	if !slices.Contains(t.names, "note") {
		t.names = append(t.names, "note")
	}
	return nil
}

// cells parts a line.
func (t *table) cells(line string, n int) ([]string, error) {
	r := csv.NewReader(strings.NewReader(line))
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace, r.LazyQuotes = t.comma, -1, t.comma != '\t', true
	cells, err := r.Read()
	if err != nil {
		return nil, t.bad(n, "", "the line cannot be parted into cells", "close the quote on the same line")
	}
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	return cells, nil
}

// row turns a row into ours; nil for one that says nothing.
func (t *table) row(line string, n int) ([]string, error) {
	cells, err := t.cells(line, n)
	if err != nil || strings.Join(cells, "") == "" {
		return nil, err
	}
	ours := map[string]string{}
	theirs := make([]string, 0, len(t.from))
	for _, s := range t.from {
		cell := ""
		if s.at < len(cells) {
			cell = cells[s.at]
		}
		theirs = append(theirs, t.heads[s.at]+" "+cell)
		if cell == "" {
			continue
		}
		switch {
		case s.column.name == "clock" && s.unit.name != "":
			v, ok := t.number(cell)
			if !ok || v < 0 || v > 1e5 {
				return nil, t.bad(n, t.heads[s.at], fmt.Sprintf("%q is no time since the start", cell), "write digits, as 35")
			}
			secs := int(60*(s.unit.ours(v)+float64(t.begin)) + 0.5)
			ours["clock"] = fmt.Sprintf("%02d:%02d:%02d", secs/3600%24, secs/60%60, secs%60)
			if ours["date"] == "" {
				ours["date"] = fmt.Sprintf("day %d", secs/86400+1)
			}
		case s.column.name == "clock":
			ours["clock"] = dayClock(cell)
		case s.column.numeric():
			v, ok := t.number(cell)
			if !ok {
				return nil, t.bad(n, t.heads[s.at], fmt.Sprintf("%q is not a number", cell), "write digits with a point, or map the column to note")
			}
			ours[s.column.to] = strconv.FormatFloat(round(s.unit.ours(v)), 'f', -1, 64)
			t.values[s.at] = append(t.values[s.at], s.unit.ours(v))
		case s.column.name == "note" && ours["note"] != "":
			ours["note"] += "; " + cell
		case s.column.name == "event":
			ours["event"] = cell
		case s.column.name == "note":
			ours["note"] = cell
		default:
			ours[s.column.to] = cell
		}
	}
	event(ours)
	row := make([]string, len(t.names))
	for i, name := range t.names {
		row[i] = ours[name]
		if name == "note" {
			row[i] = logcsv.Harmless(ours[name])
		}
	}
	t.Rows++
	if len(t.Shown) < shown {
		var said []string
		for _, name := range t.names {
			if ours[name] != "" {
				said = append(said, name+" "+ours[name])
			}
		}
		t.Shown = append(t.Shown, Row{Line: n, Theirs: theirs, Ours: said})
	}
	return row, nil
}

// dayClock is a time of day on a clock of 24 hours; what is none stays as it stands, and is
// refused where it is read.
func dayClock(cell string) string {
	for _, form := range []string{"3:04 PM", "3:04PM", "3:04:05 PM"} {
		if at, err := time.Parse(form, strings.ToUpper(cell)); err == nil {
			return at.Format("15:04:05")
		}
	}
	return cell
}

// events are the words of our table, and others that mean the same.
var events = map[string]string{
	"preheat": "preheat", "fill": "fill", "charge": "charge", "air": "air", "tap": "tap", "burndown": "burndown", "extract": "extract", "note": "note",
	"blast": "air", "slag tap": "tap", "burn down": "burndown", "burn-down": "burndown", "extraction": "extract", "bloom": "extract", "pull": "extract",
}

// event says what a row is: by the word of theirs where it is one of ours, else by what
// stands in it; a word that is none is kept in the note.
func event(ours map[string]string) {
	word := ours["event"]
	known, is := events[strings.ToLower(word)]
	if !is && word != "" {
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
	if ours["event"] != "charge" && ours["event"] != "fill" {
		for _, c := range []string{"charcoal_kg", "measures", "ore_kg", "scoops"} {
			delete(ours, c) // noughts of a row that charges nothing
		}
	}
}

// number reads digits; a comma is a decimal comma where it parts no columns.
func (t *table) number(cell string) (float64, bool) {
	if t.comma != ',' {
		cell = strings.Replace(cell, ",", ".", 1)
	}
	if strings.Trim(cell, "+-.0123456789") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(cell, 64)
	return v, err == nil
}

// round leaves three decimals: what a pound or a cubic foot makes beyond is no reading.
func round(v float64) float64 {
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'f', 3, 64), 64)
	return r + 0
}

// totals sums the columns up, and doubts a unit by the middle of what is above nought.
func (t *table) totals() {
	for _, s := range t.from {
		if !s.column.numeric() {
			continue
		}
		total := Total{Theirs: t.heads[s.at], Ours: s.column.to, Unit: s.unit.name, Our: s.column.units[0].name}
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
			total.Beyond = total.Middle < s.column.least || total.Middle > s.column.most
		}
		for _, u := range s.column.units {
			theirs := total.Middle/s.unit.times - s.unit.plus
			if as := u.ours(theirs); total.Beyond && total.Doubt == "" && u != s.unit && as >= s.column.least && as <= s.column.most {
				total.Doubt = u.name
			}
		}
		t.Totals = append(t.Totals, total)
	}
}
