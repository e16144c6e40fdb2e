package datapack

import (
	"bytes"
	"encoding/csv"
)

// Field is one column of a table. Unit is "" for what has none: the standard has no
// place for it, so it stands in the description too.
type Field struct {
	Name, Type, Unit, Means string
	Required                bool
}

// The types of columns that are used here, as the standard names them.
const (
	isString   = "string"
	isNumber   = "number"
	isInteger  = "integer"
	isDatetime = "datetime"
)

// Table is one table: its columns, by which of them a row is known, and its rows.
type Table struct {
	Name, Title, Means string
	Fields             []Field
	Added              int // how many of the last columns a package written earlier lacks
	AddedRows          int // how many of the last rows
	Key                []string
	Foreign            []Foreign
	Rows               [][]string
}

// Foreign says that columns of a table name a row of another one.
type Foreign struct {
	Fields   []string
	Resource string // "" for the table itself
	Of       []string
}

// File is the table's file in the folder.
func (t Table) File() string { return t.Name + ".csv" }

// CSV is the table as it is written: a head and a row each, lines that end in CRLF,
// as the standard takes a table that says nothing else.
func (t Table) CSV() ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	head := make([]string, len(t.Fields))
	for i, f := range t.Fields {
		head[i] = f.Name
	}
	if err := w.Write(head); err != nil {
		return nil, err
	}
	if err := w.WriteAll(t.Rows); err != nil {
		return nil, err
	}
	return b.Bytes(), w.Error()
}
