// Package smeltcsv reads a table of smelts that are over: one row a smelt, with
// the ore that went in and the bloom that came out.
//
// Columns go by name, in any order, and others are let be. There must be ore_kg
// and bloom_kg; a blank in either means that the row says nothing of the yield,
// a bloom of 0 that there was none. The crew is the column team, or without one
// the source up to its first comma. The mix is mix (or recipe), or ore_type, or
// the ore that notes (or note) name. iron_slag_kg counts as ore by its iron
// (with ore_fe_pct where it is given). date is a year, a month or a day; what
// stands after it is let be. Numbers may be ranges ("55-60", read as the middle)
// and may have a remark in brackets after them.
//
// Rows in which TOTAL, NOTE or NOT ONE RUN stands in capitals are no smelts and
// are skipped. Lines that begin with # are remarks.
package smeltcsv

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"

	"chargehand/model/learn"
	"chargehand/persist/logcsv"
)

// Table is what was read: smelts in the order of the rows, and how many rows
// say nothing.
type Table struct {
	Smelts []learn.Smelt
	Left   learn.LeftOut
}

// most is the most that a mass in kg can be; a number beyond is a slip of the
// pen.
const most = 1e5

// maxRows bounds a table: a crew's whole life has some hundreds.
const maxRows = 20_000

// Read reads a table. Errors are *[logcsv.Error] and name the file as given,
// line and column; nothing is handed out with them.
func Read(in io.Reader, file string) (Table, error) {
	text, err := io.ReadAll(io.LimitReader(in, logcsv.MaxFile+1))
	if err != nil {
		return Table{}, &logcsv.Error{File: file, Line: 1, What: "the file could not be read: " + err.Error(), Do: "check the file", Err: err}
	}
	if len(text) > logcsv.MaxFile {
		return Table{}, &logcsv.Error{File: file, Line: 1, What: fmt.Sprintf("the file is longer than %d bytes", logcsv.MaxFile), Do: "check that this is a table of smelts"}
	}
	r := csv.NewReader(bytes.NewReader(text))
	r.Comment, r.FieldsPerRecord = '#', 0
	t := reader{csv: r, file: file}
	if t.semicolons = parted(text); t.semicolons {
		r.Comma = ';'
	}
	names, err := r.Read()
	if err != nil {
		return Table{}, t.broken(err)
	}
	if err := t.name(names); err != nil {
		return Table{}, err
	}
	var table Table
	for rows := 0; ; rows++ {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return table, nil
		}
		if err != nil {
			return Table{}, t.broken(err)
		}
		if rows == maxRows {
			return Table{}, t.wrong(0, "", fmt.Sprintf("the table has more than %d rows", maxRows), "check that this is a table of smelts")
		}
		if isNoSmelt(row) {
			table.Left.NoSmelts++
			continue
		}
		s, known, err := t.smelt(row)
		if err != nil {
			return Table{}, err
		}
		if !known {
			table.Left.Unknown++
			continue
		}
		table.Smelts = append(table.Smelts, s)
	}
}

type reader struct {
	csv  *csv.Reader
	file string
	at   map[string]int // column by name

	semicolons bool // between the cells; a comma in a number is then a decimal one
}

// parted tells whether semicolons part the names of the columns.
func parted(text []byte) bool {
	for line := range bytes.Lines(text) {
		if !bytes.HasPrefix(line, []byte("#")) {
			return bytes.Count(line, []byte(";")) > bytes.Count(line, []byte(","))
		}
	}
	return false
}

// name takes the first row.
func (t *reader) name(names []string) error {
	t.at = map[string]int{}
	for i, n := range names {
		n = strings.TrimSpace(strings.TrimPrefix(n, "\ufeff")) // the mark some editors put before UTF-8
		if _, twice := t.at[n]; twice && n != "" {
			return t.wrong(i, n, fmt.Sprintf("the column %s stands twice", n), "keep one of them")
		}
		t.at[n] = i
	}
	for _, must := range []string{"ore_kg", "bloom_kg"} {
		if _, ok := t.at[must]; !ok {
			return t.wrong(0, must, "there is no column "+must, "name the columns in the first row, with at least ore_kg and bloom_kg")
		}
	}
	return nil
}

// smelt reads a row, and whether it gives both ore and bloom.
func (t *reader) smelt(row []string) (s learn.Smelt, known bool, err error) {
	var numbers [4]float64
	var given [4]bool
	for i, c := range []string{"ore_kg", "bloom_kg", "iron_slag_kg", "ore_fe_pct"} {
		if numbers[i], given[i], err = t.number(row, c); err != nil {
			return learn.Smelt{}, false, err
		}
	}
	ore := numbers[0] + learn.SlagAsOre(numbers[2], numbers[3]/100)
	if !given[0] || !given[1] || ore <= 0 {
		return learn.Smelt{}, false, nil
	}
	crew := t.cell(row, "team")
	if _, ok := t.at["team"]; !ok {
		crew, _, _ = strings.Cut(t.cell(row, "source"), ",")
	}
	return learn.Smelt{Date: date(t.cell(row, "date")), Crew: strings.TrimSpace(crew), Mix: learn.ParseMix(t.mix(row)), Ore: ore, Bloom: numbers[1]}, true, nil
}

