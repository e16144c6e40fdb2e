package mapcsv

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"chargehand/model/columns"
	"chargehand/persist/logcsv"
)

// Sheet is a table as it stands: the names of its columns and its first rows.
type Sheet struct {
	Heads        []string
	Rows         [][]string
	DecimalComma bool
}

// looked is how many rows of a sheet are given to guess by.
const looked = 200

// Look gives a table as it stands. Errors are [logcsv.Error].
func Look(in io.Reader, file string) (Sheet, error) {
	text, err := textOf(in, file)
	if err != nil {
		return Sheet{}, err
	}
	var s Sheet
	comma := ','
	for i, line := range linesOf(text) {
		if strings.TrimSpace(line) == "" || strings.HasPrefix(line, "#") || s.Heads == nil && !isHeads(line) {
			continue
		}
		if s.Heads == nil {
			comma = commaOf(line)
		}
		cells, err := parted(line, comma)
		switch {
		case err != nil:
			return Sheet{}, &logcsv.Error{File: file, Line: i + 1, What: "the line cannot be parted into cells", Do: "close the quote on the same line"}
		case s.Heads == nil:
			s.Heads = apart(cells)
		case strings.Join(cells, "") != "":
			s.Rows = append(s.Rows, cells)
		}
		if len(s.Rows) == looked {
			break
		}
	}
	if s.Heads == nil {
		return Sheet{}, &logcsv.Error{File: file, Line: 1, What: "the file has no row of column names", Do: "name the columns in the first row, with a comma, a semicolon or a tab between them"}
	}
	s.DecimalComma = columns.DecimalComma(comma, s.Rows)
	return s, nil
}

// rowsOf are the rows that are looked at of those in lines.
func rowsOf(lines []string, comma rune) (rows [][]string) {
	for _, line := range lines {
		if cells, err := parted(line, comma); err == nil && !strings.HasPrefix(line, "#") && strings.Join(cells, "") != "" {
			rows = append(rows, cells)
		}
		if len(rows) == looked {
			break
		}
	}
	return rows
}

// textOf reads a file within bounds.
func textOf(in io.Reader, file string) (string, error) {
	text, err := io.ReadAll(io.LimitReader(in, logcsv.MaxFile+1))
	bad := func(what, do string) (string, error) {
		return "", &logcsv.Error{File: file, Line: 1, What: what, Do: do}
	}
	switch {
	case err != nil:
		return bad("the file could not be read: "+err.Error(), "check the file")
	case len(text) > logcsv.MaxFile:
		return bad(fmt.Sprintf("the file is longer than %d bytes", logcsv.MaxFile), "check that this is the log of a smelt")
	}
	if fault := logcsv.NotText(text); fault != nil {
		fault.File = file
		return "", fault
	}
	return strings.TrimPrefix(string(text), "\ufeff"), nil
}

// linesOf are the lines of a text without their ends.
func linesOf(text string) []string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		lines[i] = strings.TrimSuffix(l, "\r")
	}
	return lines
}

// commaOf is what parts the columns of a table, by the line of their names.
func commaOf(line string) rune {
	comma := ','
	for _, c := range ";\t" {
		if strings.ContainsRune(line, c) {
			comma = c
		}
	}
	return comma
}

// parted are the cells of a line.
func parted(line string, comma rune) ([]string, error) {
	r := csv.NewReader(strings.NewReader(line))
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace, r.LazyQuotes = comma, -1, comma != '\t', true
	cells, err := r.Read()
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	return cells, err
}

// isHeads tells whether a line can name columns: two at the least.
func isHeads(line string) bool {
	cells, err := parted(line, commaOf(line))
	n := 0
	for _, c := range cells {
		if c != "" {
			n++
		}
	}
	return err == nil && n > 1
}

// apart are names of which none stands twice: of like ones each further gets its number.
func apart(heads []string) []string {
	seen := map[string]int{}
	out := make([]string, len(heads))
	for i, h := range heads {
		low := strings.ToLower(h)
		seen[low]++
		if out[i] = h; h != "" && seen[low] > 1 {
			out[i] = fmt.Sprintf("%s (%d)", h, seen[low])
		}
	}
	return out
}

// Ours tells whether the columns are those of package logcsv, or meant to be.
func (s Sheet) Ours() bool {
	has := func(name string) bool {
		return slices.ContainsFunc(s.Heads, func(h string) bool { return strings.EqualFold(h, name) })
	}
	return has("clock") && has("event")
}
