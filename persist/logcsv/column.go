package logcsv

import (
	"strconv"
	"strings"

	"chargehand/model/entry"
)

// column is a column of the table, in the order in which they are written.
type column int

const (
	colClock column = iota
	colEvent
	colCharcoal
	colMeasures
	colOre
	colScoops
	colAir
	colTemp
	colHeight
	colNote
	colDate
	columns int = iota
)

// none stands in an error that belongs to no column.
const none column = -1

// spec is what a column is called and, where it holds numbers, the least and
// the most that a small furnace can show. A number beyond is a slip of the pen
// (grams for kilograms, two cells run together), not a reading.
type spec struct {
	name        string
	least, most float64
	unit        string
}

var specs = [columns]spec{
	colClock:    {name: "clock"},
	colEvent:    {name: "event"},
	colCharcoal: {"charcoal_kg", 0, 1000, "kg"},
	colMeasures: {"measures", 0, 1000, "measures"},
	colOre:      {"ore_kg", 0, 1000, "kg"},
	colScoops:   {"scoops", 0, 1000, "scoops"},
	colAir:      {"air_l_min", 0, 100_000, "l/min"},
	colTemp:     {"temp_c", -100, 3000, "C"},
	colHeight:   {"height_cm", -100, 1000, "cm"}, // the burden can sink below the tuyere
	colNote:     {name: "note"},
	colDate:     {name: "date"},
}

func (c column) String() string {
	if c == none {
		return ""
	}
	return specs[c].name
}

// numeric tells whether the column holds numbers.
func (c column) numeric() bool { return specs[c].unit != "" }

// takes tells whether a number lies within the column's bounds. NaN does not.
func (c column) takes(v float64) bool { return v >= specs[c].least && v <= specs[c].most }

// columnNamed finds a column by its name.
func columnNamed(name string) (column, bool) {
	for c, s := range specs {
		if s.name == name {
			return column(c), true
		}
	}
	return none, false
}

func columnNames() []string {
	names := make([]string, columns)
	for c := range names {
		names[c] = column(c).String()
	}
	return names
}

// number is a cell that holds a number or is blank.
type number = entry.Maybe[float64]

// parse reads a cell of numbers. A comma is a decimal comma where decimalComma
// says so. The complaint is for the writer of the row.
func (c column) parse(cell string, decimalComma bool) (number, *complaint) {
	if cell == "" {
		return number{}, nil
	}
	text := cell
	if decimalComma {
		text = strings.Replace(cell, ",", ".", 1)
	}
	if strings.Trim(text, "+-.0123456789") != "" {
		return number{}, notANumber(cell)
	}
	v, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil && v == 0: // not for a number too large, which gives an infinity
		return number{}, notANumber(cell)
	case v < specs[c].least:
		return number{}, tooLittle(cell, specs[c])
	case !c.takes(v):
		return number{}, tooMuch(cell, specs[c])
	}
	return entry.Some(v + 0), nil // + 0 makes -0 a plain 0
}

// format writes a number so that it reads back as the same.
func format(n number) string {
	if !n.Known {
		return ""
	}
	return strconv.FormatFloat(n.Value, 'f', -1, 64)
}