// mixColumns are the columns that may name the mix, the first of them first.
var mixColumns = []string{"mix", "ore_mix", "recipe", "ore_recipe", "ore_type"}

// mix gives what a row says of its ore. Notes are looked into only where no
// column is there for it.
func (t *reader) mix(row []string) string {
	hasColumn := false
	for _, c := range mixColumns {
		_, ok := t.at[c]
		hasColumn = hasColumn || ok
		if text := t.cell(row, c); text != "" {
			return text
		}
	}
	if hasColumn {
		return ""
	}
	return oreNamed(t.cell(row, "notes") + ";" + t.cell(row, "note"))
}

func (t *reader) cell(row []string, column string) string {
	if i, ok := t.at[column]; ok {
		return strings.TrimSpace(row[i])
	}
	return ""
}

var numberOf = regexp.MustCompile(`^([0-9]*\.?[0-9]+)(?:\s*-\s*([0-9]*\.?[0-9]+))?\s*(?:\(.*\))?$`)

// number reads a cell, and whether it was given.
func (t *reader) number(row []string, column string) (v float64, given bool, err error) {
	cell := t.cell(row, column)
	if cell == "" {
		return 0, false, nil
	}
	text := cell
	if t.semicolons {
		text = strings.ReplaceAll(cell, ",", ".")
	}
	m := numberOf.FindStringSubmatch(text)
	if m == nil {
		return 0, false, t.wrong(t.at[column], column, fmt.Sprintf("%q is not a number", cell), "write digits with a point, as 1.9, or leave the cell blank if it was not recorded")
	}
	v, err = strconv.ParseFloat(m[1], 64)
	if m[2] != "" && err == nil {
		var high float64
		high, err = strconv.ParseFloat(m[2], 64)
		v = (v + high) / 2
	}
	if err != nil || math.IsInf(v, 0) || v > most {
		return 0, false, t.wrong(t.at[column], column, fmt.Sprintf("%q is more than %g", cell, most), "check the number and its unit")
	}
	return v, true, nil
}

// wrong says what is wrong with a cell of the row last read.
func (t *reader) wrong(i int, column, what, do string) error {
	line, _ := t.csv.FieldPos(i)
	return &logcsv.Error{File: t.file, Line: line, Column: column, What: what, Do: do}
}

// broken says why a row could not be read at all.
func (t *reader) broken(err error) error {
	e := &logcsv.Error{File: t.file, Line: 1, What: "the file could not be read: " + err.Error(), Do: "check the file", Err: err}
	var parse *csv.ParseError
	switch {
	case errors.Is(err, io.EOF):
		e.What, e.Do = "the file has no row of column names", "name the columns in the first row, with at least ore_kg and bloom_kg"
	case errors.As(err, &parse):
		e.Line = parse.Line
		e.What, e.Do = "a quote is left open or stands amid a cell", `write a cell with commas in "quotes", and a quote within quotes twice`
		if errors.Is(parse.Err, csv.ErrFieldCount) {
			e.What, e.Do = "the row has more or fewer cells than the first row has columns", "keep every cell, also the blank ones at the end"
		}
	}
	return e
}

var noSmelt = regexp.MustCompile(`\b(TOTAL|NOTE|NOT ONE RUN)\b`)

// isNoSmelt tells a year's total, a note or typical figures from a smelt.
func isNoSmelt(row []string) bool {
	for _, cell := range row {
		if noSmelt.MatchString(cell) {
			return true
		}
	}
	return false
}

var (
	orePhrase = regexp.MustCompile(`(?i)\pL+ ore\b(?:[^:]|$)`)       // "roasted bog ore A6 C4", not "ore:charcoal 1:2"
	notNamed  = regexp.MustCompile(`(?i)\b(?:kg|lb|per)\b|\bore \d`) // "per kg ore", "60 lb ore"
	grade     = regexp.MustCompile(`(?i)\s*\b[0-9.]+\s*%\s*Fe\b`)
)

// oreNamed finds the ore in notes whose phrases are parted by semicolons: the
// first that names one, else the one that gives something's iron.
func oreNamed(notes string) string {
	for _, is := range []*regexp.Regexp{orePhrase, grade} {
		for _, phrase := range strings.Split(notes, ";") {
			if is.MatchString(phrase) && !notNamed.MatchString(phrase) {
				return grade.ReplaceAllString(phrase, "")
			}
		}
	}
	return ""
}

var dateOf = regexp.MustCompile(`^\d{4}(?:-\d{2}\b(?:-\d{2}\b)?)?`)

// date reads what a cell begins with: "1998-2000" is the year 1998.
func date(cell string) string { return dateOf.FindString(cell) }
