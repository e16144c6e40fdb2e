package main

import (
	"bufio"
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/charmbracelet/x/term"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/logcsv"
	"chargehand/persist/mapcsv"
)

// others is how a log with columns of its own is read.
type others struct {
	columns, save, begin string
	preview, yes, blanks bool
	mapping              entry.Mapping
}

func (o *others) flags(flags *flag.FlagSet) {
	flags.StringVar(&o.columns, "columns", "", words.FlagColumns+columns.Names())
	flags.StringVar(&o.save, "save", "", words.FlagSaveMapping)
	flags.StringVar(&o.begin, "begin", "00:00", words.FlagBegin)
	flags.BoolVar(&o.preview, "preview", false, words.FlagPreview)
	flags.BoolVar(&o.blanks, "blank-is-none", false, words.FlagBlanks)
	flags.BoolVar(&o.yes, "yes", false, words.FlagYes)
}

// guess stands for the columns in the place of a mapping.
const guess = "guess"

// asked tells whether a log is read by columns of its own: where they are given, and where
// its columns are none of ours.
func (o *others) asked(in *bufio.Reader, path string) bool {
	if o.columns != "" {
		return true
	}
	start, _ := in.Peek(in.Size())
	if cut := bytes.LastIndexByte(start, '\n'); cut > 0 && len(start) == in.Size() {
		start = start[:cut]
	}
	if !utf8.Valid(start) { // which looking at it says, with the line
		o.columns = guess
		return true
	}
	sheet, err := mapcsv.Look(bytes.NewReader(start), path)
	if err != nil || sheet.Ours() || bytes.HasPrefix(bytes.TrimSpace(start), []byte("{")) {
		return false // it is read as one of ours, which says what is wrong
	}
	o.columns = guess
	return true
}

// read turns the file into our table and shows what was read of it; it goes on to keep it
// when that is asked for, or when somebody at a terminal says yes.
func (o *others) read(w world, c common, in **bufio.Reader, path string) (goesOn bool, err error) {
	text, err := io.ReadAll(io.LimitReader(*in, logcsv.MaxFile+1))
	if err != nil {
		return false, errors.New(words.CannotRead(path, err))
	}
	shown := w.out
	if c.json && !o.preview {
		shown = w.err
	}
	if o.columns == guess {
		err = o.guessed(w, c, text, path, shown)
	} else {
		err = o.named(w, c)
	}
	if err != nil {
		return false, err
	}
	o.mapping.BlankIsNone = o.mapping.BlankIsNone || o.blanks
	begin, err := time.Parse(words.Clock, o.begin)
	if err != nil {
		return false, wrongUse{errors.New(words.BadBegin(o.begin))}
	}
	t, err := mapcsv.Read(bytes.NewReader(text), path, o.mapping.Columns, mapcsv.Options{Begin: begin.Hour()*60 + begin.Minute(), BlankIsNone: o.mapping.BlankIsNone})
	if err != nil {
		return false, err
	}
	showTable(shown, t)
	*in = bufio.NewReader(bytes.NewReader(t.CSV))
	switch {
	case o.preview:
		_, err := fmt.Fprintln(shown, words.PreviewOnly)
		return false, err
	case o.yes:
		return true, nil
	case !term.IsTerminal(w.in.Fd()):
		return false, errors.New(words.ImportWantsYes)
	}
	fmt.Fprint(w.out, words.AskImport)
	answer, _ := bufio.NewReader(w.in).ReadString('\n')
	if goesOn = strings.EqualFold(strings.TrimSpace(answer), "y"); !goesOn {
		fmt.Fprintln(w.out, words.NothingImported)
	}
	return goesOn, nil
}

// guessed takes the columns as kept from a like log, else as their names and figures have
// it, and shows which.
func (o *others) guessed(w world, c common, text []byte, path string, shown io.Writer) error {
	sheet, err := mapcsv.Look(bytes.NewReader(text), path)
	if err != nil {
		return err
	}
	h, _ := theHouse(w, c) // a book that is not there yet has kept no columns; one that cannot be read says so when it is written to
	if kept, ok := columns.Kept(sheet.Heads, h.Mappings); ok {
		o.mapping = kept
		fmt.Fprintln(shown, words.ColumnsAsKept(kept.Name, columns.Written(sheet.Heads, kept.Columns)))
		return nil
	}
	o.mapping = entry.Mapping{Name: o.save, Columns: columns.Mapping(sheet.Heads, columns.Guesses(sheet.Heads, sheet.Rows, sheet.DecimalComma))}
	spec := columns.Written(sheet.Heads, o.mapping.Columns)
	if err := columns.Check(o.mapping.Columns); err != nil {
		return errors.New(words.ColumnsNotGuessed(path, sheet.Heads, spec, err))
	}
	fmt.Fprintln(shown, words.ColumnsGuessed(spec))
	return nil
}

// named finds the mapping: as it is written, or one of the house by its name.
func (o *others) named(w world, c common) error {
	if strings.Contains(o.columns, "=") {
		columns, err := columns.Parse(o.columns)
		if err != nil {
			return wrongUse{err}
		}
		o.mapping = entry.Mapping{Name: o.save, Columns: columns}
		return nil
	}
	h, err := theHouse(w, c)
	if err != nil {
		return err
	}
	m, ok := h.Mappings[o.columns]
	if !ok {
		var have []string
		for name := range h.Mappings {
			have = append(have, name)
		}
		return errors.New(words.NoSuchMapping(o.columns, have))
	}
	o.mapping = m
	return columns.Check(m.Columns)
}

// keep saves the mapping under the name that was given, once the log is taken in.
func (o *others) keep(book *persist.Book, at time.Time) {
	if o.save == "" || o.columns == "" {
		return
	}
	o.mapping.Name = o.save
	book.Keep(entry.Entry{Version: entry.Version, Stream: entry.House, Happened: entry.Wall(at), Event: o.mapping})
}

// showTable prints the first rows as they stood and as they are read, and the totals.
func showTable(out io.Writer, t mapcsv.Table) {
	said := func(cells []columns.Cell) []string {
		all := make([]string, len(cells))
		for i, c := range cells {
			all[i] = strings.TrimSpace(c.Column + " " + c.Text)
		}
		return all
	}
	for _, r := range t.Shown[:min(3, len(t.Shown))] {
		fmt.Fprintln(out, words.RowTheirs(r.Line, said(r.Theirs)))
		fmt.Fprintln(out, words.RowOurs(said(r.Ours)))
	}
	fmt.Fprintln(out, words.RowsRead(t.Rows))
	for _, c := range t.Totals {
		fmt.Fprintln(out, words.ColumnRead(c.Theirs, c.Unit, c.Ours, c.Our, c.N, c.Sum, c.Middle))
		if c.Beyond {
			fmt.Fprintln(out, words.ColumnDoubt(c.Theirs, c.Middle, c.Our, c.Doubt))
		}
	}
	if len(t.Left) > 0 {
		fmt.Fprintln(out, words.ColumnsLeft(t.Left))
	}
	if len(t.Words) > 0 {
		fmt.Fprintln(out, words.WordsKept(t.Words))
	}
	if t.Blanks > 0 {
		fmt.Fprintln(out, words.BlanksOpen(t.Blanks))
	}
	if len(t.Timeless) > 0 {
		fmt.Fprintln(out, words.RowsTimeless(t.Timeless))
	}
}
